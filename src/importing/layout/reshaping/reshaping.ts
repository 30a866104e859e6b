import type { DateOrder } from '../../time/date-order.ts';
import type { SampleRow } from '../table-plan.ts';
import type { TypeOf } from '../time-column.ts';

/** Gives the rows that one written row stands for; none for a row that only says something about those below it. */
export type Reshape = (cells: readonly string[]) => readonly (readonly string[])[];

/**
 * How the rows of a table are written otherwise than one time and its values: each written row is brought into that
 * form, or into one reading a row, before anything is read from it.
 */
export interface Reshaping {
  readonly kind: string;
  /** Position in the sample of the header, -1 for none; the rows behind it are reshaped. */
  readonly headerRow: number;
  /** Names of the cells after reshaping. */
  readonly header: readonly string[];
  readonly choice: ReshapingChoice;
  /** From the first reading on. A row that is none of the table's comes back as it is. */
  begin(): Reshape;
}

export interface ReshapingChoice {
  readonly about: string;
  readonly chosen: string;
  readonly because: string;
  readonly override: string | null;
}

/** The first rows of a stretch as text, and what their cells look like. */
export interface Sample {
  readonly rows: readonly SampleRow[];
  readonly typeOf: TypeOf;
}

/** What else than the rows bears on how they are read. */
export interface PlanHints {
  readonly fileName: string;
  /** A line of one cell that was met right above, perhaps the title of a block; empty for none. */
  readonly titleAbove: string;
  /** Decimal mark of numbers that commas may have cut; null where commas cut none. */
  readonly cutAt: '.' | ',' | null;
  /** Order of day and month that the option states or an earlier pass settled. */
  readonly dateOrder: DateOrder | null;
  readonly isAmerican: boolean;
  /** Year of stamps that have none, as the option states it. */
  readonly year: number | null;
}
