import { roomOf, type SourceFile, targetOf, withoutComments } from './source-imports.ts';

/**
 * Which room may use which. Data flows one way, so every room names only what comes before it; a room may always use its
 * own files. Whatever is not written here is forbidden.
 */
export const allowedArrows: { readonly [room: string]: readonly string[] } = {
  // The core: pure functions, no file, no clock, no chance.
  units: [],
  maths: ['units'],
  model: ['units', 'maths'],
  refrigerants: ['units', 'maths'],
  signals: ['units', 'maths', 'model', 'refrigerants'],
  analyses: ['units', 'maths', 'model', 'refrigerants', 'signals'],
  diagnosis: ['units', 'maths', 'model', 'refrigerants', 'signals', 'analyses'],
  // The border, inwards.
  importing: ['units', 'maths', 'model', 'refrigerants'],
  opening: ['importing'],
  // The work around the findings: still the core.
  figures: ['units', 'maths', 'model', 'signals'],
  exposure: ['units', 'maths', 'model', 'signals'],
  norms: ['units', 'maths', 'model', 'signals', 'figures'],
  'alarm-replay': ['units', 'maths', 'model', 'signals', 'figures'],
  'repair-check': ['units', 'maths', 'model', 'signals', 'figures'],
  comparison: ['units', 'maths', 'model', 'signals', 'figures'],
  visit: ['units', 'maths', 'model', 'signals', 'diagnosis', 'exposure'],
  // What uses a finished judgement.
  audit: [
    ...['units', 'maths', 'model', 'refrigerants', 'signals', 'analyses', 'diagnosis'],
    ...['figures', 'exposure', 'norms', 'alarm-replay'],
  ],
  reporting: [
    ...['units', 'maths', 'model', 'refrigerants', 'signals', 'analyses', 'diagnosis', 'audit'],
    ...['figures', 'exposure', 'norms', 'alarm-replay', 'repair-check', 'comparison', 'visit'],
  ],
  store: ['units', 'maths', 'model', 'signals', 'diagnosis'],
  pipeline: ['units', 'model', 'opening', 'importing', 'signals', 'analyses', 'diagnosis'],
  // The outside.
  cli: [
    ...[
      'units',
      'maths',
      'model',
      'opening',
      'importing',
      'refrigerants',
      'signals',
      'analyses',
      'diagnosis',
    ],
    ...['pipeline', 'audit', 'reporting', 'store', 'server'],
    ...['figures', 'exposure', 'norms', 'alarm-replay', 'repair-check', 'comparison', 'visit'],
  ],
  server: [
    ...['units', 'maths', 'model', 'opening', 'importing', 'signals', 'analyses', 'diagnosis'],
    ...['figures', 'repair-check', 'comparison', 'visit', 'pipeline', 'audit', 'reporting', 'store'],
  ],
  // The page reads the server's JSON; only the shapes of that JSON may be imported (see `typesOnly`).
  web: ['server', 'reporting'],
  // The simulators know nothing of how their logs will be judged.
  'sample-logs': ['units', 'maths', 'model', 'refrigerants'],
};

/** Rooms of which another may import types alone. */
export const typesOnly: { readonly [room: string]: readonly string[] } = { web: ['server', 'reporting'] };

/** Rooms without input, output, clock, chance or talk. */
export const pureRooms = [
  ...['units', 'maths', 'model', 'refrigerants', 'signals', 'analyses', 'diagnosis'],
  ...['figures', 'exposure', 'norms', 'alarm-replay', 'repair-check', 'comparison', 'visit'],
];

const impurities: readonly (readonly [RegExp, string])[] = [
  [/\bDate\.now\b|\bnew Date\(\s*\)|\bperformance\.now\b|\bsetTimeout\b|\bsetInterval\b/, 'reads a clock'],
  [/\bMath\.random\b|\bcrypto\./, 'uses chance'],
  [/\bconsole\./, 'writes to the console'],
  [/\bprocess\.|\bfetch\(|\bglobalThis\b/, 'reaches outside'],
  [/\bIntl\.|\.toLocale[A-Z]/, "depends on the machine's locale"],
];

/** Packages that may be used in one room alone. */
const roomOfPackage: { readonly [name: string]: string } = {
  'danfojs-node': 'audit',
  'plotly.js-dist-min': 'web',
  express: 'server',
  commander: 'cli',
};

function arrowViolations(file: SourceFile): string[] {
  const room = roomOf(file.path);
  return file.imports.flatMap(({ specifier, typeOnly }) => {
    const target = targetOf(file.path, specifier);
    if (target === null) return [];
    const other = roomOf(target);
    if (other === room) return [];
    if (!allowedArrows[room]?.includes(other))
      return [`${file.path}: ${room} must not import ${other} (${specifier})`];
    const carriesCode = typesOnly[room]?.includes(other) === true && !typeOnly;
    return carriesCode ? [`${file.path}: ${room} may import only types from ${other} (${specifier})`] : [];
  });
}

function purityViolations(file: SourceFile): string[] {
  if (!pureRooms.includes(roomOf(file.path))) return [];
  const code = withoutComments(file.text);
  return [
    ...file.imports
      .filter(({ specifier }) => specifier.startsWith('node:'))
      .map(({ specifier }) => `${file.path}: a core room must not import ${specifier}`),
    ...impurities
      .filter(([pattern]) => pattern.test(code))
      .map(([, what]) => `${file.path}: a core room ${what}`),
  ];
}

/** `src/analyses/<id>/…` stands alone; only the registry names them all. */
function siblingViolations(file: SourceFile): string[] {
  const analysis = /^src\/analyses\/([^/]+)\//.exec(file.path)?.[1];
  if (analysis === undefined) return [];
  return file.imports.flatMap(({ specifier }) => {
    const target = targetOf(file.path, specifier) ?? '';
    const other = /^src\/analyses\/([^/]+)\//.exec(target)?.[1];
    const forbidden = (other !== undefined && other !== analysis) || target === 'src/analyses/registry.ts';
    return forbidden ? [`${file.path}: an analysis must not import ${target}`] : [];
  });
}

function packageViolations(file: SourceFile): string[] {
  return file.imports.flatMap(({ specifier }) => {
    const room = roomOfPackage[specifier.split('/')[0]!];
    if (room === undefined || room === roomOf(file.path)) return [];
    return [`${file.path}: ${specifier} belongs to ${room} alone`];
  });
}

/** Import cycles; types do not count, they are gone before anything runs. */
export function importCycles(files: readonly SourceFile[]): string[] {
  const byPath = new Map(files.map((file) => [file.path, file]));
  const done = new Set<string>();
  const cycles: string[] = [];
  const visit = (name: string, trail: readonly string[]): void => {
    const start = trail.indexOf(name);
    if (start >= 0) {
      cycles.push(`import cycle: ${[...trail.slice(start), name].join(' → ')}`);
      return;
    }
    if (done.has(name)) return;
    for (const { specifier, typeOnly } of byPath.get(name)?.imports ?? []) {
      const target = targetOf(name, specifier);
      if (target !== null && !typeOnly) visit(target, [...trail, name]);
    }
    done.add(name);
  };
  for (const file of files) visit(file.path, []);
  return cycles;
}

export function layerViolations(files: readonly SourceFile[]): string[] {
  return [
    ...files.flatMap((file) => [
      ...arrowViolations(file),
      ...purityViolations(file),
      ...siblingViolations(file),
      ...packageViolations(file),
    ]),
    ...importCycles(files),
  ];
}
