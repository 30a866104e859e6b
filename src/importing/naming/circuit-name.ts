import type { NameGroup } from './name-groups.ts';

/** What a person would call the circuit: its part of the column name as written, else the file's stem. */
export function circuitName(group: NameGroup): string {
  const probe = group.air[0]!;
  const { header } = probe.column.point;
  const pieces: string[] = [];
  let from = -1;
  let to = -1;
  for (const token of probe.keyTokens) {
    const between = to < 0 ? '' : header.slice(to, token.from);
    if (to >= 0 && between.length <= 3 && !/[\p{L}\p{N}]/u.test(between)) {
      to = token.to;
      continue;
    }
    if (to >= 0) pieces.push(header.slice(from, to));
    from = token.from;
    to = token.to;
  }
  if (to >= 0) pieces.push(header.slice(from, to));
  const own = pieces.map((piece) => containerBefore(header, piece) + piece).join(' ');
  const name = [group.stem, own].filter((part) => part !== null && part !== '').join(' ');
  return name === '' ? probe.column.point.fileStems[0]! : name.replace(/_/g, ' ');
}

/** `circuit_4` for the 4 of `temp_1_circuit_4`: a bare number says little without its word. */
function containerBefore(header: string, piece: string): string {
  if (!/^\d+$/.test(piece)) return '';
  const at = header.search(new RegExp(`(?<![0-9])${piece}(?![0-9])`));
  const word = /(?:circuit|ckt|case|line-?up|system|unit|kreis)[\s_.-]*$/i.exec(header.slice(0, at));
  return word === null ? '' : word[0];
}
