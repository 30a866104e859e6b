import type { FileContext } from '../reading/file-context.ts';
import { type ColumnProfile, columnProfile } from './column-profile.ts';
import { findRails } from './rails.ts';
import { convertedTemperature, convertible } from './same-unit.ts';
import { settleUnitPart } from './settle-unit-part.ts';
import { findScaleChange } from './unit-change.ts';
import type { ValueTally } from './value-tally.ts';

export type LineOf = (index: number) => number | null;

/** Readings in a row that make a standstill worth saying. */
const standstillReadings = 50;
/** Set points stand still as a rule. */
const setPointName = /(?:^|[^a-z])(?:set|set ?-?p(?:oin)?ts?|sp|target|soll(?:wert)?|consigne)(?:[^a-z]|$)/iu;

/**
 * What the numbers of one column, in the order of the file, say about themselves: units that change, ends of
 * the scale, standstill. Takes out in place what is no reading and counts it in the tally.
 */
export function judgeColumn(
  values: Float64Array,
  met: ColumnProfile,
  tally: ValueTally,
  context: FileContext,
  lineOf: LineOf,
): void {
  if (met.readings === 0) return;
  const converted = settleStatedUnits(values, tally, context) || settleUnitPart(values, tally, context);
  const changed = converted || tally.states.count > 0;
  let profile = changed ? columnProfile(values) : met;
  if (context.overrides.keepRails !== true && takeOutRails(values, profile, tally, context, lineOf)) {
    profile = columnProfile(values);
  }
  takeOutOtherScale(values, profile, tally, context, lineOf);
  if (
    profile.min === profile.max &&
    profile.readings >= standstillReadings &&
    !setPointName.test(tally.name)
  ) {
    context.issues.add('never-changes', { column: tally.name, example: String(profile.min) });
  }
}

/** Units that the cells themselves name: later readings in another unit are brought to the first one. True where there are any. */
function settleStatedUnits(
  values: Float64Array,
  tally: ValueTally,
  { issues, overrides }: FileContext,
): boolean {
  const segments = tally.unitSegments;
  const first = segments[0];
  if (first === undefined) return false;
  if (tally.unit === null || first.from <= firstReading(values)) {
    if (tally.unit !== null && tally.unit !== first.unit) {
      const because = `the cells say so, though the header says ${tally.unit}`;
      issues.choose(`unit of “${tally.name}”`, first.unit, because, null);
    }
    tally.unit = first.unit;
    tally.unitSource = 'cell';
  }
  const unit = tally.unit;
  for (const [index, segment] of segments.entries()) {
    if (segment.unit === unit) continue;
    const to = segments[index + 1]?.from ?? values.length;
    const converts = convertible(segment.unit, unit) && overrides.unitChange !== 'reject';
    if (overrides.unitChange === 'keep') continue;
    let count = 0;
    for (let at = segment.from; at < to; at++) {
      if (Number.isNaN(values[at]!)) continue;
      values[at] = converts ? convertedTemperature(values[at]!, segment.unit, unit) : Number.NaN;
      count++;
    }
    if (count === 0) continue;
    if (!converts) tally.rejected += count;
    const code = converts ? 'unit-changed' : 'unit-changed-left-out';
    issues.add(code, { line: segment.line, column: tally.name, count, example: `${unit} → ${segment.unit}` });
    issues.choose(
      `unit of “${tally.name}” from line ${segment.line}`,
      converts ? `converted from ${segment.unit} to ${unit}` : 'left out',
      `the export names ${segment.unit} there and ${unit} before`,
      converts ? '--unit-change reject' : '--unit-change keep',
    );
  }
  return true;
}

function firstReading(values: Float64Array): number {
  let at = 0;
  while (at < values.length && Number.isNaN(values[at]!)) at++;
  return at;
}

function takeOutRails(
  values: Float64Array,
  profile: ColumnProfile,
  tally: ValueTally,
  { issues }: FileContext,
  lineOf: LineOf,
): boolean {
  const rails = findRails(values, profile, tally.unit);
  if (rails.values.size === 0) return false;
  const code = rails.notConnected ? 'not-connected' : 'probe-rail';
  let count = 0;
  let first = -1;
  for (let at = 0; at < values.length; at++) {
    const value = values[at]!;
    if (!rails.values.has(value)) continue;
    if (first < 0) first = at;
    values[at] = Number.NaN;
    count++;
  }
  tally.rejected += count;
  issues.add(code, { line: lineOf(first), column: tally.name, count, example: String([...rails.values][0]) });
  for (const value of [...rails.values].slice(1, 3))
    issues.add(code, { column: tally.name, count: 0, example: String(value) });
  issues.choose(
    `${[...rails.values].slice(0, 3).join(', ')} in “${tally.name}”`,
    'no reading',
    issuesReason(rails.notConnected),
    '--keep-rails',
  );
  return true;
}

function issuesReason(notConnected: boolean): string {
  return notConnected
    ? 'the channel reads nothing else'
    : 'the same extreme value, entered and left in one step, is what a broken probe or an error code reads';
}

function takeOutOtherScale(
  values: Float64Array,
  profile: ColumnProfile,
  tally: ValueTally,
  { issues, overrides }: FileContext,
  lineOf: LineOf,
): void {
  if (overrides.unitChange === 'keep') return;
  const change = findScaleChange(values, profile, tally.unit);
  if (change === null) return;
  const earlierIsOther = tally.unit !== null && change.after === tally.unit;
  const [from, to] = earlierIsOther ? [0, change.from] : [change.from, values.length];
  const [other, own] = earlierIsOther ? [change.before, change.after] : [change.after, change.before];
  const convert = overrides.unitChange === 'convert';
  let count = 0;
  for (let at = from; at < to; at++) {
    if (Number.isNaN(values[at]!)) continue;
    values[at] = convert ? convertedTemperature(values[at]!, other, own) : Number.NaN;
    count++;
  }
  const line = lineOf(change.from);
  if (!convert) tally.rejected += count;
  issues.add(convert ? 'unit-changed' : 'unit-change-suspected', { line, column: tally.name, count });
  issues.choose(
    `unit of “${tally.name}” ${earlierIsOther ? 'before' : 'from'} line ${line}`,
    convert ? `converted from ${other} to ${own}` : 'left out',
    'the level jumps there as F = 1.8 C + 32 would have it, and nothing says so',
    convert ? '--unit-change keep' : '--unit-change convert',
  );
}
