/** Every refusal of the server: status, what happened, what to do. docs/reference/http.md holds the same list. */
export const problems = {
  'bad-request': [
    400,
    'The request could not be understood.',
    'Check its form against /api/v1/openapi.json.',
  ],
  'bad-query': [
    400,
    'A query parameter is unknown, repeated or malformed.',
    'Give those of /api/v1/openapi.json, once each.',
  ],
  'bad-form': [
    400,
    'The upload is not a complete multipart form.',
    'Send multipart/form-data with each export as a file in the field “export”.',
  ],
  'no-export': [400, 'The upload holds no export.', 'Send at least one file in the field “export”.'],
  'unknown-field': [
    400,
    'The upload has a field that is not known.',
    'Use the fields “export” (once or more) and “site” (at most once), each a file.',
  ],
  'foreign-host': [
    403,
    'The server was asked for under a name that it does not know.',
    'Use its address, or start it with that name in RIMELOG_ALLOWED_HOSTS.',
  ],
  'foreign-origin': [
    403,
    'The request came from another site’s page.',
    'Open the pages of this server itself and try again there.',
  ],
  'not-found': [404, 'There is nothing at this address.', 'Start from the list of exports, /api/v1/exports.'],
  'unknown-export': [
    404,
    'No export of this id is stored.',
    'It may have been deleted: look it up in /api/v1/exports.',
  ],
  'unknown-circuit': [
    404,
    'The site has no circuit of this id.',
    'The circuits are listed in the findings document.',
  ],
  'unknown-group': [
    404,
    'The site has no suction group of this id.',
    'The suction groups are named by the findings and the circuits.',
  ],
  'unknown-point': [
    404,
    'The export has no point of this name.',
    'The points of a circuit are listed with it.',
  ],
  'same-export': [
    400,
    'An export cannot be compared with itself.',
    'Choose another export of the same site.',
  ],
  'bad-service-time': [
    400,
    'The time of service cannot be used.',
    'Give a time within the export, on the site’s clock: 2026-09-12T10:30.',
  ],
  'no-site-file': [404, 'No site file was guessed for this export.', 'It came with a site file of its own.'],
  'method-not-allowed': [
    405,
    'This address does not take that method.',
    'The Allow header lists those it takes.',
  ],
  'not-ready': [409, 'The analysis has not finished.', 'Follow its events, or ask again shortly.'],
  'no-month': [
    404,
    'The export does not hold the whole of this month.',
    'The months that it holds are named in its report; all stands for every day of the export.',
  ],
  'made-earlier': [
    409,
    'This export was analysed by an earlier rimelog, which did not keep this.',
    'Send the export again, or a site file to /api/v1/exports/{id}/site.',
  ],
  'bad-site-file': [
    422,
    'The site file cannot be used.',
    'Correct it as the message says and send it again, as the body itself.',
  ],
  'nothing-in-common': [
    422,
    'The two exports have no circuit and no suction group in common.',
    'Send both with site files that give the same names, or compare exports of one site.',
  ],
  'analysis-failed': [
    422,
    'The export could not be analysed.',
    'See the reason in its entry in /api/v1/exports.',
  ],
  'too-large': [413, 'The upload is larger than is taken.', 'Send fewer files at a time, or a shorter span.'],
  'too-many-files': [
    413,
    'The upload has more files than are taken.',
    'Put the files into one .zip, or send fewer.',
  ],
  'not-multipart': [
    415,
    'Uploads are taken as multipart/form-data only.',
    'Send each export as a file in the field “export”.',
  ],
  'encoded-body': [
    415,
    'A body with a Content-Encoding is not taken.',
    'Send it plain; an export may itself be a .gz or .zip file.',
  ],
  internal: [
    500,
    'Something went wrong in the server.',
    'Try again; if it stays, look for the reference in the server’s output.',
  ],
  'method-unknown': [501, 'The server does not know that method.', 'Use GET, HEAD, POST or DELETE.'],
  busy: [
    503,
    'As many analyses are running and waiting as this server takes.',
    'Try again when one of them has finished.',
  ],
  'too-many-streams': [
    503,
    'Too many progress streams are open.',
    'Close other windows, or ask for the entry in /api/v1/exports instead.',
  ],
  'pages-missing': [503, 'The pages have not been built.', 'Run npm run build and start the server again.'],
  'disk-full': [
    507,
    'The disk that holds the data folder is full.',
    'Delete exports that are no longer needed.',
  ],
  'not-writable': [
    507,
    'The data folder cannot be written.',
    'Start the server with --data and another folder.',
  ],
  'storage-quota': [
    507,
    'The data folder holds as much as this server keeps.',
    'Delete exports that are no longer needed.',
  ],
} as const satisfies Record<string, readonly [number, string, string]>;

export type ProblemCode = keyof typeof problems;

/** A refusal on its way to the client. `detail` replaces the general message with what is known of this case. */
export class Problem extends Error {
  readonly code: ProblemCode;
  readonly status: number;
  readonly remedy: string;
  readonly headers: Readonly<Record<string, string>>;

  constructor(
    code: ProblemCode,
    { detail, remedy, headers }: { detail?: string; remedy?: string; headers?: Record<string, string> } = {},
  ) {
    const [status, message, usualRemedy] = problems[code];
    super(detail ?? message);
    this.name = 'Problem';
    this.code = code;
    this.status = status;
    this.remedy = remedy ?? usualRemedy;
    this.headers = headers ?? {};
  }
}
