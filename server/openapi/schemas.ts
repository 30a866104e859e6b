import { z } from 'zod';
import { figureIds } from '../../src/figures/figure.ts';
import { severities } from '../../src/model/finding.ts';
import { findingsSchema } from '../../src/reporting/findings-schema.ts';
import { problems } from '../problem.ts';

const instant = z.number().describe('milliseconds since 1970-01-01T00:00:00Z');
const timestamp = z.string().describe('RFC 3339');
const span = z.strictObject({ from: instant, to: instant });
const counts = z.strictObject({ act: z.int(), watch: z.int(), note: z.int() });

const line = z
  .strictObject({ times: z.array(instant), values: z.array(z.number().nullable()) })
  .describe('times ascend; a null breaks the line');

const addresses = {
  self: z.string(),
  events: z.string(),
  findings: z.string(),
  report: z.string(),
  page: z.string(),
};

const progress = z.strictObject({ stage: z.string(), share: z.number().min(0).max(1).nullable() });
const failure = z.strictObject({ code: z.string(), message: z.string(), remedy: z.string() });

const entry = z.strictObject({
  id: z.string().regex(/^[0-9a-f]{16}$/),
  received: timestamp,
  state: z.enum(['waiting', 'analysing', 'ready', 'failed']),
  files: z.array(z.strictObject({ name: z.string(), bytes: z.int() })),
  siteFile: z.string().nullable(),
  progress: progress.nullable(),
  problem: failure.nullable(),
  summary: z
    .strictObject({
      site: z.string(),
      timeZone: z.string(),
      start: timestamp,
      end: timestamp,
      circuits: z.int(),
      findings: counts,
      guessedSite: z.boolean(),
      firstStop: z
        .strictObject({
          place: z.string(),
          severity: z.enum(severities),
          summary: z.string(),
          weight: z.number().describe('what it costs to let it wait, for the order of many stores alone'),
        })
        .nullable()
        .optional()
        .describe('what would have somebody drive there first; not there in analyses of an earlier rimelog'),
    })
    .nullable(),
  ...addresses,
});

const site = z.strictObject({
  site: z.string(),
  timeZone: z.string(),
  exports: z.array(
    z.strictObject({
      id: z.string(),
      received: timestamp,
      start: timestamp,
      end: timestamp,
      circuits: z.int(),
      counts,
      ...addresses,
    }),
  ),
});

const bands = z.array(z.number().nullable());
const band = { low: bands, median: bands, high: bands };
const word = z.record(z.string(), z.string());
const report = z.strictObject({
  format: z.literal('rimelog-site-report/1'),
  title: z.string().describe('what the site is called; the names of its files when nobody has said'),
  headline: z.string(),
  restsOn: z.string(),
  places: z.array(
    z.strictObject({
      title: z.string(),
      circuit: z.string().nullable(),
      suctionGroup: z.string().nullable(),
      worst: z.enum(severities),
      findings: z.array(z.string()),
    }),
  ),
  findings: z.record(
    z.string(),
    z.strictObject({
      place: z.string(),
      summary: z.string().describe('as it reads under the name of its place'),
      facts: z.array(z.strictObject({ label: z.string(), text: z.string() })),
      cautions: z.array(z.strictObject({ hazard: z.string(), advice: z.string() })),
    }),
  ),
  days: z.array(z.string()).describe('local dates, which the daily figures follow'),
  temperatureUnit: z.string(),
  circuits: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      suctionGroup: z.string().nullable(),
      setPoint: bands,
      probes: z.array(z.strictObject({ point: z.string(), median: bands, recoveryMinutes: bands })),
      duty: bands.describe('share of settled time with the valve feeding'),
      defrosts: bands,
    }),
  ),
  pressureUnit: z.string(),
  pressures: z.array(
    z.strictObject({
      suctionGroup: z.string(),
      of: z.enum(['suction', 'discharge']),
      point: z.string(),
      median: bands,
      target: bands,
    }),
  ),
  cautionsDefer: z.string(),
  openQuestions: z.array(
    z.strictObject({ reason: z.string(), needs: z.string().nullable(), places: z.array(z.string()) }),
  ),
  import: z.array(z.strictObject({ heading: z.string(), details: z.array(z.string()) })),
  guessedSite: z.boolean(),
  fullMonths: z.array(z.string()).describe('months that the export holds whole, as 2026-09'),
  words: z.strictObject({
    severity: z.record(
      z.string(),
      z.strictObject({ word: z.string(), symbol: z.string(), meaning: z.string() }),
    ),
    origin: word,
    kind: word,
    cause: word,
  }),
});

