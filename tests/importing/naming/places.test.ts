import { expect, test } from 'vitest';
import { guessSite } from '../../../src/importing/naming/guess-site.ts';
import type { ColumnSpec } from '../assemble/readings-of.ts';
import { dialects } from './dialects.ts';
import { exported } from './invented-store.ts';
import { readingsIn } from './truth.ts';

/** Columns whose names say another place or thing than they seem to, beside a plain store of six circuits. */

const terse = exported(dialects[0]!);
const valuesOf = (part: string) => terse.find(({ point }) => point === part)!.values;
const air = terse.find(({ part }) => part.what === 'air')!.values;
const other = valuesOf(terse.filter(({ part }) => part.what === 'air').at(-1)!.point);
const onOff = terse.find(({ part }) => part.what === 'defrost')!.values;
const feeding = terse.find(({ part }) => part.what === 'valve')!.values;
const perCent = Float64Array.from(air, (value) => Math.round(50 + 20 * Math.sin(value)));

function guessOf(extra: readonly ColumnSpec[], beside = terse) {
  const parts = extra.map((column) => ({ ...column, part: { what: 'indoor' as const } }));
  return guessSite(readingsIn([...beside, ...parts]));
}

const idsOf = ({ site }: ReturnType<typeof guessSite>) => (site.circuits ?? []).map(({ id }) => id);
const withProbe = ({ site }: ReturnType<typeof guessSite>, probe: string) =>
  (site.circuits ?? []).find(({ probes }) => probes.includes(probe));

test('a preparation room is a circuit: P and a word of air are no pressure, and no return air', () => {
  const guess = guessOf([
    { point: 'C07 Prep Room Air', values: air },
    { point: 'C07 Prep Room Defrost', values: onOff, status: true },
  ]);
  expect(withProbe(guess, 'C07 Prep Room Air')?.id).toBe('C07 Prep Room');
});

test.each([
  'Marktraum Temperatur',
  'Temperatura vendita',
  'Winkeltemperatuur',
  'Temperatura sala de ventas',
  'Température surface de vente',
  'FlrTmp',
])('%s is the room of the shop and no circuit', (point) => {
  expect(idsOf(guessOf([{ point, values: air }]))).toEqual(idsOf(guessOf([])));
});

test('an outlet that stands for no case is the weather', () => {
  expect(idsOf(guessOf([{ point: 'OutTmp', values: air }]))).toEqual(idsOf(guessOf([])));
});

test.each([
  'C01 FeedPct',
  'C01 klepstand',
  'C01 Ouverture détendeur',
  'C01 Valve opening',
  'C01 apertura válvula',
])('%s says how far the valve of the circuit stands open', (point) => {
  const without = terse.filter(({ part }) => !(part.what === 'valve' && part.circuit === 0));
  const guess = guessOf([{ point, values: perCent }], without);
  expect((guess.site.circuits ?? []).map(({ valve }) => valve)).toContain(point);
});

test('a counter that goods are sold over is a circuit where only its air is logged', () => {
  const onlyAir = terse.filter(({ part }) => part.what === 'air');
  const guess = guessOf(
    [
      { point: 'Deli Counter left', values: air },
      { point: 'Deli Counter right', values: air },
    ],
    onlyAir,
  );
  expect(withProbe(guess, 'Deli Counter left')?.probes).toEqual(['Deli Counter left', 'Deli Counter right']);
});

test('a machine of a rack is a compressor', () => {
  const guess = guessOf([{ point: 'R1 machine 7', values: feeding, status: true }]);
  const named = (guess.site.racks ?? [])
    .flatMap((rack) => rack.suctionGroups ?? [])
    .flatMap(({ compressors }) => compressors ?? []);
  expect(named).toContain('R1 machine 7');
});

test('the product of a circuit in three letters is no second circuit', () => {
  expect(idsOf(guessOf([{ point: 'C01PrdTmp', values: other }]))).toEqual(idsOf(guessOf([])));
});

