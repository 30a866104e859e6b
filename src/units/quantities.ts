/**
 * What the numbers inside rimelog mean. Everything past the importer is in these units; other units exist
 * only at the border (`convert.ts` inwards, `display.ts` outwards).
 *
 * A temperature and a temperature difference are different things (32 °F is 0 °C, a difference of 32 °F is
 * 17.8 K), so they have different names: a value in `Celsius` is a point on a scale, one in `Kelvin` is
 * always a difference.
 */
export type Celsius = number;
export type Kelvin = number;
export type KelvinPerDay = number;
/** Absolute pressure. Gauge readings are raised by the site's atmosphere at the border. */
export type Kilopascal = number;
/** Milliseconds since 1970-01-01T00:00:00Z. */
export type EpochMs = number;
export type Minutes = number;

/** What a column measures. `status` values are 0 or 1, `fraction` values 0 to 1. */
export type Quantity =
  | 'temperature'
  | 'temperature-difference'
  | 'pressure'
  | 'pressure-difference'
  | 'fraction'
  | 'status'
  | 'power'
  | 'other';
