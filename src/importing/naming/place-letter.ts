/** One letter, or the doubled L and R of the outer ends of a long line-up: LL, L, M, R, RR. */
export function isPlaceLetter(text: string): boolean {
  return text.length === 1 || text === 'll' || text === 'rr';
}
