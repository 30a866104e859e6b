import { learnNorms } from '../norms/learn-norms.ts';
import type { Norm } from '../norms/norm.ts';
import type { MonthScope } from './scope.ts';

const learnt = new WeakMap<MonthScope, readonly Norm[]>();

/** The norms of the whole history, learnt once for the table and the report. */
export function normView(scope: MonthScope): readonly Norm[] {
  const known = learnt.get(scope) ?? learnNorms(scope.signals, scope.diagnosis.findings);
  learnt.set(scope, known);
  return known;
}
