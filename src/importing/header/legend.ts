import type { SampleRow } from '../layout/table-plan.ts';
import { visibleText } from '../values/clean-text.ts';
import type { FoundHeader } from './find-header.ts';
import { unitNamed } from './unit-words.ts';

/** Share of the columns that a list above the header must name. */
const namedShare = 0.6;

/**
 * The header of a logger that numbers its channels (`CH1`) and says above the table what each is (`CH1,M01 air A,°F`):
 * with the names of that list.
 */
export function namedByLegend(header: FoundHeader, rows: readonly SampleRow[], timeAt: number): FoundHeader {
  const meanings = new Map<string, { readonly name: string; readonly unit: string }>();
  for (const { cells } of rows.slice(0, header.row)) {
    const [key = '', name = '', ...others] = cells.map(visibleText);
    if (!/\d/u.test(key) || !/\p{L}/u.test(name) || unitNamed(name) !== null || meanings.has(key)) continue;
    meanings.set(key, { name, unit: others.find((cell) => unitNamed(cell) !== null) ?? '' });
  }
  const columns = header.names.flatMap((name, at) => (at === timeAt || name === '' ? [] : [name]));
  const named = columns.flatMap((name) => meanings.get(name)?.name ?? []);
  const isWhole = named.length > 0 && named.length >= namedShare * columns.length;
  if (!isWhole || new Set(named).size < named.length) return header;
  const meaningAt = (at: number) => (at === timeAt ? undefined : meanings.get(header.names[at]!));
  return {
    ...header,
    names: header.names.map((name, at) => meaningAt(at)?.name ?? name),
    units: header.units ?? header.names.map((_, at) => meaningAt(at)?.unit ?? ''),
    leftOut: {
      cells: header.names,
      because: 'a list above the header says what each channel is',
    },
  };
}
