/** One line-up as a set of habits: what its logged curves usually look like, with no heat balance behind them. */
export interface CircuitHabits {
  readonly id: string;
  readonly name: string;
  readonly class: 'medium' | 'low';
  readonly setPoint: number;
  readonly differential: number;
  readonly controls: 'average' | 'warmest' | number;
  readonly valve: 'on-off' | 'modulating';
  /** Usual standing of each place about the set point, K. */
  readonly offsets: readonly number[];
  /** How strongly each place follows the common ripple. */
  readonly follows: readonly number[];
  /** Peak to peak of the ripple, K, and its usual period. */
  readonly ripple: number;
  readonly periodMinutes: number;
  readonly dutyByNight: number;
  readonly dutyByDay: number;
  readonly openMinute: number;
  readonly closeMinute: number;
  readonly stockingsPerDay: number;
  readonly noise: number;
  /** Return air above discharge air on a trading day, K. */
  readonly returnGap: number;
  readonly defrost: {
    readonly kind: 'off-cycle' | 'electric' | 'hot-gas';
    readonly starts: readonly number[];
    readonly minutes: number;
    /** Usual length where temperature ends it, else equal to `minutes`. */
    readonly usualMinutes: number;
    /** Excess that each place would reach if it never ended, K. */
    readonly rise: readonly number[];
    readonly riseMinutes: number;
    /** Minutes for which the rise dwells while frost melts. */
    readonly dwellMinutes: number;
    readonly delayMinutes: number;
    readonly recoveryMinutes: number;
  };
  readonly alarm: { readonly high: number; readonly minutes: number };
}

export interface GroupHabits {
  readonly id: string;
  readonly rack: string;
  readonly class: 'medium' | 'low';
  readonly refrigerant: string;
  readonly saturated: number;
  /** How far the target floats, K; 0 where it stands still. */
  readonly float: number;
  readonly suctionBand: number;
  readonly machines: number;
  readonly dwellMinutes: number;
  readonly condenserRise: number;
  readonly liquidLevel: number;
  readonly circuits: readonly CircuitHabits[];
}

export interface StoreHabits {
  readonly site: string;
  readonly timeZone: string;
  readonly outdoorMean: number;
  readonly groups: readonly GroupHabits[];
}
