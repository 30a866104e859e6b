import { civilDate, dayMs, dayNumber } from './civil.ts';

/** In which order a date written with three numbers puts month, day and year. */
export type DateOrder = 'mdy' | 'dmy' | 'ymd';

export const dateOrders: readonly DateOrder[] = ['mdy', 'dmy', 'ymd'];

/** A year of two digits: 70 to 99 are 1970 to 1999, the others 2000 to 2069. */
export function fullYear(year: number): number {
  if (year >= 100) return year;
  return year >= 70 ? 1900 + year : 2000 + year;
}

/** Day number of the three numbers of a date as written, read in `order`; NaN where there is no such date. */
export function dayInOrder(order: DateOrder, first: number, second: number, third: number): number {
  if (order === 'mdy') return dayNumber(fullYear(third), first, second);
  if (order === 'dmy') return dayNumber(fullYear(third), second, first);
  return dayNumber(fullYear(first), second, third);
}

/** A wall-clock time that was read in order `from`, read again in order `to`; NaN where that is no date. */
export function reorderedTime(wallMs: number, from: DateOrder, to: DateOrder): number {
  const days = Math.floor(wallMs / dayMs);
  const { year, month, day } = civilDate(days);
  const short = year % 100;
  let again: number;
  if (from === 'mdy' && to === 'dmy') again = dayNumber(year, day, month);
  else if (from === 'dmy' && to === 'mdy') again = dayNumber(year, day, month);
  else if (from === 'mdy') again = dayInOrder(to, month, day, short);
  else if (from === 'dmy') again = dayInOrder(to, day, month, short);
  else again = dayInOrder(to, short, month, day);
  return again * dayMs + (wallMs - days * dayMs);
}

const mostRuns = 200_000;

/**
 * What the dates of one file say about their order. Every change of date is noted once, so that at the end
 * both orders can be tried on the whole file: is every date possible, and which order makes the days follow
 * each other in small steps?
 */
export class DateEvidence {
  private readonly impossible = { mdy: 0, dmy: 0, ymd: 0 };
  private readonly runs: number[] = [];
  /** Dates whose year has two digits can also be year-first. */
  yearCanLead = false;
  noted = 0;

  note(first: number, second: number, third: number): void {
    this.noted++;
    for (const order of dateOrders) {
      if (Number.isNaN(dayInOrder(order, first, second, third))) this.impossible[order]++;
    }
    if (third < 100 && first < 100) this.yearCanLead = true;
    if (this.runs.length < 3 * mostRuns) this.runs.push(first, second, third);
  }

  /** Orders in which every date so far exists. */
  possible(): readonly DateOrder[] {
    return dateOrders.filter(
      (order) => this.impossible[order] === 0 && (order !== 'ymd' || this.yearCanLead),
    );
  }

  impossibleIn(order: DateOrder): number {
    return this.impossible[order];
  }

  /** Days walked from date to date in `order`: the true order walks least. */
  walked(order: DateOrder): number {
    let before = Number.NaN;
    let total = 0;
    for (let at = 0; at < this.runs.length; at += 3) {
      const day = dayInOrder(order, this.runs[at]!, this.runs[at + 1]!, this.runs[at + 2]!);
      if (!Number.isNaN(day) && !Number.isNaN(before)) total += Math.abs(day - before);
      if (!Number.isNaN(day)) before = day;
    }
    return total;
  }
}

export interface OrderVerdict {
  readonly order: DateOrder;
  readonly because: string;
  /** False where nothing in the file tells the orders apart. */
  readonly sure: boolean;
}

/** What suggests an order when the dates themselves do not. */
export interface OrderHints {
  readonly dotted: boolean;
  readonly twelveHourClock: boolean;
  readonly decimalComma: boolean;
  readonly americanZone: boolean;
  readonly isoShape: boolean;
}

/** The order of the whole file's dates, by impossible dates first, then by the steps between days, then by hints. */
export function judgeOrder(evidence: DateEvidence, hints: OrderHints): OrderVerdict {
  const possible = evidence.possible();
  if (possible.length === 1) {
    return { order: possible[0]!, because: 'only so does every date of the file exist', sure: true };
  }
  const candidates = possible.length > 0 ? possible : dateOrders.slice(0, evidence.yearCanLead ? 3 : 2);
  if (possible.length === 0) {
    const fewest = [...candidates].sort((a, b) => evidence.impossibleIn(a) - evidence.impossibleIn(b))[0]!;
    return {
      order: fewest,
      because: 'no order fits every date; this one leaves out the fewest',
      sure: false,
    };
  }
  const prior = hintedOrder(hints, candidates);
  const walks = candidates.map((order) => ({ order, days: evidence.walked(order) }));
  walks.sort((a, b) => a.days - b.days || Number(b.order === prior.order) - Number(a.order === prior.order));
  const [best, next] = walks as [{ order: DateOrder; days: number }, { order: DateOrder; days: number }];
  if (best.days < next.days) {
    const because = `both orders exist for every date, but read so the days follow each other (${best.days} days walked against ${next.days})`;
    return { order: best.order, because, sure: next.days >= 2 * best.days };
  }
  return { order: prior.order, because: `the dates allow both orders; ${prior.because}`, sure: false };
}

function hintedOrder(
  hints: OrderHints,
  candidates: readonly DateOrder[],
): { order: DateOrder; because: string } {
  if (hints.isoShape && candidates.includes('ymd')) {
    return { order: 'ymd', because: 'a T between date and time goes with the year first' };
  }
  if (hints.dotted) return { order: 'dmy', because: 'dates with dots put the day first' };
  if (hints.twelveHourClock) return { order: 'mdy', because: 'AM and PM go with the month first' };
  if (hints.decimalComma) return { order: 'dmy', because: 'decimal commas go with the day first' };
  if (hints.americanZone) return { order: 'mdy', because: 'the time zone is American' };
  return { order: 'dmy', because: 'most of the world puts the day first' };
}
