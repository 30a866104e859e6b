import { describe, expect, test } from 'vitest';
import { ImportRefusal } from '../../../src/importing/readings.ts';
import { parseSiteFile } from '../../../src/importing/site-file/site-file.ts';

/** The example of the contract, with a store of its own. */
const whole = `
site: Larkspur Street Market
timeZone: America/Denver
altitude: 1609
units: { temperature: degF, pressure: psig }
racks:
  - id: A
    refrigerant: R-448A
    suctionGroups:
      - id: S1
        class: medium
        pressure: "S1 suction"
        pressureSetPoint: 45
        compressors: ["S1 comp 1", "S1 comp 2"]
        discharge: "S1 discharge"
        liquidLevel: "S1 level"
        others: { oil: "S1 oil" }
circuits:
  - id: M01
    name: Cut fruit line-up
    suctionGroup: S1
    setPoint: 36
    differential: 2
    controls: average
    probes: ["M01 air A", "M01 air B", "M01 air C"]
    returnAir: []
    valve: "M01 liquid"
    superheat: "M01 sh"
    defrost: { kind: off-cycle, status: "M01 dfr", perDay: 4, minutes: 45, starts: ["00:00", "06:00"] }
    limits: { high: 41, minutes: 60 }
`;

function refusal(text: string): string {
  try {
    parseSiteFile(text, 'site.yaml');
  } catch (error) {
    expect(error).toBeInstanceOf(ImportRefusal);
    return (error as ImportRefusal).message;
  }
  throw new Error('it was accepted');
}

test('reads every key of the contract, from YAML and from JSON alike', () => {
  const site = parseSiteFile(whole, 'site.yaml');
  expect(site.circuits?.[0]?.defrost?.perDay).toBe(4);
  expect(site.racks?.[0]?.suctionGroups?.[0]?.others).toEqual({ oil: 'S1 oil' });
  expect(parseSiteFile(JSON.stringify(site), 'site.json')).toEqual(site);
});

test('point names are trimmed', () => {
  const site = parseSiteFile('circuits: [{ id: M01, probes: ["  M01 air A "] }]', 'site.yaml');
  expect(site.circuits?.[0]?.probes).toEqual(['M01 air A']);
});

describe('a typo ends in one sentence that names file, line, path and the nearest known key', () => {
  test.each([
    [
      'circuits:\n  - id: M01\n    probes: [a]\n    deforst: { kind: electric }',
      'site.yaml, line 4: `circuits[0].deforst` is not a key of a site file; did you mean `defrost`?',
    ],
    [
      'circuits:\n  - id: M01\n    probes: [a]\n    setPoint: { pont: x }',
      'site.yaml, line 4: `circuits[0].setPoint.pont` is not a key of a site file; did you mean `point`?',
    ],
    [
      'unit: { temperature: degF }',
      'site.yaml, line 1: `unit` is not a key of a site file; did you mean `units`?',
    ],
    [
      'racks:\n  - id: A\n    suctiongroups: []',
      'site.yaml, line 3: `racks[0].suctiongroups` is not a key of a site file; did you mean `suctionGroups`?',
    ],
  ])('%j', (text, message) => {
    expect(refusal(text)).toBe(message);
  });
});

describe('a value that cannot be is refused with what is expected', () => {
  test.each([
    ['circuits:\n  - id: M01\n    probes: M01 air A', /line 3: `circuits\[0\]\.probes`: a list is expected/],
    ['circuits:\n  - id: M01\n    probes: [a]\n    setPoint: warm', /line 4: .*a number, or \{ point: /],
    [
      'circuits:\n  - id: M01\n    probes: [a]\n    defrost: { kind: water }',
      /one of off-cycle, electric, hot-gas/,
    ],
    ['circuits:\n  - id: M01\n    probes: [a]\n    defrost: { starts: ["25:00"] }', /HH:MM/],
    ['circuits:\n  - probes: [a]', /`circuits\[0\]\.id`: text is expected/],
    ['units: { temperature: celsius }', /one of degF, degC, K/],
    ['timeZone: America/Dever', /did you mean America\/Denver\?/i],
    ['altitude: 90000', /at most 6000/],
    ['just a sentence', /a block of keys is expected/],
    ['circuits: [', /line 1, column 12: this is neither YAML nor JSON/],
    ['', /is empty/],
    ['# only a remark', /is empty/],
  ])('%j', (text, message) => {
    expect(refusal(text)).toMatch(message);
  });
});

describe('what hangs together must fit', () => {
  test.each([
    [
      'circuits:\n  - id: M01\n    probes: [a]\n  - id: M01\n    probes: [b]',
      /line 4: the circuit id M01 is used twice/,
    ],
    [
      'circuits:\n  - id: M01\n    suctionGroup: S2\n    probes: [a]\nracks:\n  - id: A\n    suctionGroups: [{ id: S1 }]',
      /line 3: there is no suction group S2; did you mean S1\?/,
    ],
    [
      'circuits:\n  - id: M01\n    probes: [air a, air b]\n    controls: air c',
      /neither average, warmest, coldest nor one of the circuit's probes; did you mean air a\?/,
    ],
  ])('%j', (text, message) => {
    expect(refusal(text)).toMatch(message);
  });
});

test('an export given by mistake as site file is refused in one sentence', () => {
  const rows = 'time,a,b\n'.concat('2026-09-01 00:00:00,1.5,2.5\n'.repeat(50_000));
  expect(refusal(rows).split('\n')).toHaveLength(1);
  expect(refusal('x'.repeat(2_000_001))).toMatch(/Is it an export given as --site\?/);
});

test('aliases that would blow up are refused', () => {
  const bomb = ['a: &a [x, x, x, x, x, x, x, x, x]'];
  for (let level = 1; level < 12; level++) {
    const name = String.fromCharCode(97 + level);
    bomb.push(
      `${name}: &${name} [${Array(9)
        .fill(`*${String.fromCharCode(96 + level)}`)
        .join(', ')}]`,
    );
  }
  expect(refusal(bomb.join('\n'))).toMatch(/aliases|not a key/);
});

test('hostile keys are named, not obeyed', () => {
  expect(refusal('__proto__: { site: x }\n')).toMatch(/`__proto__` is not a key/);
  expect({}).not.toHaveProperty('site');
});
