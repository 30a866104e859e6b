import type { ResidualToken } from './residual.ts';
import type { NamedColumn } from './role.ts';

/** What a person would call a circuit or group: its part of the column name as written. */
export function writtenName(column: NamedColumn, key: readonly ResidualToken[]): string {
  const { header } = column.point;
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
  if (to >= 0) pieces.push(header.slice(from, to));
  return pieces.join(' ').replace(/_/g, ' ').trim();
}
