import { z } from 'zod';
import { causes, findingKinds, origins, severities } from '../model/finding.ts';

const time = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}[+-]\d{2}:\d{2}$/)
  .describe('RFC 3339 with the offset of the site');

const likelihood = z.number().min(0).max(1);

const issue = z
  .object({
    code: z.string().describe('stable code, catalogued in docs/reference/import-issues.md'),
    line: z.int().min(1).nullable(),
    column: z.string().nullable(),
    count: z.int().min(0),
    message: z.string(),
    examples: z.array(z.string()).optional(),
  })
  .meta({ id: 'issue' });

const file = z
  .object({
    name: z.string(),
    rows: z.int().min(0),
    rowsRejected: z.int().min(0),
    values: z.int().min(0),
    valuesRejected: z.int().min(0),
    issues: z.array(issue),
    choices: z.array(
      z.object({
        about: z.string(),
        chosen: z.string(),
        because: z.string(),
        override: z.string().nullable().describe('the flag that takes the other reading'),
      }),
    ),
  })
  .meta({ id: 'file' });

export const importSchema = z
  .object({
    timeZone: z.string(),
    timeZoneSource: z.enum(['site', 'option', 'machine', 'offsets-in-export']),
    files: z.array(file),
    issues: z.array(issue).describe('of the export as a whole'),
  })
  .meta({ id: 'import' });

const measure = z
  .object({
    name: z.string(),
    value: z.number(),
    low: z.number().nullable(),
    high: z.number().nullable(),
    unit: z.string().describe('UCUM code; differences, rates and degree-hours in kelvin'),
    display: z.string().describe('the same in the units of the site'),
  })
  .meta({ id: 'measure' });

const cause = z
  .object({
    cause: z.enum(causes),
    likelihood,
    because: z.string(),
    checkFirst: z.array(z.string()),
    bring: z.array(z.string()),
  })
  .meta({ id: 'cause' });

const projection = z
  .object({
    limit: z.number(),
    unit: z.string(),
    display: z.string(),
    at: time.nullable(),
    earliest: time.nullable(),
    latest: time.nullable().describe('null beside a date: it may never get there'),
    reason: z.string().nullable().describe('why there is no date'),
  })
  .meta({ id: 'projection' });

const finding = z
  .object({
    id: z.string().describe('stable: the same data gives the same id'),
    kind: z.enum(findingKinds),
    severity: z.enum(severities),
    circuit: z.string().nullable(),
    suctionGroup: z.string().nullable(),
    probe: z.string().nullable().describe('the one point it is about'),
    points: z.array(z.string()).describe('all points that it rests on'),
    origin: z.enum(origins),
    onset: time,
    end: time.nullable().describe('null: still so at the end of the span'),
    confidence: likelihood,
    summary: z.string(),
    evidence: z.array(measure),
    causes: z.array(cause).describe('best first'),
    projection: projection.nullable(),
    notThis: z
      .array(z.string())
      .describe('look-alikes that were considered, each with why it is not that one'),
    wouldDecide: z.string().nullable().describe('the one observation that would change the verdict'),
    covers: z.array(z.string()).describe('circuits whose own flags this finding stands for'),
  })
  .meta({ id: 'finding' });

const abstention = z
  .object({
    analysis: z.string(),
    circuit: z.string().nullable(),
    suctionGroup: z.string().nullable(),
    reason: z.string(),
    needs: z.string().nullable().describe('what would allow the judgement'),
  })
  .meta({ id: 'abstention' });

/** The findings document, `rimelog-findings/1`. */
export const findingsSchema = z
  .object({
    format: z.literal('rimelog-findings/1'),
    site: z.string(),
    timeZone: z.string(),
    span: z.object({ start: time, end: time }),
    units: z.object({ temperature: z.string(), pressure: z.string() }),
    import: importSchema,
    findings: z.array(finding).describe('worst first'),
    circuits: z.array(
      z.object({
        id: z.string(),
        name: z.string(),
        rank: z.int().min(1),
        worst: z.enum(severities).nullable(),
      }),
    ),
    abstentions: z.array(abstention),
    notice: z.string(),
  })
  .meta({ title: 'rimelog findings document' });

export type FindingsDocument = z.infer<typeof findingsSchema>;
export type ImportDocument = z.infer<typeof importSchema>;
