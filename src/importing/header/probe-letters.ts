const unitLetters = new Set(['c', 'f', 'k']);

/**
 * Of the headers, those whose last letter tells the probes of one place apart (`temp a`, `temp b`, `temp c`;
 * `air L`, `air C`, `air R`). Such a C or F is no unit. `temp_C` beside `temp_F` are two units.
 */
export function endedByProbeLetter(headers: readonly string[]): ReadonlySet<string> {
  const places = new Map<string, { letters: Set<string>; headers: string[] }>();
  for (const header of headers) {
    const [, place, letter] = /^(.*[\s,;_/\-|:.])(\p{L})$/u.exec(header.trimEnd().toLowerCase()) ?? [];
    if (place === undefined || letter === undefined) continue;
    const known = places.get(place) ?? { letters: new Set(), headers: [] };
    known.letters.add(letter);
    known.headers.push(header);
    places.set(place, known);
  }
  const ended = new Set<string>();
  for (const { letters, headers: alike } of places.values()) {
    if (letters.size > 1 && [...letters].some((letter) => !unitLetters.has(letter)))
      for (const header of alike) ended.add(header);
  }
  return ended;
}
