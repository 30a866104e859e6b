const pairs: ReadonlySet<string> = new Set('ll rr lc rc cl cr lm rm ml mr'.split(' '));

/** One letter, or two for a place between or beyond the ends of a long line-up: LL, L, LC, C, RC, R, RR. */
export function isPlaceLetter(text: string): boolean {
  return text.length === 1 || pairs.has(text);
}
