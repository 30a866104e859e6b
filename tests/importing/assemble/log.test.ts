import { describe, expect, test } from 'vitest';
import { assembleLog } from '../../../src/importing/assemble.ts';
import { ImportRefusal } from '../../../src/importing/readings.ts';
import { parseSiteFile } from '../../../src/importing/site-file/site-file.ts';
import type { Record } from '../../../src/model/record.ts';
import { type ColumnSpec, readingsOf } from './readings-of.ts';

const samples = 2000;
const wave = (level: number, swing = 1): number[] =>
  Array.from({ length: samples }, (_, index) => Math.round(10 * (level + swing * Math.sin(index / 5))) / 10);
const constant = (value: number): number[] => Array.from({ length: samples }, () => value);
const switching = (period: number): number[] =>
  Array.from({ length: samples }, (_, index) => (index % period < period / 2 ? 1 : 0));

const columns: ColumnSpec[] = [
  { point: 'M01 air A', values: wave(36), unit: 'degF' },
  { point: 'M01 air B', values: wave(37), unit: 'degF' },
  { point: 'M01 set', values: constant(36), unit: 'degF' },
  { point: 'M01 sh', values: wave(9), unit: 'degF' },
  { point: 'M01 liquid', values: switching(14), status: true },
  { point: 'M01 dfr', values: switching(360), status: true },
  { point: 'S1 suction', values: wave(45), unit: 'psig' },
  { point: 'S1 comp 1', values: switching(20), status: true },
  { point: 'S1 level', values: wave(40), unit: 'percent' },
  { point: 'spare', values: constant(0.93) },
];
const siteText = `
site: Larkspur Street Market
timeZone: America/Denver
units: { temperature: degF, pressure: psig }
racks:
  - id: A
    refrigerant: R-448A
    suctionGroups:
      - { id: S1, class: medium, pressure: S1 suction, pressureSetPoint: 45, compressors: [S1 comp 1], liquidLevel: S1 level }
circuits:
  - id: M01
    suctionGroup: S1
    setPoint: { point: M01 set }
    differential: 2
    controls: M01 air B
    probes: [M01 air A, M01 air B]
    valve: M01 liquid
    superheat: M01 sh
    defrost: { kind: off-cycle, status: M01 dfr, perDay: 4, minutes: 45, starts: ["06:30"] }
    limits: { high: 41, minutes: 30 }
`;

function assembled(text = siteText, specs: readonly ColumnSpec[] = columns, options = {}) {
  return assembleLog(readingsOf(specs), parseSiteFile(text, 'site.yaml'), options);
}

function codes(specs: readonly ColumnSpec[], text = siteText): string[] {
  return assembled(text, specs).report.issues.map(({ code }) => code);
}

test('what the site file says stands in the log in inside units', () => {
  const { log, report, guess } = assembled();
  const circuit = log.circuits[0]!;
  expect(guess).toBeNull();
  expect(report.issues).toEqual([]);
  expect(log.site).toBe('Larkspur Street Market');
  expect(log.units).toEqual({ temperature: 'degF', pressure: 'psig' });
  expect(circuit.probes.map(({ point, position }) => [point, position])).toEqual([
    ['M01 air A', 0],
    ['M01 air B', 1],
  ]);
  expect(circuit.probes[0]!.record.values[0]).toBeCloseTo(20 / 9, 12);
  expect((circuit.setPoint as Record).values[7]).toBeCloseTo(20 / 9, 12);
  expect(circuit.differential).toBeCloseTo(10 / 9, 12);
  expect(circuit.controls).toEqual({ probe: 'M01 air B' });
  expect(circuit.superheat!.values[0]).toBeCloseTo(5, 12);
  expect(circuit.superheat!.quantity).toBe('temperature-difference');
  expect(circuit.limits!.high).toBeCloseTo(5, 12);
  expect(circuit.limits!.minutes).toBe(30);
  expect(circuit.defrost).toMatchObject({ kind: 'off-cycle', perDay: 4, minutes: 45, starts: [390] });
  const group = log.suctionGroups[0]!;
  expect(group).toMatchObject({ id: 'S1', rack: 'A', refrigerant: 'R-448A', class: 'medium' });
  expect(group.pressure!.values[0]).toBeCloseTo(45 * 6.894757293168361 + 101.325, 9);
  expect(group.pressureSetPoint).toBeCloseTo(45 * 6.894757293168361 + 101.325, 9);
  expect(group.liquidLevel!.values[0]).toBeCloseTo(0.4, 12);
  expect(log.unassigned.map(({ point }) => point)).toEqual(['spare']);
});

test('a channel that is not connected stays in the log as it reads', () => {
  const spare = assembled().log.unassigned[0]!;
  expect(new Set(spare.values)).toEqual(new Set([0.93]));
});

