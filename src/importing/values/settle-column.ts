import type { IssueLog } from '../issues/issue-log.ts';
import { stateCooling, stateDefrost, stateOff, stateOn, type ValueTally } from './value-tally.ts';

/** Whether a column holds states, after all its cells are known. */
function holdsStates(values: Float64Array, tally: ValueTally): boolean {
  let states = 0;
  let zeroOne = 0;
  let ones = 0;
  let others = 0;
  for (let at = 0; at < values.length; at++) {
    const value = values[at]!;
    if (Number.isNaN(value)) continue;
    if (value === 0) zeroOne++;
    else if (value === 1) {
      zeroOne++;
      ones++;
    } else if (isStateMark(value)) states++;
    else others++;
  }
  if (states > 0) return others === 0 || states >= 9 * others;
  if (others > 0 || zeroOne === 0 || tally.unit !== null) return false;
  const both = ones > 0 && ones < zeroOne;
  return both || !tally.decimals;
}

function isStateMark(value: number): boolean {
  return value === stateOn || value === stateOff || value === stateCooling || value === stateDefrost;
}

/**
 * Settles in place what the words of a column meant: 1 and 0 in a column of states, no reading in one of
 * numbers. Gives whether it is one of states.
 */
export function settleStates(values: Float64Array, tally: ValueTally, issues: IssueLog): boolean {
  const status = holdsStates(values, tally);
  const column = tally.name;
  if (tally.texts.count > 0) {
    let readings = 0;
    for (let at = 0; at < values.length && readings === 0; at++) if (!Number.isNaN(values[at]!)) readings++;
    const code = readings === 0 ? 'column-of-text' : 'value-unreadable';
    reportNoted(issues, code, column, tally.texts);
    tally.rejected += tally.texts.count;
  }
  if (tally.states.count === 0) return status;
  let rejected = 0;
  for (let at = 0; at < values.length; at++) {
    const value = values[at]!;
    if (Number.isNaN(value)) continue;
    const mark = isStateMark(value);
    if (status && mark) {
      values[at] =
        value === stateOn || value === stateDefrost || (value === stateCooling && !tally.sawDefrost) ? 1 : 0;
    } else if (mark || (status && value !== 0 && value !== 1)) {
      values[at] = Number.NaN;
      rejected++;
    }
  }
  if (rejected > 0) {
    if (status) issues.add('number-in-state-column', { column, count: rejected });
    else reportNoted(issues, 'state-word-in-number-column', column, { ...tally.states, count: rejected });
    tally.rejected += rejected;
  }
  return status;
}

function reportNoted(
  issues: IssueLog,
  code: 'column-of-text' | 'value-unreadable' | 'state-word-in-number-column',
  column: string,
  noted: { readonly count: number; readonly line: number | null; readonly examples: readonly string[] },
): void {
  const [first] = noted.examples;
  issues.add(code, {
    line: noted.line,
    column,
    count: noted.count,
    ...(first === undefined ? {} : { example: first }),
  });
  for (const example of noted.examples.slice(1)) issues.add(code, { column, count: 0, example });
}
