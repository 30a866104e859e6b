import { z } from 'zod';
import type { ProblemCode } from '../problem.ts';
import { problems } from '../problem.ts';
import { type SchemaName, schemas } from './schemas.ts';

const reference = (name: SchemaName) => ({ $ref: `#/components/schemas/${name}` });
const json = (name: SchemaName, description: string) => ({
  description,
  content: { 'application/json': { schema: reference(name) } },
});

/** Refusals that any address can give: wrong query, foreign name, wrong method, a fault. */
const everywhere: readonly ProblemCode[] = ['bad-query', 'foreign-host', 'method-not-allowed', 'internal'];

function refusals(codes: readonly ProblemCode[]) {
  const byStatus = new Map<number, ProblemCode[]>();
  for (const code of new Set([...codes, ...everywhere])) {
    const [status] = problems[code];
    byStatus.set(status, [...(byStatus.get(status) ?? []), code]);
  }
  const entries = [...byStatus].sort(([a], [b]) => a - b);
  return Object.fromEntries(
    entries.map(([status, ofStatus]) => [String(status), json('Problem', ofStatus.join(', '))]),
  );
}

const text = { type: 'string' };
const parameter = (name: string, place: 'path' | 'query', description: string, schema: object = text) => ({
  name,
  in: place,
  required: place === 'path',
  description,
  schema,
});
const id = parameter('id', 'path', 'id of the export', { type: 'string', pattern: '^[0-9a-f]{16}$' });
const range = [
  parameter('from', 'query', 'RFC 3339; the start of the log unless given', {
    type: 'string',
    format: 'date-time',
  }),
  parameter('to', 'query', 'RFC 3339; the end of the log unless given', {
    type: 'string',
    format: 'date-time',
  }),
  parameter('pixels', 'query', 'columns of the plot, 800 unless given', {
    type: 'integer',
    minimum: 20,
    maximum: 4000,
  }),
];

const circuit = parameter('circuit', 'path', 'id of the circuit');
const month = parameter(
  'month',
  'path',
  'one of fullMonths of the report, or all for every day of the export',
  {
    type: 'string',
    pattern: '^(\\d{4}-(0[1-9]|1[0-2])|all)$',
  },
);
const serviced = {
  ...parameter('serviced', 'query', 'when, on the clock of the site: 2026-09-12T10:30'),
  required: true,
};
const against = parameter('against', 'path', 'id of the other export', {
  type: 'string',
  pattern: '^[0-9a-f]{16}$',
});

const ofExport: readonly ProblemCode[] = ['unknown-export'];
const ofResult: readonly ProblemCode[] = ['unknown-export', 'not-ready', 'analysis-failed'];

const onDemand: readonly ProblemCode[] = [...ofResult, 'busy', 'disk-full', 'not-writable'];

function get(
  summary: string,
  answer: object,
  codes: readonly ProblemCode[],
  parameters: readonly object[] = [],
) {
  return { get: { summary, parameters, responses: { 200: answer, ...refusals(codes) } } };
}

/** Of what is made when it is asked for; to ask for the events begins it. */
function workEvents(codes: readonly ProblemCode[], parameters: readonly object[]) {
  return get(
    'The same begun and followed as server-sent events: progress, then ready {result} or failed',
    { description: 'Events', content: { 'text/event-stream': { schema: text } } },
    [...codes, 'too-many-streams'],
    parameters,
  );
}

const upload = {
  summary: 'Send one or more exports, and optionally a site file, to be analysed',
  requestBody: {
    required: true,
    content: {
      'multipart/form-data': {
        schema: {
          type: 'object',
          required: ['export'],
          additionalProperties: false,
          properties: {
            export: { type: 'array', minItems: 1, items: { type: 'string', format: 'binary' } },
            site: { type: 'string', format: 'binary', description: 'YAML or JSON' },
          },
        },
      },
    },
  },
  responses: {
    202: {
      ...json('Accepted', 'Received; the analysis runs or waits'),
      headers: { Location: { schema: text, description: 'address of the entry' } },
    },
    ...refusals([
      'bad-form',
      'no-export',
      'unknown-field',
      'foreign-origin',
      'too-large',
      'too-many-files',
      'not-multipart',
      'encoded-body',
      'busy',
      'disk-full',
      'not-writable',
      'storage-quota',
    ]),
  },
};

const anotherSiteFile = {
  summary:
    'Analyse the stored upload anew with another site file; what was found before stays under its own id',
  requestBody: {
    required: true,
    description: 'The site file itself, YAML or JSON; told by its content',
    content: { 'application/yaml': { schema: text }, 'application/json': { schema: { type: 'object' } } },
  },
  responses: {
    202: {
      ...json('Accepted', 'Stored under a new id; the analysis runs or waits'),
      headers: { Location: { schema: text, description: 'address of the entry' } },
    },
    ...refusals([
      ...ofExport,
      'bad-site-file',
      'foreign-origin',
      'too-large',
      'encoded-body',
      'busy',
      'disk-full',
      'not-writable',
      'storage-quota',
    ]),
  },
};

/** Schemas by name; named parts inside one of them become schemas of their own, as OpenAPI wants it. */
function componentSchemas(): Record<string, unknown> {
  const components: Record<string, unknown> = {};
  for (const [name, schema] of Object.entries(schemas)) {
    const text = JSON.stringify(z.toJSONSchema(schema, { target: 'draft-2020-12' }));
    const { $schema: _, $defs, ...rest } = JSON.parse(text.replaceAll('#/$defs/', '#/components/schemas/'));
    Object.assign(components, $defs, { [name]: rest });
  }
  return components;
}

