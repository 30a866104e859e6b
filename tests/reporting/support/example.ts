import { exampleStore } from '../../../sample-logs/maker/examples.ts';
import { toLog } from '../../../sample-logs/maker/to-log.ts';
import type { Diagnosis, Finding, RankedCause } from '../../../src/model/finding.ts';
import type { ImportReport } from '../../../src/model/import-report.ts';
import type { Log } from '../../../src/model/log.ts';
import { computeSignals } from '../../../src/signals/compute-signals.ts';
import type { Signals } from '../../../src/signals/types.ts';

export interface Example {
  readonly log: Log;
  readonly signals: Signals;
  readonly report: ImportReport;
  readonly diagnosis: Diagnosis;
}

const day = 86_400_000;

export const ice: RankedCause = {
  cause: 'airflow-or-ice',
  likelihood: 0.8,
  because: 'late in each defrost this end is colder than its neighbours, as ice that still melts is',
  checkFirst: [
    'Look at the coil and the drain pan at the warm end',
    'Pour water into the drain',
    'Fans turning?',
  ],
  bring: ['wet vacuum', 'drain auger', 'hand probe'],
};

export function finding(log: Log, changes: Partial<Finding> = {}): Finding {
  return {
    id: 'upward-drift-M01-air-1',
    kind: 'upward-drift',
    severity: 'act',
    circuit: 'M01',
    suctionGroup: log.circuits[0]!.suctionGroup,
    probe: log.circuits[0]!.probes[0]!.point,
    points: log.circuits[0]!.probes.map(({ point }) => point),
    origin: 'case',
    onset: log.grid.startMs + 9 * day,
    end: null,
    confidence: 0.93,
    summary: 'The air at one end of M01 creeps up by 0.41 °F a day while its neighbours are driven colder.',
    measures: [
      { name: 'slope', value: 0.228, low: 0.18, high: 0.27, unit: 'K/d' },
      { name: 'rise', value: 3.1, low: null, high: null, unit: 'K' },
    ],
    causes: [ice, { ...ice, cause: 'evaporator-fan', likelihood: 0.1, because: '' }],
    projection: {
      limit: 5,
      at: log.grid.startMs + 28 * day,
      earliest: log.grid.startMs + 27 * day,
      latest: log.grid.startMs + 31 * day,
      reason: null,
    },
    notThis: ['Not a set-point change: the set point is the same all through.'],
    wouldDecide: null,
    covers: [],
    evidence: [],
    ...changes,
  };
}

export function reportOf(changes: Partial<ImportReport['files'][number]> = {}): ImportReport {
  return {
    timeZone: 'America/Denver',
    timeZoneSource: 'site',
    files: [
      {
        name: 'store.csv',
        rows: 34_560,
        rowsRejected: 1,
        values: 1_036_800,
        valuesRejected: 12,
        issues: [
          {
            code: 'value-not-a-number',
            line: 101,
            column: 'M01 air A',
            count: 12,
            message: 'A word stands where a temperature was expected; taken as missing.',
            examples: ['Fail'],
          },
        ],
        choices: [
          {
            about: 'dates',
            chosen: 'month first',
            because: 'a 13 stands in the second place on line 1,200',
            override: '--day-first',
          },
        ],
        ...changes,
      },
    ],
    issues: [],
  };
}

/** A small store with ice at one end of M01 and findings written by hand: reporting is tested apart from judging. */
export function exampleOf(findings: (log: Log) => readonly Finding[], intervalMinutes = 5): Example {
  const log = toLog(exampleStore('iced-end'), { logging: { intervalMinutes } });
  const all = findings(log);
  return {
    log,
    signals: computeSignals(log),
    report: reportOf(),
    diagnosis: {
      findings: all,
      circuits: log.circuits.map(({ id, name }, index) => ({
        id,
        name,
        rank: index + 1,
        worst: all.find(({ circuit }) => circuit === id)?.severity ?? null,
      })),
      abstentions: [
        {
          analysis: 'short-cycling',
          circuit: 'M01',
          suctionGroup: null,
          reason: 'logged every 5 min: cycles shorter than 10 min cannot be seen',
          needs: 'readings every minute',
        },
      ],
    },
  };
}

export function troubledExample(): Example {
  return exampleOf((log) => [
    finding(log),
    finding(log, {
      id: 'rack',
      kind: 'rack-pressure',
      severity: 'watch',
      circuit: null,
      probe: null,
      origin: 'rack',
      onset: log.grid.startMs + 15 * day,
      summary: 'The suction pressure of its group stands 4 psi over its target and its cases warm together.',
      causes: [{ ...ice, cause: 'capacity-shortfall', likelihood: 0.6 }],
      projection: null,
      covers: ['M02', 'M03'],
    }),
    finding(log, {
      id: 'note',
      kind: 'probe-disagreement',
      severity: 'note',
      circuit: 'M02',
      probe: null,
      origin: 'probe',
      summary: 'One probe has read 2 °F off its neighbours all through: as it always was.',
      causes: [],
      projection: null,
    }),
  ]);
}

export function healthyExample(): Example {
  return exampleOf(() => []);
}