// U.S. Standard Atmosphere 1976 (NASA-TM-X-74335), table I: 83.4 kPa at 1,609 m.
test('gauge pressures are raised by the atmosphere of the altitude', () => {
  const { log } = assembled(`altitude: 1609\n${siteText}`);
  expect(log.atmosphere).toBeCloseTo(83.4, 1);
  expect(log.suctionGroups[0]!.pressure!.values[0]).toBeCloseTo(45 * 6.894757293168361 + log.atmosphere, 9);
});

test('--from and --to cut the log; wall-clock time is the site’s', () => {
  // The readings begin at 2026-09-01 00:00 in Denver (UTC−6).
  const { log } = assembled(siteText, columns, { from: '2026-09-01T06:00', to: '2026-09-01T11:59' });
  expect(new Date(log.grid.startMs).toISOString()).toBe('2026-09-01T12:00:00.000Z');
  expect(log.grid.count).toBe(360);
  expect(log.circuits[0]!.probes[0]!.record.values).toHaveLength(360);
  expect(log.circuits[0]!.probes[0]!.record.values[0]).toBeCloseTo((columns[0]!.values[360]! - 32) / 1.8, 12);
  const day = assembled(siteText, columns, { from: '2026-09-01', to: '2026-09-01' });
  expect(day.log.grid.count).toBe(1440);
  const zoned = assembled(siteText, columns, {
    from: '2026-09-01T12:00:00Z',
    to: '2026-09-01T12:30:00+00:00',
  });
  expect(zoned.log.grid.count).toBe(31);
});

test.each([
  [{ from: '2027-01-01' }, 'span-empty', /runs from 2026-09-01/],
  [{ from: 'yesterday' }, 'time-not-understood', /--from yesterday: give a date/],
  [{ to: '2026-02-30' }, 'time-not-understood', /--to 2026-02-30/],
])('%j is refused in one sentence', (options, code, message) => {
  expect(() => assembled(siteText, columns, options)).toThrow(
    expect.objectContaining({ code, message: expect.stringMatching(message) }),
  );
});

describe('points that the export does not hold', () => {
  test('are reported with the nearest column, and the rest is judged all the same', () => {
    const { log, report } = assembled(
      siteText
        .replace('probes: [M01 air A,', 'probes: [M01 aire A,')
        .replace('controls: M01 air B', 'controls: average'),
    );
    expect(log.circuits[0]!.probes.map(({ point }) => point)).toEqual(['M01 air B']);
    expect(report.issues).toEqual([
      expect.objectContaining({
        code: 'point-missing',
        column: 'M01 aire A',
        message: expect.stringContaining(
          '(circuit M01, probes), which the export does not hold; the nearest column is M01 air A.',
        ),
      }),
    ]);
  });

  test('a circuit without any probe is left out and named', () => {
    const { log, report } = assembled(`${siteText}\n  - id: M09\n    probes: [nowhere, elsewhere]\n`);
    expect(log.circuits.map(({ id }) => id)).toEqual(['M01']);
    expect(report.issues.map(({ code }) => code)).toContain('circuit-without-probes');
  });

  test('a site file of another store is refused', () => {
    expect(() => assembled('circuits: [{ id: X, probes: [zzz 1, zzz 2] }]')).toThrow(ImportRefusal);
    expect(() => assembled('circuits: [{ id: X, probes: [zzz 1, zzz 2] }]')).toThrow(/no point in common/);
  });

  test('case, spaces and a unit in brackets are overlooked where one column fits', () => {
    const specs = columns.map((column) => ({
      ...column,
      point: column.point.replace('M01 air A', 'M01  Air A (°F)'),
    }));
    const { log } = assembled(siteText, specs);
    expect(log.circuits[0]!.probes[0]!.point).toBe('M01  Air A (°F)');
  });
});

