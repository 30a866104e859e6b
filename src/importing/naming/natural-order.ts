const collator = new Intl.Collator('en', { numeric: true });

/** M2 before M10. */
export function byNaturalOrder(a: string, b: string): number {
  return collator.compare(a, b) || (a < b ? -1 : a > b ? 1 : 0);
}
