import { expect, test } from 'vitest';
import { guessSite } from '../../../src/importing/naming/guess-site.ts';
import { tokensOf } from '../../../src/importing/naming/tokens.ts';
import type { ColumnSpec } from '../assemble/readings-of.ts';
import { dialects } from './dialects.ts';
import { exported } from './invented-store.ts';
import { readingsIn } from './truth.ts';

/** Names that look like those of another thing and must keep their reading, beside a plain store of six circuits. */

const terse = exported(dialects[0]!);
const airOf = (circuit: number) =>
  terse.find(({ part }) => part.what === 'air' && part.circuit === circuit)!.values;
const defrostOf = (circuit: number) =>
  terse.find(({ part }) => part.what === 'defrost' && part.circuit === circuit)!.values;
const steady = terse[0]!.values.map(() => 2);
const meant = (name: string): string[] => tokensOf(name).flatMap(({ meaning }) => meaning ?? []);

function circuitsOf(extra: readonly ColumnSpec[], beside = terse) {
  const parts = extra.map((column) => ({ ...column, part: { what: 'indoor' as const } }));
  return guessSite(readingsIn([...beside, ...parts])).site.circuits ?? [];
}

test('a room beside counted probes of the same word is a circuit of its own', () => {
  const circuits = circuitsOf(
    [
      { point: 'Meat air 1', values: airOf(0) },
      { point: 'Meat air 2', values: airOf(0) },
      { point: 'Meat prep air', values: airOf(1) },
      { point: 'Meat setpoint', values: steady },
      { point: 'Meat defrost', values: defrostOf(0), status: true },
    ],
    [],
  );
  expect(circuits.map(({ probes }) => probes)).toEqual([['Meat air 1', 'Meat air 2'], ['Meat prep air']]);
});

test('a temperature in letters that nobody knows is no probe of the circuit it stands at', () => {
  const unknown = [0, 1, 2].map((circuit) => ({ point: `C0${circuit + 1} XQ`, values: airOf(circuit) }));
  expect(circuitsOf(unknown)).toEqual(circuitsOf([]));
});

test('RH is humidity where no LH stands beside it', () => {
  expect(circuitsOf([{ point: 'C01 air RH', values: airOf(0) }])).toEqual(circuitsOf([]));
});

test('a number of another circuit is no gap in a name', () => {
  const circuits = circuitsOf([{ point: 'C07 probe 1', values: airOf(0) }]);
  expect(circuits.map(({ id }) => id)).toContain('C07');
});

test('letters that a circuit may be called by keep their role behind its name', () => {
  expect(meant('C01 DEF')).toEqual(['defrost']);
  const [first] = circuitsOf([{ point: 'C01 SH', values: airOf(3) }]);
  expect(first!.superheat).toBe('C01 SH');
  expect(first!.probes).not.toContain('C01 SH');
});

test('the low rack keeps its name where the side is said too', () => {
  expect(meant('Rack baja presion succion')).toEqual(['rack', 'pressure', 'suction']);
  expect(meant('Central presion baja')).toEqual(['rack', 'suction', 'suction']);
});

test('degrees inside a name are a unit, and dégivrage stays a defrost', () => {
  expect(meant('a01AirTempDegF1')).toEqual(['air', 'temperature']);
  expect(meant('M01 deg actif')).toEqual(['defrost']);
});

test('what meets the coil is told by what it is: air, or refrigerant', () => {
  const extra = ['air leaving coil', 'refrigerant leaving coil', 'air entering coil'].map((said) => ({
    point: `D09, ${said}`,
    values: airOf(2),
  }));
  const circuit = circuitsOf(extra).find(({ id }) => id.startsWith('D09'));
  expect(circuit).toMatchObject({
    probes: ['D09, air leaving coil'],
    coilOut: ['D09, refrigerant leaving coil'],
    returnAir: ['D09, air entering coil'],
  });
});

test('V1 and C1 are compressors only under the name of a pressure', () => {
  const [first] = circuitsOf(
    [{ point: 'C01 V1', values: terse.find(({ part }) => part.what === 'valve')!.values, status: true }],
    terse.filter(({ part }) => part.what !== 'valve'),
  );
  expect(first!.valve).toBe('C01 V1');
});

