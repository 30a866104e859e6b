import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import type { RoundDocument } from '../../src/reporting/round/round-document.ts';
import { runCli } from './support/run-cli.ts';
import { scratchFolder } from './support/scratch.ts';
import { smallExport } from './support/small-export.ts';

const sample = (name: string) => fileURLToPath(new URL(`../../sample-logs/${name}`, import.meta.url));
const scratch = scratchFolder();
const small = scratch.write('small.csv', smallExport());
const photo = scratch.write('photo.csv', Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0));

test('rimelog round puts the stops of many stores in one list, and goes on past what it cannot read', async () => {
  const folder = `${scratch.path}/pages`;
  const { code, out } = await runCli([
    'round',
    small,
    photo,
    sample('iced-end'),
    sample('lying-probe-step'),
    '--html',
    folder,
  ]);
  expect(code).toBe(0);
  expect(out).toMatch(/^4 stores: /u);
  expect(out).toMatch(/^1\. ▲ ACT {2}Quillan Row Foods: M01/mu);
  expect(out).toContain('PNG');
  const names = readdirSync(folder).sort();
  expect(names).toEqual([
    '01-small-csv.html',
    '03-quillan-row-foods.html',
    expect.stringMatching(/^04-[a-z0-9-]+\.html$/u),
    'index.html',
  ]);
  const page = readFileSync(`${folder}/index.html`, 'utf8');
  for (const [, address] of page.matchAll(/<a href="([^"#]+)"/gu)) expect(names).toContain(address);
  expect(page).toContain('href="03-quillan-row-foods.html"');
});

test('its JSON holds the same stops as the sheets of the single stores', async () => {
  const { code, out } = await runCli(['round', sample('iced-end'), small, '--json']);
  expect(code).toBe(0);
  const round = JSON.parse(out) as RoundDocument;
  expect(round.format).toBe('rimelog-round/1');
  const visit = await runCli(['visit', sample('iced-end')]);
  expect(round.stops.filter(({ store }) => store === 'Quillan Row Foods')).toHaveLength(
    visit.out.match(/^\d+\. [▲◆]/gmu)!.length,
  );
  expect(round.stores.map(({ source }) => source)).toContain(small);
});

test('ends with status 2 where no store could be read', async () => {
  const { code, out } = await runCli(['round', photo, `${scratch.path}/nowhere`]);
  expect(code).toBe(2);
  expect(out).toContain('2 stores: nothing is known of any, for the reasons below.');
});
