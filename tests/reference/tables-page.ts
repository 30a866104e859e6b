import { dayColumns } from '../../src/audit/day-table.ts';
import type { Table } from '../../src/audit/table.ts';
import { tableDefinitions } from '../../src/audit/tables/registry.ts';
import { figureIds, figureMeanings } from '../../src/figures/figure.ts';

interface Described {
  readonly name: string;
  readonly title: string;
  readonly oneRow: string;
  readonly columns: Table['columns'];
}

const days: Described = {
  name: 'days',
  title: 'The site day by day',
  oneRow: 'one local day',
  columns: dayColumns,
};

const cell = (text: string): string => text.replaceAll('|', '\\|');

function section({ name, title, oneRow, columns }: Described): string {
  const rows = columns.map(
    ({ name: column, unit, definition, formula }) =>
      `| \`${column}\` | ${cell(unit)} | ${cell(definition)} | ${cell(formula)} |`,
  );
  return `## ${name}.csv

${title}. A row is ${oneRow}.

| column | unit | what it is | how it is computed |
| --- | --- | --- | --- |
${rows.join('\n')}
`;
}

function figures(): string {
  const rows = figureIds.map((id) => {
    const { title, definition, worthSaying } = figureMeanings[id];
    return `| \`${id}\` | ${title} | ${cell(definition)} | ${worthSaying} |`;
  });
  return `## Figures of \`verify\`, \`compare\` and \`norms\`

Each is taken by clock block: six blocks of four hours a day on the site's clock, of which at least half an hour must be settled
and known. Inside units: °C, K, min, kPa, a share from 0 to 1, starts an hour. A change smaller than the last column is not called one,
however sure it is (common practice, no source).

| figure | title | what it is | worth saying |
| --- | --- | --- | --- |
${rows.join('\n')}
`;
}

/** docs/reference/tables.md: every column of every table that \`rimelog audit --tables\` writes. */
export function tablesPage(): string {
  return `# The tables of the month

\`rimelog audit --tables FOLDER\` writes these CSV files. Numbers have a decimal point; what is not known is an empty cell. Temperatures,
differences and pressures are in the site's units, times are RFC 3339 with the site's offset, days are local days. Settled air is
what is left without defrosts, the hour after each (two hours after a stop) and the time a circuit was shut off. Quantiles are type 7
of Hyndman and Fan (R's default). A cell that a spreadsheet would take for a formula is written with an apostrophe before it.
This page follows from the code: \`npm run docs\` writes it.

${[...tableDefinitions, days].map(section).join('\n')}
${figures()}`;
}
