import { expect, test } from 'vitest';
import { guessSite } from '../../../src/importing/naming/guess-site.ts';
import { nameColumns } from '../../../src/importing/naming/role.ts';
import { collectPoints } from '../../../src/importing/points/collect-points.ts';
import { type ColumnSpec, readingsOf } from '../assemble/readings-of.ts';
import { dialects } from './dialects.ts';
import { exported } from './invented-store.ts';
import { readingsIn } from './truth.ts';

const rows = 1440;
const wave = (level: number): number[] =>
  Array.from({ length: rows }, (_, index) => level + Math.sin(index / 9));
const onOff = (period: number): number[] =>
  Array.from({ length: rows }, (_, index) => (index % period < period / 3 ? 1 : 0));
const terse = exported(dialects[0]!);

function guessWith(extra: readonly ColumnSpec[]) {
  const stretched = extra.map((column) => ({
    ...column,
    values: terse[0]!.values.map((_, index) => column.values[index % rows]!),
  }));
  const parts = stretched.map((column) => ({ ...column, part: { what: 'indoor' as const } }));
  return guessSite(readingsIn([...terse, ...parts]));
}

test('a temperature that carries the name of the rack is no circuit and no coil outlet', () => {
  const guess = guessWith([
    { point: 'R1 suction temp', values: wave(-2) },
    { point: 'R1 discharge temp', values: wave(70) },
    { point: 'R1 oil temp', values: wave(50) },
  ]);
  expect(guess.site.circuits).toHaveLength(6);
  expect(JSON.stringify(guess.site.circuits)).not.toContain('R1 suction temp');
});

test('fans, lights, doors, alarms and weather are no part of a circuit', () => {
  const guess = guessWith([
    { point: 'C01 fan', values: onOff(30), status: true },
    { point: 'C01 lights', values: onOff(1440), status: true },
    { point: 'C01 door', values: onOff(60), status: true },
    { point: 'C01 high temp alarm', values: onOff(700), status: true },
    { point: 'Outside air temp', values: wave(14) },
    { point: 'Store humidity', values: wave(48), unit: 'percent' },
  ]);
  const plain = guessSite(readingsIn(terse));
  expect(guess.site.circuits).toEqual(plain.site.circuits);
});

test('a column that reads and swings as case air but serves no circuit is asked about', () => {
  const asked = ({ questions }: ReturnType<typeof guessSite>) =>
    questions.filter((one) => one.includes('no circuit has'));
  const lost = guessWith([{ point: 'Shop indoor counter 4 temp', values: terse[0]!.values.slice(0, rows) }]);
  expect(lost.site.circuits).toHaveLength(6);
  expect(asked(lost)).toEqual([
    'What do Shop indoor counter 4 temp measure? They read and swing as the air of a case does, and no circuit has them.',
  ]);
  const known = guessWith([
    { point: 'R1 suction temp', values: terse[0]!.values.slice(0, rows) },
    { point: 'Shop temp', values: wave(21) },
    { point: 'Outside air temp', values: wave(4) },
    { point: 'Counter of pulses', values: wave(300) },
  ]);
  expect(asked(known)).toEqual([]);
  expect(asked(guessSite(readingsIn(terse)))).toEqual([]);
});

test('weather in one word is a temperature, however warm', () => {
  const day = Array.from({ length: rows }, (_, index) => 82 + 12 * Math.sin((2 * Math.PI * index) / 288));
  const [oat] = nameColumns(collectPoints(readingsOf([{ point: 'OAT', values: day }])).points);
  expect([oat?.kind, oat?.role]).toEqual(['temperature', 'outdoor']);
});

test('an average beside its probes is no probe', () => {
  const guess = guessWith([
    { point: 'C01 average temp', values: wave(1) },
    { point: 'C02 control temp', values: wave(2) },
  ]);
  expect(guess.site.circuits!.flatMap(({ probes }) => probes)).not.toContain('C01 average temp');
  expect(guess.site.circuits!.flatMap(({ probes }) => probes)).not.toContain('C02 control temp');
});

