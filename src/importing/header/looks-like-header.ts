/** At least two cells of text, none of them a number or a time. */
export function looksLikeHeader(shown: readonly string[]): boolean {
  let names = 0;
  for (const cell of shown) {
    if (cell === '') continue;
    if (/^[-+]?[\d.,]+$/u.test(cell)) return false;
    if (/\p{L}/u.test(cell)) names++;
  }
  return names >= 2;
}
