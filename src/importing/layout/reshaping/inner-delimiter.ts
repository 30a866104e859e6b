import Papa from 'papaparse';
import { looksLikeHeader } from '../../header/looks-like-header.ts';
import { visibleText } from '../../values/clean-text.ts';
import type { Reshaping, Sample } from './reshaping.ts';

/** Marks that rarely separate cells, and the usual ones inside rows that stand in quotes as a whole. */
const marks: readonly { readonly mark: string; readonly name: string }[] = [
  { mark: ',', name: 'comma' },
  { mark: ';', name: 'semicolon' },
  { mark: '\t', name: 'tab' },
  { mark: '|', name: 'pipe' },
  { mark: '^', name: 'caret' },
  { mark: '~', name: 'tilde' },
];
const fewestRows = 3;

/** Rows that are one cell each: written in quotes as a whole, or with another delimiter than the usual four. */
export function findInnerDelimiter({ rows }: Sample): Reshaping | null {
  const alone = rows.filter(({ cells }) => cells.length === 1 || isAlone(cells));
  if (alone.length < fewestRows || alone.length < 0.8 * rows.length) return null;
  for (const { mark, name } of marks) {
    const split = rows.map(({ cells }) => cellsIn(cells, mark));
    const headerRow = split.findIndex((cells) => cells.length > 1 && looksLikeHeader(cells.map(visibleText)));
    if (headerRow < 0) continue;
    const width = split[headerRow]!.length;
    const fitting = split.slice(headerRow + 1).filter(({ length }) => length === width).length;
    if (fitting < fewestRows || fitting < 0.6 * (split.length - headerRow - 1)) continue;
    return {
      kind: `inner-delimiter ${name}`,
      headerRow,
      header: split[headerRow]!.map(visibleText),
      choice: {
        about: 'cells of a row',
        chosen: `separated by a ${name}`,
        because: 'each row is one cell that holds others',
        override: null,
      },
      begin: () => (cells) => [cellsIn(cells, mark)],
    };
  }
  return null;
}

function isAlone(cells: readonly string[]): boolean {
  return cells.slice(1).every((cell) => visibleText(cell) === '');
}

function cellsIn(cells: readonly string[], mark: string): string[] {
  const text = cells[0] ?? '';
  if (!isAlone(cells) || !text.includes(mark)) return [...cells];
  const parsed = Papa.parse<string[]>(text, { delimiter: mark, newline: '\n', header: false });
  return parsed.data[0] ?? [text];
}
