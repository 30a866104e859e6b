import { describe, expect, it } from 'vitest';
import { diagnose } from '../../src/diagnosis/diagnose.ts';
import type { Diagnosis } from '../../src/model/finding.ts';
import type { Log } from '../../src/model/log.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { handMadeStore, still } from '../analyses/support/hand-made-store.ts';

const diagnosisOf = (log: Log): Diagnosis => diagnose(computeSignals(log));
const creep = (day: number): number => Math.max(0, Math.min(3, 0.4 * (day - 7)));
const step = (day: number): number => (day < 9 ? 0 : -2.5);

const store = (shift = 0): Log => {
  const log = handMadeStore({
    days: 16,
    circuits: [
      { id: 'M01', probes: [creep, still, still], setPoint: 2 + shift, limit: 6.5 + shift },
      { id: 'M02', probes: [still, step, still], setPoint: 3 + shift, limit: 7 + shift },
      { id: 'M03', probes: [still, still, still], setPoint: 2 + shift },
    ],
  });
  return log;
};

const gist = ({ findings }: Diagnosis) =>
  findings.map(({ circuit, probe, kind, origin, severity, causes, onset }) => ({
    circuit,
    probe,
    kind,
    origin,
    severity,
    cause: causes[0]!.cause,
    onset,
  }));

describe('a diagnosis', () => {
  const plain = gist(diagnosisOf(store()));

  it('finds both planted troubles and nothing else', () => {
    expect(plain.map(({ circuit, probe }) => [circuit, probe]).sort()).toEqual([
      ['M01', 'M01 air A'],
      ['M02', 'M02 air B'],
    ]);
  });

  it('is the same when all temperatures, set points and limits are shifted alike', () => {
    expect(gist(diagnosisOf(store(1.5)))).toEqual(plain);
  });

  it('is the same when the probes stand in another order', () => {
    const log = store();
    const circuits = log.circuits.map((circuit) => ({ ...circuit, probes: [...circuit.probes].reverse() }));
    expect(gist(diagnosisOf({ ...log, circuits }))).toEqual(plain);
  });

  it('is the same when the circuits stand in another order', () => {
    const log = store();
    expect(gist(diagnosisOf({ ...log, circuits: [...log.circuits].reverse() }))).toEqual(plain);
  });

  it('differs only in its wording between Fahrenheit and Celsius sites', () => {
    const log = store();
    const celsius = diagnosisOf({ ...log, units: { temperature: 'degC', pressure: 'bar' } });
    const fahrenheit = diagnosisOf(log);
    expect(gist(celsius)).toEqual(gist(fahrenheit));
    expect(celsius.findings.map(({ id }) => id)).toEqual(fahrenheit.findings.map(({ id }) => id));
    expect(celsius.findings[0]!.summary).toContain('°C');
    expect(fahrenheit.findings[0]!.summary).toContain('°F');
  });

  it('is the same in every run', () => {
    expect(diagnosisOf(store())).toEqual(diagnosisOf(store()));
  });
});
