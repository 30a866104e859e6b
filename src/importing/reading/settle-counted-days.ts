import type { FileContext } from './file-context.ts';
import type { Table } from './table-sequence.ts';

/** Says what was done with stamps that a spreadsheet turned into counts of days among others that it left as text. */
export function settleCountedDays({ counted, time, issues }: FileContext, tables: readonly Table[]): void {
  const areMixed = counted.count > 0 && (time.evidence.noted > 0 || time.fixedCount > 0);
  if (!areMixed) return;
  issues.add('counted-days-among-stamps', { count: counted.count });
  if (!counted.areExchanged(time.evidence)) return;
  for (const table of tables) table.exchangeCountedDays();
  issues.choose(
    'dates that a spreadsheet counted',
    'day and month exchanged',
    'it counted those that exist in either order and left the others as text, so it took them the wrong way round',
    null,
  );
}
