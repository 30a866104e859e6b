import type { ResidualToken } from './residual.ts';
import type { NamedColumn } from './role.ts';

/** What a person would call a circuit or group: its part of the column name as written. */
export function writtenName(column: NamedColumn, key: readonly ResidualToken[]): string {
  const { name: header } = column;
  const pieces: string[] = [];
  let from = -1;
  let to = -1;
  for (const token of key) {
    const between = to < 0 ? '' : header.slice(to, token.nameFrom);
    if (to < 0 || between.length > 3 || /[\p{L}\p{N}]/u.test(between)) {
      if (to >= 0) pieces.push(header.slice(from, to));
      from = token.nameFrom;
    }
    to = token.to;
  }
  if (to >= 0)
    pieces.push(header.slice(from, isOpen(header.slice(from, to)) && header[to] === ')' ? to + 1 : to));
  return pieces.join(' ').replace(/_/g, ' ').trim();
}

/** `Beer (circuit 5` of `Beer (circuit 5) Case 1`: the bracket belongs to the name. */
function isOpen(piece: string): boolean {
  return piece.lastIndexOf('(') > piece.lastIndexOf(')');
}