test('degrees in words are a unit and no defrost', () => {
  const guess = guessOf([{ point: 'C07 - Air 1 (deg F)', values: air }]);
  expect(withProbe(guess, 'C07 - Air 1 (deg F)')?.id).toBe('C07');
});

test('mean, least and greatest of each interval are one probe', () => {
  const columns = [1, 2, 3].flatMap((circuit) =>
    [1, 2].flatMap((probe) =>
      ['avg', 'min', 'max'].map((what) => ({ point: `K0${circuit} Air ${probe} ${what}`, values: air })),
    ),
  );
  const { site } = guessOf(columns, []);
  expect(site.circuits!.map(({ probes }) => probes)).toEqual([
    ['K01 Air 1 avg', 'K01 Air 2 avg'],
    ['K02 Air 1 avg', 'K02 Air 2 avg'],
    ['K03 Air 1 avg', 'K03 Air 2 avg'],
  ]);
});

test('racks that one file each logs under the same headers keep their machines apart', () => {
  const racks = ['Rack A', 'Rack B'].flatMap((fileStem, group) => [
    { point: 'Suct PSI', fileStem, values: air.map((value) => value + 40 - 30 * group) },
    { point: 'Comp 1', fileStem, values: feeding, status: true },
    { point: 'Head PSI', fileStem, values: air.map((value) => value + 150) },
  ]);
  const { site } = guessOf(
    racks,
    terse.filter(({ part }) => 'circuit' in part),
  );
  const groups = site.racks!.flatMap((rack) => rack.suctionGroups ?? []);
  expect(groups.map(({ id, compressors, discharge }) => [id, compressors, discharge])).toEqual([
    ['Rack A', ['Rack A:Comp 1'], 'Rack A:Head PSI'],
    ['Rack B', ['Rack B:Comp 1'], 'Rack B:Head PSI'],
  ]);
});

test('Swedish words of the trade', () => {
  const guess = guessOf(
    [
      { point: 'KA1 Mejeri Tilluft 1 (°C)', values: air },
      { point: 'KA1 Mejeri Tilluft 2 (°C)', values: air },
      { point: 'KA1 Mejeri Börvärde (°C)', values: air.map(() => 2) },
      { point: 'KA1 Mejeri Ventilläge (%)', values: perCent },
      { point: 'KA1 Mejeri Avfrostning', values: onOff, status: true },
      { point: 'Butik temperatur (°C)', values: air },
      { point: 'Utetemperatur (°C)', values: air },
      { point: 'Kylaggregat Sugtryck (bar)', values: air.map((value) => value + 40), unit: 'bar' },
    ],
    [],
  );
  expect(guess.site.circuits).toMatchObject([
    {
      id: 'KA1 Mejeri',
      probes: ['KA1 Mejeri Tilluft 1 (°C)', 'KA1 Mejeri Tilluft 2 (°C)'],
      setPoint: { point: 'KA1 Mejeri Börvärde (°C)' },
      valve: 'KA1 Mejeri Ventilläge (%)',
      defrost: { status: 'KA1 Mejeri Avfrostning' },
    },
  ]);
  expect(guess.site.racks![0]!.suctionGroups![0]!.pressure).toBe('Kylaggregat Sugtryck (bar)');
});

test('Spanish racks and ends of a case: what stands between two words of a role names nothing', () => {
  const cases = ['Vitrina 2 Carne', 'Vitrina 3 Quesos', 'Vitrina 4 Bebidas'].flatMap((id) => [
    ...['izq.', 'centro', 'dcha.'].map((place) => ({
      point: `${id} – Temp. impulsión ${place}`,
      values: air,
    })),
    { point: `${id} – Consigna`, values: air.map(() => 2) },
  ]);
  const racks = ['Central Positiva', 'Central Negativa'].flatMap((id, group) => [
    { point: `${id} – Presión de aspiración`, values: air.map((value) => value + 40 - 30 * group) },
    { point: `${id} – Compresor 1 marcha`, values: feeding, status: true },
  ]);
  const { site } = guessOf([...cases, ...racks], []);
  expect(site.circuits!.map(({ id, probes }) => [id, probes])).toEqual(
    [0, 4, 8].map((at) => [
      cases[at]!.point.split(' –')[0],
      cases.slice(at, at + 3).map(({ point }) => point),
    ]),
  );
  const groups = site.racks!.flatMap(({ suctionGroups }) => suctionGroups ?? []);
  expect(groups.map(({ id, compressors }) => [id, compressors])).toEqual([
    ['Central Negativa', ['Central Negativa – Compresor 1 marcha']],
    ['Central Positiva', ['Central Positiva – Compresor 1 marcha']],
  ]);
});