test('one machine logged by itself is taken for a compressor, and asked about', () => {
  const power = readingsOf([{ point: 'power', values: onOff(40).map((on) => 5 + 90 * on), unit: 'W' }]);
  const guess = guessSite(power);
  expect(guess.site.racks?.[0]?.suctionGroups?.[0]?.compressors).toEqual(['power']);
  expect(guess.questions.join(' ')).toContain('Is this a compressor: power?');
});

test('two racks with a chilled group each: what cannot be told is asked in one sentence', () => {
  const air = terse.filter(({ part }) => !('group' in part));
  const guess = guessSite(
    readingsIn([
      ...air,
      ...['North', 'South'].map((rack) => ({
        point: `${rack} suction`,
        values: wave(3.2),
        part: { what: 'suction' as const, group: 0 },
      })),
    ]),
  );
  expect(guess.questions.filter((question) => question.startsWith('Which suction group feeds'))).toEqual([
    'Which suction group feeds C01, C02, C03 and 3 more: North or South?',
  ]);
});

test('a constant dead band column becomes the differential', () => {
  const guess = guessWith([{ point: 'C01 differential', values: Array<number>(rows).fill(2) }]);
  expect(guess.site.circuits!.find(({ id }) => id === 'C01')!.differential).toBe(2);
});

test('five thousand columns with hostile names are guessed without hanging', () => {
  const many = Array.from(
    { length: 5000 },
    (_, index): ColumnSpec => ({
      point: `${'=cmd <b>'.repeat(index % 3)}x${(index * 7919) % 5003} ${index % 2 === 0 ? 'air' : 'defrost'}`,
      values: index % 2 === 0 ? wave(30).slice(0, 60) : onOff(20).slice(0, 60),
      status: index % 2 === 1,
    }),
  );
  expect(guessSite(readingsOf(many)).site.circuits!.length).toBeGreaterThan(1000);
});

test('a dead probe among its neighbours stays a probe; a circuit that never reads anything is none', () => {
  const nothing = Array<number>(rows).fill(Number.NaN);
  const guess = guessWith([
    { point: 'C03 probe 3', values: nothing },
    { point: 'C09 probe 1', values: nothing },
  ]);
  expect(guess.site.circuits!.find(({ id }) => id === 'C03')!.probes).toContain('C03 probe 3');
  expect(guess.site.circuits!.map(({ id }) => id)).not.toContain('C09');
});

test('a set point that is written only when it changes is found among thousands of empty cells', () => {
  const cells = Array.from({ length: 40_000 }, (_, index) =>
    index === 1234 || index === 30_001 ? 36 : Number.NaN,
  );
  const air = Array.from({ length: 40_000 }, (_, index) => 36 + Math.round(10 * Math.sin(index / 9)) / 10);
  const guess = guessSite(
    readingsOf([
      { point: 'M01 air', values: air },
      { point: 'M01 set', values: cells, logging: 'change-of-value' },
    ]),
  );
  expect(guess.site.circuits).toEqual([
    expect.objectContaining({ probes: ['M01 air'], setPoint: { point: 'M01 set' } }),
  ]);
});

test('a column that carries the name of a circuit in letters that nobody knows is asked about', () => {
  const guess = guessWith([{ point: 'C01 TZ', values: wave(2).map(() => 2), unit: 'degC' }]);
  expect(guess.questions).toContain(
    'What are C01 TZ? They carry the name of a circuit; write them under it in the site file (setPoint, defrost.status, valve) if that is what they are.',
  );
  expect(guessSite(readingsIn(terse)).questions.join()).not.toContain('carry the name');
});

test('a control point that never moves is the set point, where no other is named', () => {
  const without = terse.filter(({ part }) => part.what !== 'set');
  const values = without[0]!.values.map(() => 2);
  const control = { point: 'C01 control point', values, unit: 'degC' as const, part: terse[0]!.part };
  const guess = guessSite(readingsIn([...without, control]));
  expect(guess.site.circuits![0]!.setPoint).toEqual({ point: 'C01 control point' });
});
