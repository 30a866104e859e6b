import type { IssueLog } from '../issues/issue-log.ts';
import type { ColumnProfile } from './column-profile.ts';
import { type Noted, stateCooling, stateDefrost, stateOff, stateOn, type ValueTally } from './value-tally.ts';

interface Kinds {
  readonly marks: number;
  readonly others: number;
}

/** Marks of states, and numbers other than 0 and 1. */
function kindsIn(values: Float64Array): Kinds {
  let marks = 0;
  let others = 0;
  for (let at = 0; at < values.length; at++) {
    const value = values[at]!;
    if (value === 0 || value === 1 || Number.isNaN(value)) continue;
    if (isStateMark(value)) marks++;
    else others++;
  }
  return { marks, others };
}

/** Whether a column holds states, after all its cells are known. */
function holdsStates(values: Float64Array, profile: ColumnProfile, tally: ValueTally): boolean {
  const { readings, min, max } = profile;
  if (readings === 0 || (tally.states.count === 0 && (min < 0 || max > 1))) return false;
  const { marks, others } = kindsIn(values);
  if (marks > 0) return others === 0 || marks >= 9 * others;
  if (others > 0 || tally.unit !== null) return false;
  return min < max || !namesMeasure(tally.name);
}

const measureWords =
  /\b(?:set ?-?point|setpt|set|sp|target|soll|consigne|limit|temp|temperature|temperatur|air|probe|sensor|product|coil|suction|discharge|pressure|press|druck|pression|level|superheat|power|current|humidity|differential|dead ?band|amps?)\b/iu;
const stateWords =
  /\b(?:defrost|dfr|defr|valve|solenoid|liquid|status|state|run|running|fan|comp|compressor|alarm|door|light|lights|heater|enabled?|active|mode|call)\b/iu;

function namesState(name: string): boolean {
  return stateWords.test(name.replaceAll(/[_\-.]/gu, ' '));
}

/** A column that is 0 or 1 throughout is a state that never changes, unless its name is that of a measure. */
function namesMeasure(name: string): boolean {
  return measureWords.test(name.replaceAll(/[_\-.]/gu, ' ')) && !namesState(name);
}

/** Numbers other than 1 that exports write for an open, running or energised state beside a 0 (common practice, no source). */
const fullNumbers: readonly number[] = [100, 255, -1];

/**
 * The number that stands for the on state where a column, of a state by its name, holds that and 0 alone and no header
 * says that it is a share; null for any other column.
 */
function fullNumber(values: Float64Array, profile: ColumnProfile, tally: ValueTally): number | null {
  const { readings, min, max, repeats } = profile;
  const full = fullNumbers.find((each) => Math.min(each, 0) === min && Math.max(each, 0) === max);
  if (full === undefined || tally.states.count > 0 || repeats === readings) return null;
  const isShare = tally.unit === 'percent' && tally.unitSource !== 'cell';
  if (isShare || (tally.unit !== null && tally.unit !== 'percent')) return null;
  if (tally.unitSegments.some(({ unit }) => unit !== 'percent')) return null;
  if (!namesState(tally.name)) return null;
  return values.every((value) => value === 0 || value === full || Number.isNaN(value)) ? full : null;
}

function isStateMark(value: number): boolean {
  return value === stateOn || value === stateOff || value === stateCooling || value === stateDefrost;
}

/**
 * Settles in place what the words of a column meant: 1 and 0 in a column of states, no reading in one of
 * numbers. Gives whether it is one of states.
 */
export function settleStates(
  values: Float64Array,
  profile: ColumnProfile,
  tally: ValueTally,
  issues: IssueLog,
): boolean {
  const full = fullNumber(values, profile, tally);
  if (full !== null) {
    for (let at = 0; at < values.length; at++) if (values[at] === full) values[at] = 1;
    tally.unit = null;
    tally.unitSource = null;
    issues.choose(
      `${full} and 0 in “${tally.name}”`,
      'ON and OFF',
      'the name is that of a state, and the column holds nothing else',
      null,
    );
  }
  const status = full !== null || holdsStates(values, profile, tally);
  const column = tally.name;
  if (tally.texts.count > 0) {
    issues.addNoted(profile.readings === 0 ? 'column-of-text' : 'value-unreadable', column, tally.texts);
    tally.rejected += tally.texts.count;
  }
  if (tally.states.count === 0) return status;
  let rejected = 0;
  for (let at = 0; at < values.length; at++) {
    const value = values[at]!;
    if (Number.isNaN(value)) continue;
    const mark = isStateMark(value);
    if (status && mark) values[at] = isOn(value, tally.sawDefrost) ? 1 : 0;
    else if (mark || (status && value !== 0 && value !== 1)) {
      values[at] = Number.NaN;
      rejected++;
    }
  }
  if (rejected === 0) return status;
  if (status) issues.add('number-in-state-column', { column, count: rejected });
  else
    issues.addNoted('state-word-in-number-column', column, {
      ...tally.states,
      count: rejected,
    } satisfies Noted);
  tally.rejected += rejected;
  return status;
}

/** A word for cooling is the off state of a column that also knows defrost, else an on state. */
function isOn(value: number, sawDefrost: boolean): boolean {
  return value === stateOn || value === stateDefrost || (value === stateCooling && !sawDefrost);
}