const normalHere = z.strictObject({
  note: z.string().describe('the days that it rests on, or why there is nothing'),
  rows: z.array(
    z.strictObject({
      figure: z.string(),
      usual: z.string(),
      last: z.string(),
      standing: z.string(),
      peers: z.string(),
    }),
  ),
  points: z.array(
    z.strictObject({
      point: z.string(),
      unit: z.string(),
      ranges: z.array(
        z.strictObject({
          days: z.enum(['weekday', 'weekend']),
          hours: z.string().describe('of the day on the site’s clock: 08–12 h'),
          p10: z.number(),
          p90: z.number(),
          low: z.number().describe('a reading below is unusual, from here to p10 at the edge'),
          high: z.number().describe('a reading above is unusual, from p90 to here at the edge'),
          rests: z.string(),
        }),
      ),
      beside: z.string().describe('what the peers do'),
    }),
  ),
});

const alarmSaid = z.strictObject({
  note: z.string(),
  alarms: z.array(
    z.strictObject({ title: z.string(), trips: z.int(), firstTrip: z.string(), blindADay: z.string() }),
  ),
  findings: z.array(
    z.strictObject({
      title: z.string(),
      told: z.string().describe('when the finding could first have been told'),
      leads: z.array(
        z.strictObject({
          alarm: z.string(),
          says: z.string().describe('against the onset, which is known with hindsight'),
          fromTold: z.string().describe('against the day on which it could have been told'),
        }),
      ),
      hidden: z.string().nullable().describe('why the average hid the fault'),
    }),
  ),
  suggested: z.array(z.strictObject({ probe: z.string(), limit: z.string(), rests: z.string() })),
});

const airAbove = z
  .strictObject({
    limit: z.string(),
    note: z.string(),
    degreeHoursUnit: z.string(),
    coldHolding: z
      .strictObject({
        limit: z.string(),
        note: z.string(),
        rows: z.array(
          z.strictObject({
            probe: z.string(),
            above: z.string(),
            settled: z.string(),
            degreeHours: z.string(),
            longest: z.string(),
          }),
        ),
      })
      .nullable()
      .describe(
        'against the published cold-holding limit; null where it is the limit itself or does not apply',
      ),
    rows: z.array(
      z.strictObject({
        probe: z.string(),
        above: z.string(),
        settled: z.string(),
        inDefrost: z.string(),
        degreeHours: z.string(),
        longest: z.string(),
        longestFrom: z.string(),
        unknown: z.string(),
      }),
    ),
  })
  .nullable()
  .describe('null without a limit and without a set point');

const ucum = z.string().describe('UCUM code');
const interval = { difference: z.number(), low: z.number(), high: z.number() };
const startAndEnd = z.strictObject({ start: timestamp, end: timestamp });

const repair = z.strictObject({
  format: z.literal('rimelog-verify/1'),
  site: z.string(),
  circuit: z.string(),
  title: z.string(),
  serviced: timestamp,
  verdict: z.enum(['recovered', 'partly', 'unchanged', 'too-early']),
  summary: z.string(),
  relapsed: z.boolean().describe('it was better in the first days after the service and has come back'),
  windows: z.strictObject({
    before: startAndEnd,
    after: startAndEnd,
    defrostsAfter: z.int(),
    hoursAfter: z.number(),
    summary: z.string(),
  }),
  measures: z.array(
    z.strictObject({
      name: z.enum(figureIds),
      point: z.string().nullable(),
      title: z.string(),
      unit: ucum,
      before: z.number(),
      after: z.number(),
      ...interval,
      usual: z.number().nullable(),
      usualFrom: z.enum(['own-past', 'sound-circuit']).nullable(),
      share: z.number().nullable().describe('of the departure that is gone'),
      state: z.enum(['recovered', 'partly', 'unchanged', 'came-back', 'new']).nullable(),
      judged: z.boolean().describe('the verdict rests on it'),
      shown: z.boolean().describe('it stands in the table that people read'),
      display: z.string().describe('the change with its interval, in words'),
      words: z.strictObject({
        usual: z.string(),
        before: z.string(),
        after: z.string(),
        change: z.string(),
        state: z.string(),
      }),
    }),
  ),
  leftOpen: z.array(
    z.strictObject({
      what: z.enum(['shut-off', 'override', 'set-point', 'no-defrost']),
      circuit: z.string(),
      since: timestamp,
      summary: z.string(),
    }),
  ),
  backOn: z.array(z.string()).describe('a line for each thing left open, or one that says that nothing is'),
  notice: z.string(),
});

