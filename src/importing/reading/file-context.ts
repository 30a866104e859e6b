import type { IssueLog } from '../issues/issue-log.ts';
import type { PlanHints } from '../layout/reshaping/reshaping.ts';
import type { Dialect } from '../scan/row-span.ts';
import type { CountedDays } from '../time/counted-days.ts';
import type { DateOrder, OrderVerdict } from '../time/date-order.ts';
import type { TimeReader } from '../time/time-reader.ts';
import type { CellReader } from '../values/cell-reader.ts';

/** Readings may be forced one way where a file allows two. */
export interface ReadOverrides {
  readonly dateOrder?: DateOrder;
  /** Year of the first stamp where stamps have none. */
  readonly year?: number;
  readonly decimalComma?: boolean;
  readonly delimiter?: string;
  readonly encoding?: string;
  readonly keepRails?: boolean;
  readonly unitChange?: 'convert' | 'reject' | 'keep';
}

/** What all tables of one file share while it is read. */
export interface FileContext {
  readonly name: string;
  readonly dialect: Dialect;
  readonly time: TimeReader;
  readonly counted: CountedDays;
  readonly cells: CellReader;
  readonly planHints: PlanHints;
  readonly issues: IssueLog;
  readonly overrides: ReadOverrides;
  /** The order of day and month that an earlier pass over the file settled; null on the first. */
  readonly settledOrder: OrderVerdict | null;
  readonly counts: RowCounts;
}

/** Rows and values met and left out so far. */
export interface RowCounts {
  rows: number;
  rowsRejected: number;
  values: number;
  valuesRejected: number;
}
