import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { allowedArrows, layerViolations } from './layers/layer-rules.ts';
import { importsOf, readSources, roomOf, sourceFile } from './layers/source-imports.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const folders = ['src', 'server', 'web', 'sample-logs'].filter((folder) => existsSync(`${root}/${folder}`));
const sources = readSources(root, folders);

test('no file uses a room that comes after its own', () => {
  expect(layerViolations(sources)).toEqual([]);
});

test('every room has its line in the table of allowed arrows', () => {
  const rooms = new Set(sources.map((file) => roomOf(file.path)));
  expect([...rooms].filter((room) => allowedArrows[room] === undefined)).toEqual([]);
});

test('the allowed arrows themselves run one way', () => {
  const order: string[] = [];
  const place = (room: string, trail: string[]): void => {
    expect(trail).not.toContain(room);
    if (order.includes(room)) return;
    for (const other of allowedArrows[room] ?? []) place(other, [...trail, room]);
    order.push(room);
  };
  for (const room of Object.keys(allowedArrows)) place(room, []);
  expect(order).toHaveLength(Object.keys(allowedArrows).length);
});

describe('a planted violation is found', () => {
  const planted: [string, string, string, string][] = [
    [
      'an arrow backwards',
      'src/signals/air.ts',
      "import { diagnose } from '../diagnosis/diagnose.ts';",
      'signals must not',
    ],
    ['a re-export', 'src/units/all.ts', "export { median } from '../maths/median.ts';", 'units must not'],
    ['a late import', 'src/model/log.ts', "const m = await import('../cli/main.ts');", 'model must not'],
    ['a side effect', 'src/maths/mean.ts', "import '../store/open.ts';", 'maths must not'],
    [
      'several lines',
      'src/maths/mean.ts',
      "import {\n  a,\n  b,\n} from '../model/log.ts';",
      'maths must not',
    ],
    [
      'a worker',
      'src/signals/a.ts',
      "new Worker(new URL('../pipeline/w.ts', import.meta.url))",
      'signals must not',
    ],
    ['code in the page', 'web/list.ts', "import { rank } from '../src/reporting/rank.ts';", 'only types'],
    [
      'a file',
      'src/analyses/x/index.ts',
      "import { readFileSync } from 'node:fs';",
      'must not import node:fs',
    ],
    ['a clock', 'src/diagnosis/now.ts', 'export const now = Date.now();', 'reads a clock'],
    ['chance', 'src/maths/dice.ts', 'export const dice = () => Math.random();', 'uses chance'],
    ['the console', 'src/signals/a.ts', "console.log('here');", 'writes to the console'],
    [
      'a sister analysis',
      'src/analyses/x/a.ts',
      "import { y } from '../y/index.ts';",
      'an analysis must not',
    ],
    [
      'a package at the wrong place',
      'src/reporting/a.ts',
      "import { DataFrame } from 'danfojs-node';",
      'audit alone',
    ],
    [
      'a file of such a package',
      'src/reporting/a.ts',
      "import { DataFrame } from 'danfojs-node/dist/danfojs-base/index.js';",
      'audit alone',
    ],
  ];

  test.each(planted)('%s', (_, path, text, message) => {
    expect(layerViolations([sourceFile(path, text)])).toEqual([expect.stringContaining(message)]);
  });

  test('a cycle', () => {
    const one = sourceFile('src/maths/one.ts', "import { two } from './two.ts';");
    const two = sourceFile('src/maths/two.ts', "import { one } from './one.ts';");
    expect(layerViolations([one, two])).toEqual([expect.stringContaining('import cycle')]);
  });
});

test('what is allowed is let through', () => {
  const text = [
    "import type { Log } from '../model/log.ts';",
    "import { median } from '../maths/median.ts'; // from '../cli/main.ts'",
    "/* import { x } from '../store/x.ts'; */",
    "export const said = 'never Date-now // nor this';",
  ].join('\n');
  expect(layerViolations([sourceFile('src/signals/air.ts', text)])).toEqual([]);
  expect(importsOf(text)).toHaveLength(2);
});