const comparison = z.strictObject({
  format: z.literal('rimelog-compare/1'),
  site: z.string(),
  before: startAndEnd,
  after: startAndEnd,
  heading: z.string(),
  summary: z.string(),
  places: z.array(
    z.strictObject({
      kind: z.enum(['circuit', 'suction-group']),
      id: z.string(),
      title: z.string(),
      changed: z.boolean(),
      figures: z.array(
        z.strictObject({
          name: z.enum(figureIds),
          point: z.string().nullable(),
          title: z.string(),
          unit: ucum,
          before: z.number(),
          after: z.number(),
          ...interval,
          changed: z.boolean().describe('surely, and by enough to matter'),
          words: z.strictObject({ before: z.string(), after: z.string(), change: z.string() }),
        }),
      ),
    }),
  ),
  remarks: z.array(z.string()),
  method: z.string(),
  notice: z.string(),
});

const sisters = z.strictObject({
  format: z.literal('rimelog-sisters/1'),
  site: z.string(),
  circuit: z.string(),
  title: z.string(),
  sisters: z.array(z.string()),
  summary: z.string(),
  figures: z.array(
    z.strictObject({
      name: z.enum(figureIds),
      title: z.string(),
      unit: ucum,
      own: z.number(),
      sisters: z.array(z.strictObject({ circuit: z.string(), value: z.number() })),
      outside: z.boolean(),
      words: z.strictObject({ own: z.string(), sisters: z.string() }),
    }),
  ),
  notice: z.string(),
});

const background = z.strictObject({
  circuit: z.string(),
  normal: normalHere,
  sisters: sisters.nullable().describe('null with fewer than two sisters on its suction group'),
  alarm: alarmSaid,
  exposure: airAbove,
  words: z.strictObject({ usual: z.string(), edge: z.string(), unusual: z.string() }),
});

const series = z.strictObject({
  circuit: z.string(),
  name: z.string(),
  suctionGroup: z.string().nullable(),
  span: span.describe('what was asked for, held inside the log'),
  logSpan: span,
  stepMs: z.number(),
  timeZone: z.string(),
  offsets: z.array(z.strictObject({ from: instant, offsetMinutes: z.number() })),
  temperatureUnit: z.string(),
  pressureUnit: z.string(),
  probes: z.array(z.strictObject({ point: z.string(), line })),
  settled: z
    .strictObject({
      times: z.array(instant),
      probes: z.array(z.strictObject({ point: z.string(), ...band })),
      valve: bands.nullable(),
      suction: z.strictObject({ low: bands, mean: bands, high: bands }).nullable(),
    })
    .describe('a column at a time; air while cooling, defrosts and recoveries left out'),
  setPoint: line.nullable(),
  limit: z.number().nullable(),
  defrosts: z.array(
    z.strictObject({ from: instant, to: instant, source: z.enum(['status', 'schedule', 'shape']) }),
  ),
  off: z.array(span),
  valve: z.strictObject({ point: z.string(), line }).nullable().describe('share open, 0 to 1'),
  suction: z.strictObject({ group: z.string(), point: z.string(), line, target: line.nullable() }).nullable(),
});

const described = {
  point: z.string(),
  quantity: z.string(),
  exportUnit: z.string().describe('UCUM code of the unit in the export'),
  intervalMs: z.number(),
  logging: z.enum(['sampled', 'change-of-value']),
};

/** Every body that the server answers with, by its name in the OpenAPI document. */
export const schemas = {
  Health: z.strictObject({ status: z.literal('ok'), version: z.string() }),
  Accepted: z.strictObject({ id: z.string(), ...addresses }),
  Entry: entry,
  Entries: z.strictObject({ exports: z.array(entry) }),
  Sites: z.strictObject({ sites: z.array(site) }),
  Findings: findingsSchema,
  Report: report,
  Background: background,
  Repair: repair,
  Comparison: comparison,
  Series: series,
  Records: z.strictObject({ records: z.array(z.strictObject(described)) }),
  Record: z.strictObject({ ...described, unit: z.string(), span, line }),
  Problem: z.strictObject({
    error: z.strictObject({
      code: z.enum(Object.keys(problems) as [string, ...string[]]),
      message: z.string().describe('what happened'),
      remedy: z.string().describe('what to do'),
      reference: z.string().optional().describe('under which the reason of an internal error is logged'),
    }),
  }),
};
export type SchemaName = keyof typeof schemas;
