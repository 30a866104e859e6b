import { exampleStore } from '../../sample-logs/maker/examples.ts';
import { toLog } from '../../sample-logs/maker/to-log.ts';
import type { Diagnosis, Finding } from '../../src/model/finding.ts';
import type { ImportReport } from '../../src/model/import-report.ts';
import type { Log } from '../../src/model/log.ts';
import type { AnalysedExports } from '../../src/pipeline/analyse-exports.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';

const day = 86_400_000;

/** Names that would do harm where they were taken for markup, a path, a formula or a key. */
export const hostileNames = {
  site: '<img src=x onerror="globalThis.harmed=1"> & Sons\u202e',
  circuit: '<script>globalThis.harmed=1</script>',
  circuitId: '../../__proto__',
  probe: "\"><svg onload=globalThis.harmed=1>=cmd|' /C calc'!A0",
};

function hostileLog(log: Log): Log {
  const [first, ...rest] = log.circuits;
  const [probe, ...others] = first!.probes;
  const named = {
    ...probe!,
    point: hostileNames.probe,
    record: { ...probe!.record, point: hostileNames.probe },
  };
  const circuit = {
    ...first!,
    id: hostileNames.circuitId,
    name: hostileNames.circuit,
    probes: [named, ...others],
  };
  return { ...log, site: hostileNames.site, circuits: [circuit, ...rest] };
}

const quiet = { projection: null, notThis: [], wouldDecide: null, covers: [], evidence: [] } as const;

function findingsOn(log: Log): Finding[] {
  const [first, second, third] = log.circuits;
  const points = first!.probes.map(({ point }) => point);
  const start = log.grid.startMs;
  return [
    {
      ...quiet,
      id: 'creep',
      kind: 'upward-drift',
      severity: 'act',
      circuit: first!.id,
      suctionGroup: null,
      probe: points[0]!,
      points,
      origin: 'case',
      onset: start + 4 * day,
      end: null,
      confidence: 0.93,
      summary: `${points[0]} creeps up 0.41 °F a day while its neighbours are driven colder; no alarm trips.`,
      measures: [{ name: 'slope', value: 0.23, low: 0.18, high: 0.27, unit: 'K/d' }],
      causes: [
        {
          cause: 'airflow-or-ice',
          likelihood: 0.8,
          because: 'its swing is smaller than that of its neighbours',
          checkFirst: [
            'Look at that end of the coil for ice',
            'Pour water down the drain',
            'Watch one defrost',
          ],
          bring: ['hot water', 'a drain snake'],
        },
        { cause: 'evaporator-fan', likelihood: 0.12, because: '', checkFirst: ['Count the fans'], bring: [] },
      ],
      projection: {
        limit: 5,
        at: start + 14 * day,
        earliest: start + 13 * day,
        latest: start + 17 * day,
        reason: null,
      },
      notThis: ['Not a set-point change: the set point stood still.'],
      wouldDecide: 'A calibrated thermometer beside that probe.',
    },
    {
      ...quiet,
      id: 'suction',
      kind: 'rack-pressure',
      severity: 'watch',
      circuit: null,
      suctionGroup: second!.suctionGroup,
      probe: null,
      points: [],
      origin: 'rack',
      onset: start + 6 * day,
      end: start + 7 * day,
      confidence: 0.74,
      summary: 'Suction stood above its set point for a day and its circuits warmed together.',
      measures: [],
      causes: [
        {
          cause: 'capacity-shortfall',
          likelihood: 0.6,
          because: '',
          checkFirst: ['Which machine stood still'],
          bring: [],
        },
      ],
      covers: [second!.id, third!.id],
    },
    {
      ...quiet,
      id: 'habit',
      kind: 'probe-disagreement',
      severity: 'note',
      circuit: second!.id,
      suctionGroup: null,
      probe: second!.probes[0]!.point,
      points: [],
      origin: 'probe',
      onset: start,
      end: null,
      confidence: 0.9,
      summary: 'This probe has always read 2.0 °F off its neighbours.',
      measures: [],
      causes: [{ cause: 'normal-variation', likelihood: 0.9, because: '', checkFirst: [], bring: [] }],
    },
  ];
}

function diagnosisOf(log: Log): Diagnosis {
  const worst = ['act', 'note'] as const;
  return {
    findings: findingsOn(log),
    circuits: log.circuits.map(({ id, name }, index) => ({
      id,
      name,
      rank: index + 1,
      worst: worst[index] ?? null,
    })),
    abstentions: [
      {
        analysis: 'superheat',
        circuit: log.circuits[0]!.id,
        suctionGroup: null,
        reason: 'Superheat cannot be judged without a coil outlet temperature.',
        needs: 'a column with the coil outlet temperature',
      },
    ],
  };
}

const report: ImportReport = {
  timeZone: 'America/Denver',
  timeZoneSource: 'site',
  files: [
    {
      name: 'export.csv',
      rows: 4320,
      rowsRejected: 1,
      values: 129_600,
      valuesRejected: 3,
      issues: [
        {
          code: 'value-unreadable',
          line: 101,
          column: 'M01 air A',
          count: 3,
          message: 'export.csv line 101: "----" is no number; the value was left out.',
        },
      ],
      choices: [
        { about: 'day and month', chosen: 'month first', because: 'line 14 has a 23', override: null },
      ],
    },
  ],
  issues: [],
};

/** A simulated store with findings written by hand: what a server keeps, without any judgement behind it. */
export function analysedFixture({ hostile = false } = {}): AnalysedExports {
  const plain = toLog(exampleStore('iced-end', { days: 12 }), { logging: { intervalMinutes: 5 } });
  const log = hostile ? hostileLog(plain) : plain;
  return { log, report, signals: computeSignals(log), diagnosis: diagnosisOf(log), guess: null };
}
