import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect, test } from 'vitest';
import { siteFileJsonSchema } from '../../../src/importing/site-file/json-schema.ts';

const published = 'docs/reference/site.schema.json';

test('the published JSON Schema is the one that the code checks against', async () => {
  await expect(`${JSON.stringify(siteFileJsonSchema(), null, 2)}\n`).toMatchFileSnapshot(
    `../../../${published}`,
  );
});

test('an independent validator accepts and refuses by it', () => {
  const validate = new Ajv2020({ strict: false }).compile(JSON.parse(readFileSync(published, 'utf8')));
  const circuit = {
    id: 'M01',
    setPoint: { point: 'M01 set' },
    probes: ['M01 air'],
    defrost: { starts: ['06:00'] },
  };
  expect(validate({ site: 'Larkspur Street Market', circuits: [circuit] })).toBe(true);
  expect(validate({ circuits: [{ ...circuit, deforst: {} }] })).toBe(false);
  expect(validate({ circuits: [{ id: 'M01', probes: 'M01 air' }] })).toBe(false);
  expect(validate({ altitude: 'high' })).toBe(false);
});

interface SchemaNode {
  readonly properties?: Readonly<{ [key: string]: SchemaNode }>;
  readonly items?: SchemaNode;
  readonly anyOf?: readonly SchemaNode[];
}

function paths(node: SchemaNode, before: string): string[] {
  return Object.entries(node.properties ?? {}).flatMap(([key, child]) => {
    const path = `${before}${key}`;
    const below =
      child.items?.properties === undefined ? paths(child, `${path}.`) : paths(child.items, `${path}[].`);
    return [path, ...below];
  });
}

test('the reference page names every key, and none that is not one', () => {
  const page = readFileSync('docs/reference/site-file.md', 'utf8');
  const named = [...page.matchAll(/^\| `([^`]+)`/gm)].map((match) => match[1]);
  expect(named.sort()).toEqual(paths(siteFileJsonSchema() as SchemaNode, '').sort());
});