/** The HTTP interface as OpenAPI 3.1; docs/reference/openapi.json is this, written out. */
export function openApiDocument() {
  const components = componentSchemas();
  const exportPath = '/api/v1/exports/{id}';
  return {
    openapi: '3.1.0',
    info: {
      title: 'rimelog',
      version: '1',
      description: 'Exports in, findings out. See docs/reference/http.md for limits and refusals.',
      license: { name: 'MIT', identifier: 'MIT' },
    },
    servers: [{ url: '/' }],
    paths: {
      '/health': get('Whether the server answers', json('Health', 'It does'), []),
      '/api/v1/openapi.json': get(
        'This document',
        { description: 'OpenAPI 3.1', content: { 'application/json': { schema: { type: 'object' } } } },
        [],
      ),
      '/api/v1/sites': get('Sites by name, each with its exports', json('Sites', 'Newest first'), []),
      '/api/v1/exports': {
        ...get('All exports', json('Entries', 'Newest first'), []),
        post: upload,
      },
      [exportPath]: {
        ...get('One export and how far it is', json('Entry', 'The entry'), ofExport, [id]),
        delete: {
          summary: 'Delete an export with all that was made of it; an analysis under way is stopped',
          parameters: [id],
          responses: { 204: { description: 'Deleted' }, ...refusals([...ofExport, 'foreign-origin']) },
        },
      },
      [`${exportPath}/events`]: get(
        'Progress as server-sent events: progress, then ready or failed',
        { description: 'Events', content: { 'text/event-stream': { schema: text } } },
        [...ofExport, 'too-many-streams'],
        [id],
      ),
      [`${exportPath}/findings`]: get('The findings document', json('Findings', 'Worst first'), ofResult, [
        id,
      ]),
      [`${exportPath}/report`]: get('What the pages say beside it', json('Report', 'The report'), ofResult, [
        id,
      ]),
      [`${exportPath}/report.html`]: get(
        'The report as one file that opens without a network, to mail or print',
        { description: 'HTML, as an attachment', content: { 'text/html': { schema: text } } },
        ofResult,
        [id],
      ),
      [`${exportPath}/visit.html`]: get(
        'The sheet before a visit, a page to print or to read on a phone',
        { description: 'HTML', content: { 'text/html': { schema: text } } },
        [...ofResult, 'made-earlier'],
        [id],
      ),
      [`${exportPath}/months/{month}`]: get(
        'The report of a month; made when it is first asked for, which takes as long as the analysis',
        { description: 'HTML', content: { 'text/html': { schema: text } } },
        [...onDemand, 'no-month'],
        [id, month],
      ),
      [`${exportPath}/months/{month}/events`]: workEvents([...onDemand, 'no-month'], [id, month]),
      [`${exportPath}/circuits/{circuit}/repair`]: get(
        'Whether a repair held: the circuit before and after its service, as rimelog verify --json gives it',
        json('Repair', 'Made when it is asked for, which takes as long as the analysis'),
        [...onDemand, 'unknown-circuit', 'bad-service-time'],
        [id, circuit, serviced],
      ),
      [`${exportPath}/circuits/{circuit}/repair/events`]: workEvents(
        [...onDemand, 'unknown-circuit', 'bad-service-time'],
        [id, circuit, serviced],
      ),
      [`${exportPath}/comparisons/{against}`]: get(
        'Two stored exports of one site, figure by figure, as rimelog compare --json gives it',
        json('Comparison', 'The earlier one before, whichever of the two it is'),
        [...onDemand, 'same-export', 'nothing-in-common'],
        [id, against],
      ),
      [`${exportPath}/comparisons/{against}/events`]: workEvents(
        [...onDemand, 'same-export', 'nothing-in-common'],
        [id, against],
      ),
      [`${exportPath}/site`]: { post: { ...anotherSiteFile, parameters: [id] } },
      [`${exportPath}/site-file`]: get(
        'The site file that was guessed, to be corrected and sent along next time',
        { description: 'YAML, as an attachment', content: { 'application/yaml': { schema: text } } },
        [...ofResult, 'no-site-file'],
        [id],
      ),
      [`${exportPath}/circuits/{circuit}/background`]: get(
        'What is known of a circuit beside its findings: normal here, its sisters, alarms replayed, air above its limit',
        json('Background', 'In words and in the units of the site'),
        [...ofResult, 'unknown-circuit', 'made-earlier'],
        [id, circuit],
      ),
      [`${exportPath}/circuits/{circuit}/series`]: get(
        'The lines of one circuit, reduced to what a plot can show',
        json('Series', 'Lowest and highest of every pixel column'),
        [...ofResult, 'unknown-circuit'],
        [id, circuit, ...range],
      ),
      [`${exportPath}/groups/{group}/series`]: get(
        'The lines of one suction group: no air, and in the place of the valve the share of its machines running',
        json('Series', 'Lowest and highest of every pixel column'),
        [...ofResult, 'unknown-group'],
        [id, parameter('group', 'path', 'id of the suction group'), ...range],
      ),
      [`${exportPath}/records`]: get('All points', json('Records', 'In the order of the log'), ofResult, [
        id,
      ]),
      [`${exportPath}/records/{point}`]: get(
        'One point, reduced to what a plot can show',
        json('Record', 'Lowest and highest of every pixel column'),
        [...ofResult, 'unknown-point'],
        [id, parameter('point', 'path', 'its name, as in the export'), ...range],
      ),
    },
    components: { schemas: components },
  };
}