describe('several files', () => {
  const fileOf = (fileStem: string, level: number): ColumnSpec[] => [
    { point: 'Probe 1', values: wave(level), unit: 'degC', fileStem },
    { point: 'Probe 2', values: wave(level + 1), unit: 'degC', fileStem },
  ];
  const two = [...fileOf('M01', 2), ...fileOf('M02', 5)];

  test('FILE-STEM:HEADER names one of several columns of the same name', () => {
    const { log } = assembled('circuits: [{ id: M02, probes: ["M02:Probe 1", "M02:Probe 2"] }]', two);
    expect(log.circuits[0]!.probes.map(({ point }) => point)).toEqual(['M02:Probe 1', 'M02:Probe 2']);
    expect(log.circuits[0]!.probes[0]!.record.values[0]).toBe(5);
  });

  test('a bare header that several files carry is asked about', () => {
    const { report } = assembled('circuits: [{ id: M02, probes: ["M02:Probe 1", "Probe 2"] }]', two);
    expect(report.issues[0]).toMatchObject({
      code: 'point-ambiguous',
      message: expect.stringContaining('write which file: M01:Probe 2 or M02:Probe 2'),
    });
  });

  test('files that differ where they overlap are counted, and the later one believed', () => {
    const corrected = wave(2).map((value, index) => (index === 1000 ? 9 : value));
    const { log, report } = assembled('circuits: [{ id: M01, probes: ["Probe 1"] }]', [
      { point: 'Probe 1', values: wave(2), unit: 'degC', fileStem: 'first' },
      { point: 'Probe 1', values: corrected, unit: 'degC', fileStem: 'again' },
    ]);
    expect(log.circuits[0]!.probes[0]!.record.values[1000]).toBe(9);
    expect(report.issues.map(({ code, count }) => [code, count])).toEqual([
      ['files-joined', 1],
      ['files-conflict', 1],
    ]);
  });

  test('a file in °F and one in °C of the same points are brought to one unit', () => {
    const half = samples / 2;
    const { log, report } = assembled('circuits: [{ id: M01, probes: ["air"] }]', [
      { point: 'air', values: constant(2).slice(0, half), unit: 'degC', fileStem: 'march' },
      {
        point: 'air',
        values: constant(35.6).slice(half),
        times: Array.from({ length: half }, (_, index) => Date.UTC(2026, 8, 1, 6) + (half + index) * 60_000),
        unit: 'degF',
        fileStem: 'april',
      },
    ]);
    const { values } = log.circuits[0]!.probes[0]!.record;
    expect(values).toHaveLength(samples);
    expect(values[samples - 1]).toBeCloseTo(2, 12);
    expect(report.issues.map(({ code }) => code)).toEqual(['files-joined', 'unit-changed']);
  });

  test('a point that ends where another begins at the same level is offered, not joined', () => {
    const [before, after] = [
      wave(36).map((v, i) => (i < 1000 ? v : Number.NaN)),
      wave(36).map((v, i) => (i < 1000 ? Number.NaN : v)),
    ];
    const { log, report } = assembled(siteText, [
      ...columns,
      { point: 'M02 air', values: before, unit: 'degF' },
      { point: 'Dairy air', values: after, unit: 'degF' },
      { point: 'Far air', values: after.map((value) => value + 20), unit: 'degF' },
    ]);
    expect(log.unassigned.map(({ point }) => point)).toEqual(['spare', 'M02 air', 'Dairy air', 'Far air']);
    expect(report.issues).toEqual([
      expect.objectContaining({ code: 'point-renamed', column: 'M02 air', examples: ['Dairy air'] }),
    ]);
  });
});

describe('units that nobody states', () => {
  const unlabelled = (specs: readonly ColumnSpec[]): ColumnSpec[] =>
    specs.map(({ unit: _, ...rest }) => rest);
  const plain = siteText.replace(/units:.*\n/, '');

  test('are guessed from where the values stand, and the guess is reported with its reason', () => {
    const { log, report } = assembled(plain, unlabelled(columns));
    expect(log.circuits[0]!.probes[0]!.record.values[0]).toBeCloseTo(20 / 9, 12);
    expect(log.units).toEqual({ temperature: 'degF', pressure: 'psig' });
    const guessed = report.issues.filter(({ code }) => code === 'unit-guessed');
    expect(guessed.map(({ message }) => message)).toEqual([
      expect.stringMatching(
        /read as °F, because the medians .*units: \{ temperature: degF \}.* --temperature-unit degF/,
      ),
      expect.stringMatching(/read as psig, because the temperatures are in °F/),
    ]);
  });

  test('the site file goes before a guess, and a doubt is said', () => {
    const { log, report } = assembled(siteText.replace('degF', 'degC'), unlabelled(columns));
    expect(log.circuits[0]!.probes[0]!.record.values[0]).toBe(36);
    expect(report.issues.map(({ code }) => code)).toContain('unit-doubtful');
  });

  test('a column in °F without a label beside labelled ones in °C is read as °F, and said so', () => {
    const { log, report } = assembled('circuits: [{ id: M01, probes: [a, b, c] }]', [
      { point: 'a', values: wave(2), unit: 'degC' },
      { point: 'b', values: wave(3), unit: 'degC' },
      { point: 'c', values: wave(37) },
    ]);
    expect(log.circuits[0]!.probes[2]!.record.values[0]).toBeCloseTo(5 / 1.8, 12);
    expect(report.issues).toEqual([
      expect.objectContaining({
        code: 'unit-guessed',
        column: 'c',
        message: expect.stringContaining('although other columns say °C'),
      }),
    ]);
    expect(log.units.temperature).toBe('degC');
  });
});

