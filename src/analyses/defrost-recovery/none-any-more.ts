import type { Evidence } from '../../model/evidence.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { settings } from './settings.ts';

/**
 * Where no status is logged, defrosts that no longer come leave two traces: hours at which the air hardly rises, taken for defrosts
 * that hardly heat, and from some day on hours at which nothing is seen at all. That is one thing: none came since the first of them.
 *
 * @returns the evidence with the two made one
 */
export function noneAnyMore({ defrostSource }: CircuitSignals, evidence: readonly Evidence[]): Evidence[] {
  const weak = evidence.find(
    ({ shape, features }) => shape === 'weak-rise' && features.riseRatio! < settings.noRise.value,
  );
  const missed = evidence.find(({ shape, end }) => shape === 'missed' && end === null);
  if (defrostSource === 'status' || weak === undefined || missed === undefined || missed.onset < weak.onset)
    return [...evidence];
  const one: Evidence = {
    ...missed,
    onset: weak.onset,
    certainty: Math.max(missed.certainty, weak.certainty),
    measures: [...missed.measures, ...weak.measures],
    features: { ...missed.features, riseRatio: weak.features.riseRatio!, allSince: 1 },
  };
  return evidence.filter((other) => other !== weak).map((other) => (other === missed ? one : other));
}
