import type { Kilopascal } from './quantities.ts';

/** Standard atmosphere at sea level (ISO 2533:1975). */
export const seaLevelAtmosphere: Kilopascal = 101.325;

/**
 * Mean atmospheric pressure at an altitude, by the troposphere of ISO 2533:1975, which is that of the
 * U.S. Standard Atmosphere 1976 (NASA-TM-X-74335): p = 101.325 · (1 − L·H ÷ 288.15)^(g ÷ (R·L)), with the lapse
 * L = 6.5 K/km, g = 9.80665 m/s², R = 287.05287 J/(kg·K) and H the geopotential altitude, r·z ÷ (r + z) of the
 * height z over sea level with r = 6,356,766 m. Valid from −2 km to 11 km: NaN outside. Weather moves
 * the pressure by some ±3 kPa around it.
 */
export function atmosphereAtAltitude(metres: number): Kilopascal {
  if (!(metres >= -2000 && metres <= 11_000)) return Number.NaN;
  const geopotentialMetres = (6_356_766 * metres) / (6_356_766 + metres);
  const lapseKelvinPerMetre = 0.0065;
  const exponent = 9.80665 / (287.05287 * lapseKelvinPerMetre);
  return seaLevelAtmosphere * (1 - (lapseKelvinPerMetre * geopotentialMetres) / 288.15) ** exponent;
}
