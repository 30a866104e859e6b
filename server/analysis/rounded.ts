/** Daily figures as JSON holds them: `null` where there is none. */
export function rounded(
  values: Float64Array,
  decimals: number,
  convert = (value: number) => value,
): (number | null)[] {
  const factor = 10 ** decimals;
  return Array.from(values, (value) =>
    Number.isFinite(value) ? Math.round(convert(value) * factor) / factor : null,
  );
}
