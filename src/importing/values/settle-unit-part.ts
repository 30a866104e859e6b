import { unitPart } from '../header/unit-words.ts';
import type { FileContext } from '../reading/file-context.ts';
import type { ValueTally } from './value-tally.ts';

/**
 * A header that names tenths or hundredths of a unit (`°C x10`, `0.1 °F`): whole numbers are counts of these parts and
 * are divided in place. Numbers with decimals are in the unit itself where the header gives a step of it, as of a
 * resolution, and of unknown scale otherwise, for which the column stays without a unit. True where values changed.
 */
export function settleUnitPart(values: Float64Array, tally: ValueTally, { issues }: FileContext): boolean {
  const part = tally.unit === null ? unitPart(tally.name) : null;
  if (part === null) return false;
  const isWhole = values.every((value) => Number.isNaN(value) || Number.isInteger(value));
  if (!isWhole && !/^[01]/u.test(part.written)) return false;
  tally.unit = part.unit;
  tally.unitSource = 'header';
  if (!isWhole) return false;
  for (let at = 0; at < values.length; at++) values[at]! /= part.parts;
  issues.add('unit-part', { column: tally.name, example: part.written });
  return true;
}
