/** What stands in the place of a number that is not known. */
export const unknownText = 'unknown';

/** A fixed number of decimals, without a negative zero. */
export function formatNumber(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text;
}
