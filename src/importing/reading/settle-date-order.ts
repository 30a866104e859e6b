import { type DateOrder, judgeOrder, type OrderVerdict } from '../time/date-order.ts';
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

/**
 * Decides the order of day and month from all dates of the file, reads stored times again where it must, reports
 * it. Gives the verdict where rows were stored or left out in an order that it overturns and that not every date
 * allows, so that the file has to be read again; else null.
 */
export function settleDateOrder(context: FileContext, tables: readonly Table[]): OrderVerdict | null {
  const { time, issues, overrides } = context;
  const { evidence } = time;
  if (evidence.noted === 0) return null;
  if (overrides.dateOrder !== undefined) {
    issues.choose(
      'order of day and month',
      orderNames[time.order],
      'the option says so',
      overrideFor[time.order],
    );
    return null;
  }
  const verdict = context.settledOrder ?? judged(context);
  if (verdict.order !== time.order) {
    if (evidence.impossibleIn(time.order) + evidence.impossibleIn(verdict.order) > 0) return verdict;
    for (const table of tables) table.reorderTimes(time.order, verdict.order);
    time.settleOn(verdict.order);
  }
  if (evidence.possible().length === 1) return null;
  issues.choose(
    'order of day and month',
    orderNames[verdict.order],
    verdict.because,
    overrideFor[verdict.order],
  );
  return null;
}

function judged({ time, cells }: FileContext): OrderVerdict {
  return judgeOrder(time.evidence, {
    dotted: time.sawDots,
    twelveHourClock: time.sawTwelveHourClock,
    decimalComma: cells.decimalMark === ',',
    americanZone: time.zoneIsAmerican,
    isoShape: time.sawT,
  });
}
