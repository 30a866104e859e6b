import { type DateOrder, judgeOrder, reorderedTime } from '../time/date-order.ts';
import type { FileContext } from './file-context.ts';
import type { Table } from './table-sequence.ts';

const orderNames: { readonly [order in DateOrder]: string } = {
  mdy: 'month first (month/day/year)',
  dmy: 'day first (day/month/year)',
  ymd: 'year first (year-month-day)',
};

const overrideFor: { readonly [order in DateOrder]: string } = {
  mdy: '--day-first',
  dmy: '--month-first',
  ymd: '--day-first',
};

/** Decides the order of day and month from all dates of the file, reads stored times again where it must, reports it. */
export function settleDateOrder(context: FileContext, tables: readonly Table[]): void {
  const { time, issues, overrides, cells } = context;
  const { evidence } = time;
  if (evidence.noted === 0) return;
  if (overrides.dateOrder !== undefined) {
    issues.choose(
      'order of day and month',
      orderNames[time.order],
      'the option says so',
      overrideFor[time.order],
    );
    return;
  }
  const verdict = judgeOrder(evidence, {
    dotted: time.sawDots,
    twelveHourClock: time.sawTwelveHourClock,
    decimalComma: cells.decimalMark === ',',
    americanZone: time.zoneIsAmerican,
    isoShape: time.sawT,
  });
  if (verdict.order !== time.order) {
    for (const table of tables) table.reorderTimes(reorderedTime, time.order, verdict.order);
    time.settleOn(verdict.order);
  }
  if (evidence.possible().length === 1) return;
  issues.choose(
    'order of day and month',
    orderNames[verdict.order],
    verdict.because,
    overrideFor[verdict.order],
  );
}
