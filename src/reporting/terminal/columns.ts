import Table from 'cli-table3';
import { visibleText } from '../visible-text.ts';

const bare = {
  ...{ top: '', 'top-mid': '', 'top-left': '', 'top-right': '', bottom: '', 'bottom-mid': '' },
  ...{ 'bottom-left': '', 'bottom-right': '', left: ' ', 'left-mid': '', mid: '', 'mid-mid': '' },
  ...{ right: '', 'right-mid': '', middle: '  ' },
};

export interface TextColumn {
  readonly title: string;
  readonly align: 'left' | 'right';
}

/** Aligned columns without rules; names from an export are made visible. */
export function textColumns(columns: readonly TextColumn[], rows: readonly (readonly string[])[]): string[] {
  const table = new Table({
    head: columns.map(({ title }) => title),
    colAligns: columns.map(({ align }) => align),
    chars: bare,
    style: { head: [], border: [], compact: true, 'padding-left': 0, 'padding-right': 0 },
  });
  table.push(...rows.map((row) => row.map((cell) => visibleText(cell))));
  return table
    .toString()
    .split('\n')
    .map((line) => line.trimEnd());
}