test('the shop is no room of a circuit, and counted product no circuit', () => {
  const shop = [
    { point: 'Store space temp', values: airOf(0) },
    { point: 'C01 prod temp', values: airOf(0) },
  ];
  const [first, ...rest] = circuitsOf(shop);
  expect([first!.product, rest.length]).toEqual([['C01 prod temp'], 5]);
});

test('cases counted within units are no names of their own', () => {
  const within = [1, 2].flatMap((unit) =>
    [1, 2].map((box) => ({ point: `Unit ${unit} Case ${box} air`, values: airOf(unit) })),
  );
  const alone = circuitsOf(
    [
      ...within,
      ...[1, 2].flatMap((unit) => [
        { point: `Unit ${unit} setpoint`, values: steady },
        { point: `Unit ${unit} defrost`, values: defrostOf(unit), status: true },
      ]),
    ],
    [],
  );
  expect(alone.map(({ probes }) => probes.length)).toEqual([2, 2]);
});

test('names that say nothing never bring chilled and frozen air together', () => {
  const defrosting = airOf(0);
  const columns = [0, 0, -24, -24].map((apart, at) => ({
    point: `XX-${at + 1}`,
    values: defrosting.map((value) => value + apart),
    unit: 'degC' as const,
  }));
  expect(circuitsOf(columns, []).map(({ probes }) => probes)).toEqual([
    ['XX-1', 'XX-2'],
    ['XX-3', 'XX-4'],
  ]);
});

test('circuits found by their movement get the columns that carry what their names share', () => {
  const columns = ['Beet', 'Chard'].flatMap((goods, circuit) => [
    { point: `upper ${goods} quark`, values: airOf(circuit), unit: 'degC' as const },
    { point: `lower ${goods} whey`, values: airOf(circuit), unit: 'degC' as const },
    { point: `${goods} setpoint`, values: steady, unit: 'degC' as const },
  ]);
  expect(circuitsOf(columns, []).map(({ setPoint }) => setPoint)).toEqual([
    { point: 'Beet setpoint' },
    { point: 'Chard setpoint' },
  ]);
});

test('tc is the condensing temperature beside po and pc, and a thermocouple elsewhere', () => {
  const rack = ['po', 'pc', 'tc'].map((sign, at) => ({
    point: `VB1.${sign}`,
    values: steady.map((_, row) => [3, 11, 25][at]! + Math.sin(row / 9)),
  }));
  const { site } = guessSite(
    readingsIn([...terse, ...rack].map((column) => ({ part: { what: 'indoor' as const }, ...column }))),
  );
  expect(site.circuits).toHaveLength(6);
  expect(
    (site.racks ?? []).flatMap((one) => one.suctionGroups ?? []).map(({ pressure }) => pressure),
  ).toContain('VB1.po');
  expect(circuitsOf([{ point: 'C07 tc', values: airOf(0) }]).map(({ id }) => id)).toContain('C07');
});

test('a rack called HP1 has its suction, and not two discharges', () => {
  const named = ['HP1 P-suct', 'HP1 P-disch'].map((point, at) => ({
    point,
    values: steady.map((_, row) => [3, 11][at]! + Math.sin(row / 9)),
    unit: 'barg' as const,
  }));
  const { site } = guessSite(
    readingsIn([...terse, ...named].map((column) => ({ part: { what: 'indoor' as const }, ...column }))),
  );
  const groups = (site.racks ?? []).flatMap((rack) => rack.suctionGroups ?? []);
  expect(groups.find(({ pressure }) => pressure === 'HP1 P-suct')?.discharge).toBe('HP1 P-disch');
});

test('Comp1 stays a compressor before its suction and discharge', () => {
  const runs = ['Comp1 suct temp', 'Comp1 disch temp', 'Comp1 run'].map((point, at) => ({
    point,
    values: at === 2 ? defrostOf(3) : airOf(at).map((value) => value + 40 * at),
    status: at === 2,
  }));
  const beside = terse.filter(
    ({ part }) => part.what !== 'compressor' && !('group' in part && part.group === 1),
  );
  const { site } = guessSite(
    readingsIn([...beside, ...runs].map((column) => ({ part: { what: 'indoor' as const }, ...column }))),
  );
  expect((site.racks ?? []).flatMap((rack) => rack.suctionGroups ?? [])[0]!.compressors).toEqual([
    'Comp1 run',
  ]);
  expect(site.circuits).toHaveLength(6);
});
