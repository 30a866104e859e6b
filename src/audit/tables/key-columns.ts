import type { Column } from '../table.ts';

type Told<Row> = (row: Row) => string | null;

/** The columns that say what a row is about, defined once for every table that has them. */
const column =
  (name: string, unit: string, definition: string, formula: string) =>
  <Row>(cell: Told<Row>, own = definition): Column<Row> => ({ name, unit, definition: own, formula, cell });

export const dayColumn = column(
  'day',
  'local date',
  "Local day, from midnight to midnight on the site's clock.",
  'calendar of the site',
);
export const circuitColumn = column('circuit', '', 'Id of the circuit.', 'site file');
export const suctionGroupColumn = column('suctionGroup', '', 'Suction group.', 'site file');
export const probeColumn = column(
  'probe',
  '',
  'The point, as its column is headed in the export.',
  'site file',
);
