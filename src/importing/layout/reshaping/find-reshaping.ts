import type { TablePlan } from '../table-plan.ts';
import { findCarriedStamp } from './carried-stamp.ts';
import { findCountedTimes } from './counted-times.ts';
import { findDateTitles } from './date-titles.ts';
import { findDecimalCommas } from './decimal-commas.ts';
import { findFixedWidth } from './fixed-width.ts';
import { findInnerDelimiter } from './inner-delimiter.ts';
import { findMissingYear } from './missing-year.ts';
import { findPerOwner } from './per-owner.ts';
import { findQualityBeside } from './quality-beside.ts';
import type { PlanHints, Reshaping, Sample } from './reshaping.ts';
import { findSideBySide } from './side-by-side.ts';
import { findSplitStamp } from './split-stamp.ts';
import { findTurned } from './turned.ts';
import { findValueOrState } from './value-or-state.ts';

/** How the rows in sight are written, where it is not one time and its values; `plan` is what they are as they stand. */
export function findReshaping(sample: Sample, plan: TablePlan | null, hints: PlanHints): Reshaping | null {
  if (sample.rows.length < 2) return null;
  if (plan === null) {
    return (
      findInnerDelimiter(sample) ??
      findFixedWidth(sample) ??
      findSplitStamp(sample) ??
      findMissingYear(sample, hints) ??
      findCountedTimes(sample, hints) ??
      findCarriedStamp(sample) ??
      findDateTitles(sample, hints.fileName) ??
      findTurned(sample)
    );
  }
  return (
    findTurned(sample) ??
    findSplitStamp(sample) ??
    findSideBySide(sample, plan.firstDataRow, plan.width) ??
    (hints.cutAt === null ? null : findDecimalCommas(sample, plan, hints.cutAt, hints.fileName)) ??
    findCarriedStamp(sample) ??
    findQualityBeside(sample, plan) ??
    findPerOwner(sample, plan) ??
    findValueOrState(sample, plan)
  );
}
