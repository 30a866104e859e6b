import type { Random } from '../random.ts';
import type { StoreParameters } from './parameters.ts';

/** Weather and store air, minute by minute, the same for every circuit. */
export interface Surroundings {
  outdoor: number;
  storeTemperature: number;
  humidity: number;
}

export interface WeatherWishes {
  /** Days (from, to) of a humid spell, and of a warm one. */
  readonly humidDays?: readonly [number, number];
  readonly warmDays?: readonly [number, number];
}

export function createSurroundings(store: StoreParameters, random: Random, wishes: WeatherWishes) {
  const now: Surroundings = {
    outdoor: store.outdoorMean,
    storeTemperature: store.storeTemperature,
    humidity: 1,
  };
  const keepWeather = Math.exp(-1 / 2880);
  const keepDamp = Math.exp(-1 / 2160);
  let weather = 0;
  let damp = 0;
  return {
    now,
    advance(minute: number, minuteOfDay: number): void {
      weather = keepWeather * weather + Math.sqrt(1 - keepWeather ** 2) * 2.2 * random.normal();
      damp = keepDamp * damp + Math.sqrt(1 - keepDamp ** 2) * 0.1 * random.normal();
      const day = minute / 1440;
      const inside = (days: readonly [number, number] | undefined): number =>
        days === undefined ? 0 : Math.min(1, Math.max(0, Math.min(day - days[0], days[1] - day) / 0.5));
      const warm = inside(wishes.warmDays);
      now.outdoor =
        store.outdoorMean +
        weather +
        7 * warm +
        store.outdoorSwing * Math.sin((2 * Math.PI * (minuteOfDay - 540)) / 1440);
      now.storeTemperature =
        store.storeTemperature +
        0.5 * Math.sin((2 * Math.PI * (minuteOfDay - 600)) / 1440) +
        0.05 * weather +
        0.9 * warm;
      now.humidity = Math.max(0.5, 1 + damp + 0.35 * inside(wishes.humidDays));
    },
  };
}