describe('pressures and states as exports have them', () => {
  test('bar that would be a vacuum is read above the atmosphere, else as absolute, and both are said', () => {
    const bars = (level: number): ColumnSpec[] =>
      columns.map((column) =>
        column.point === 'S1 suction' ? { ...column, unit: 'bar', values: wave(level, 0.1) } : column,
      );
    expect(codes(bars(0.6))).toEqual(['gauge-assumed']);
    expect(assembled(siteText, bars(0.6)).log.suctionGroups[0]!.pressure!.values[0]).toBeCloseTo(161.325, 9);
    expect(codes(bars(3.2))).toEqual(['pressure-reference']);
    expect(assembled(siteText, bars(3.2)).log.suctionGroups[0]!.pressure!.values[0]).toBeCloseTo(320, 9);
  });

  test('megapascals and kilograms a square centimetre are pressures like bar', () => {
    const suction = (unit: 'MPa' | 'kgfcm2', level: number) => {
      const specs = columns.map((column) =>
        column.point === 'S1 suction' ? { ...column, unit, values: wave(level, 0.01) } : column,
      );
      return { codes: codes(specs), log: assembled(siteText, specs).log };
    };
    const gauge = suction('MPa', 0.1);
    expect(gauge.codes).toEqual(['gauge-assumed']);
    expect(gauge.log.suctionGroups[0]!.pressure!.values[0]).toBeCloseTo(201.325, 9);
    const absolute = suction('kgfcm2', 3.2);
    expect(absolute.codes).toEqual(['pressure-reference']);
    expect(absolute.log.suctionGroups[0]!.pressure!.values[0]).toBeCloseTo(313.8128, 9);
  });

  test('the site file settles whether bar counts the atmosphere, for readings and for a set point', () => {
    const bars = columns.map((column) =>
      column.point === 'S1 suction' ? { ...column, unit: 'bar' as const, values: wave(3.2, 0.1) } : column,
    );
    const stated = (unit: string) =>
      siteText
        .replace('pressure: psig', `pressure: ${unit}`)
        .replace('pressureSetPoint: 45', 'pressureSetPoint: 3');
    expect(codes(bars, stated('barg'))).toEqual([]);
    const gauge = assembled(stated('barg'), bars).log.suctionGroups[0]!;
    expect(gauge.pressure!.values[0]).toBeCloseTo(421.325, 9);
    expect(gauge.pressureSetPoint).toBeCloseTo(401.325, 9);
    expect(assembled(stated('bar'), bars).log.suctionGroups[0]!.pressureSetPoint).toBeCloseTo(300, 9);
  });

  test('a compressor logged by its power runs above a quarter of its usual draw', () => {
    const power = switching(20).map((on) => (on === 1 ? 5.2 : 0.1));
    const specs = columns.map((column) =>
      column.point === 'S1 comp 1' ? { point: column.point, values: power, unit: 'kW' as const } : column,
    );
    const { log, report } = assembled(siteText, specs);
    expect([...log.suctionGroups[0]!.compressors[0]!.values]).toEqual(switching(20));
    expect(report.issues).toEqual([
      expect.objectContaining({ code: 'state-from-amount', message: expect.stringContaining('above 1.3 ') }),
    ]);
  });

  test('a valve in per cent is a fraction open, one that is 0 or 100 a state', () => {
    const valve = (values: number[]): Record => {
      const specs = columns.map((column) =>
        column.point === 'M01 liquid' ? { point: column.point, values } : column,
      );
      return assembled(siteText, specs).log.circuits[0]!.valve!;
    };
    expect(valve(wave(50, 30))).toMatchObject({ quantity: 'fraction' });
    expect(valve(wave(50, 30)).values[0]).toBeCloseTo(0.5, 12);
    const onOff = valve(switching(14).map((on) => on * 100));
    expect(onOff.quantity).toBe('status');
    expect([...onOff.values]).toEqual(switching(14));
  });

  test('a pressure named as a probe is said', () => {
    expect(
      codes(columns, siteText.replace('[M01 air A, M01 air B]', '[M01 air A, M01 air B, S1 suction]')),
    ).toContain('unit-unexpected');
  });
});

test('an export in which nothing is recognised is a log all the same, and says so', () => {
  const { log, report } = assembleLog(readingsOf([{ point: 'x', values: wave(4000, 300) }]), null);
  expect(log.circuits).toEqual([]);
  expect(log.unassigned).toHaveLength(1);
  expect(report.issues.map(({ code }) => code)).toContain('nothing-recognised');
});