test.each([
  ['L', 'LC', 'RC', 'R'],
  ['LL', 'LM', 'RM', 'RR'],
])('four places of one line-up: %s, %s, %s, %s', (...places) => {
  const names = places.map((place) => `C07 Produce Disch Air ${place} (°F)`);
  const guess = guessOf(
    names.map((point) => ({ point, values: air })),
    terse.filter(({ part }) => part.what === 'air'),
  );
  expect(withProbe(guess, names[0]!)?.probes).toEqual(names);
});

test('frozen food is goods, also where a circuit logs its set point and no defrost', () => {
  const guess = guessOf(
    [
      { point: '7L Frozen Food Case Temp 1', values: other },
      { point: '7L Frozen Food Case Temp 2', values: other },
      { point: '7L Frozen Food Setpoint', values: other.map(() => -4) },
    ],
    terse.filter(({ part }) => part.what === 'air'),
  );
  expect(withProbe(guess, '7L Frozen Food Case Temp 1')?.probes).toEqual([
    '7L Frozen Food Case Temp 1',
    '7L Frozen Food Case Temp 2',
  ]);
});

test('two columns of return air at a circuit make no second circuit of the places between its ends', () => {
  const places = ['left', 'm-left', 'm-right', 'right'].map((place) => `C07 Produce Supply ${place}`);
  const guess = guessOf([
    ...places.map((point) => ({ point, values: air })),
    ...[1, 2].map((number) => ({ point: `C07 Produce Return ${number}`, values: other })),
    { point: 'C07 Produce Defrost', values: onOff, status: true },
  ]);
  expect([...(withProbe(guess, places[0]!)?.probes ?? [])].sort()).toEqual([...places].sort());
});

test('a circuit that only one column names stays whole beside circuits that several do', () => {
  const named = (id: string, superheat: boolean): ColumnSpec[] => [
    ...[1, 2, 3].map((number) => ({ point: `${id} Case Temp #${number}`, values: air })),
    { point: `${id} Cut-in/out Mid`, values: air.map(() => 36) },
    { point: `${id} Solenoid`, values: feeding, status: true },
    ...(superheat ? [{ point: `${id} Coil SH`, values: perCent }] : []),
  ];
  const guess = guessOf(
    [...['1M Meat', '2M Deli', '4M Cheese'].flatMap((id) => named(id, true)), ...named('3M Seafood', false)],
    [],
  );
  expect((guess.site.circuits ?? []).map(({ probes }) => probes.length)).toEqual([3, 3, 3, 3]);
});

test('a probe that reads the end of its scale for most of the log is one of its circuit all the same', () => {
  const dead = air.map((value, index) => (index < air.length / 4 ? value : -58));
  const guess = guessOf([
    ...[1, 2].map((number) => ({ point: `C07 DAT${number}`, values: air })),
    { point: 'C07 DAT3', values: dead },
    { point: 'C07 Defrost', values: onOff, status: true },
  ]);
  expect(withProbe(guess, 'C07 DAT1')?.probes).toEqual(['C07 DAT1', 'C07 DAT2', 'C07 DAT3']);
});

test('a channel that reads the end of its scale from the first reading on is no probe: nothing is connected', () => {
  const guess = guessOf([
    ...[1, 2].map((number) => ({ point: `C07 DAT${number}`, values: air })),
    { point: 'C07 DAT9', values: air.map(() => -40) },
    { point: 'C07 Defrost', values: onOff, status: true },
  ]);
  expect(withProbe(guess, 'C07 DAT1')?.probes).toEqual(['C07 DAT1', 'C07 DAT2']);
});
