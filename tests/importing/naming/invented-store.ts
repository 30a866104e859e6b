import type { ExportUnit } from '../../../src/importing/readings.ts';
import type { ColumnSpec } from '../assemble/readings-of.ts';

/**
 * A small invented store for the tests of naming: nothing but what tells columns apart, that is levels, cycles,
 * defrosts at times of their own, and constants. Seven days, one reading in five minutes.
 */
export const stepMinutes = 5;
const samples = (7 * 1440) / stepMinutes;

export type StorePart =
  | { readonly what: 'air'; readonly circuit: number; readonly probe: number }
  | {
      readonly what: 'set' | 'defrost' | 'valve' | 'return' | 'coil' | 'average' | 'superheat';
      readonly circuit: number;
    }
  | { readonly what: 'suction' | 'suctionSet' | 'discharge' | 'level'; readonly group: number }
  | { readonly what: 'compressor'; readonly group: number; readonly number: number }
  | { readonly what: 'outdoor' | 'indoor' | 'humidity' };

export interface InventedCircuit {
  readonly class: 'medium' | 'low';
  /** °C */
  readonly setPoint: number;
  readonly probes: number;
  readonly defrostsPerDay: number;
}

export const circuits: readonly InventedCircuit[] = [
  { class: 'medium', setPoint: 1, probes: 3, defrostsPerDay: 4 },
  { class: 'medium', setPoint: 2.5, probes: 3, defrostsPerDay: 4 },
  { class: 'medium', setPoint: -1, probes: 2, defrostsPerDay: 3 },
  { class: 'medium', setPoint: 3, probes: 4, defrostsPerDay: 4 },
  { class: 'low', setPoint: -21, probes: 3, defrostsPerDay: 2 },
  { class: 'low', setPoint: -23, probes: 2, defrostsPerDay: 2 },
];

/** What a dialect calls a part, in which file and with which unit; null: it does not export it. */
export interface Dialect {
  readonly title: string;
  name(part: StorePart): string | null;
  file?(part: StorePart): string;
  readonly temperature: 'degF' | 'degC';
  /** Whether temperature and pressure columns say their unit. */
  readonly unitsStated: boolean;
}

export interface NamedPart extends ColumnSpec {
  readonly part: StorePart;
}

export function exported(dialect: Dialect): NamedPart[] {
  const columns: NamedPart[] = [];
  for (const { part, values, measures } of store()) {
    const point = dialect.name(part);
    if (point === null) continue;
    const fileStem = dialect.file?.(part) ?? 'export';
    const written = values.map((value) => inUnit(value, measures, dialect.temperature));
    const unit = dialect.unitsStated ? unitOf(measures, dialect.temperature) : undefined;
    columns.push({
      part,
      point,
      fileStem,
      values: written,
      status: measures === 'status',
      ...(unit === undefined ? {} : { unit }),
    });
  }
  return columns;
}

type Measures = 'temperature' | 'difference' | 'pressure' | 'percent' | 'status';

function unitOf(measures: Measures, temperature: 'degF' | 'degC'): ExportUnit | undefined {
  if (measures === 'temperature') return temperature;
  if (measures === 'difference') return temperature === 'degF' ? 'deltaF' : 'deltaC';
  if (measures === 'pressure') return temperature === 'degF' ? 'psig' : 'barg';
  return measures === 'percent' ? 'percent' : undefined;
}

/** Celsius and barg to what the dialect writes, to a tenth. */
function inUnit(value: number, measures: Measures, temperature: 'degF' | 'degC'): number {
  const tenth = (number: number): number => Math.round(number * 10) / 10;
  if (temperature === 'degC' || measures === 'percent' || measures === 'status') return tenth(value);
  if (measures === 'pressure') return tenth(value * 14.5);
  return tenth(value * 1.8 + (measures === 'temperature' ? 32 : 0));
}

function* store(): Generator<{ part: StorePart; values: number[]; measures: Measures }> {
  const random = randomNumbers(4711);
  for (const [circuit, facts] of circuits.entries()) {
    const { air, average, defrost, valve } = circuitHistory(facts, circuit, random);
    for (const [probe, values] of air.entries()) {
      yield { part: { what: 'air', circuit, probe }, values, measures: 'temperature' };
    }
    yield { part: { what: 'average', circuit }, values: average, measures: 'temperature' };
    yield {
      part: { what: 'return', circuit },
      values: average.map((value) => value + 4),
      measures: 'temperature',
    };
    yield {
      part: { what: 'coil', circuit },
      values: average.map((value) => value - 5 + random()),
      measures: 'temperature',
    };
    yield {
      part: { what: 'superheat', circuit },
      values: average.map(() => 5 + 2 * random()),
      measures: 'difference',
    };
    yield {
      part: { what: 'set', circuit },
      values: average.map(() => facts.setPoint),
      measures: 'temperature',
    };
    yield { part: { what: 'defrost', circuit }, values: defrost, measures: 'status' };
    yield { part: { what: 'valve', circuit }, values: valve, measures: 'status' };
  }
  for (const group of [0, 1]) {
    const level = group === 0 ? 3.2 : 0.9;
    yield {
      part: { what: 'suction', group },
      values: series(() => level + 0.2 * random()),
      measures: 'pressure',
    };
    yield { part: { what: 'suctionSet', group }, values: series(() => level), measures: 'pressure' };
    for (const number of [0, 1]) {
      const run = series((index) => ((index + 3 * number) % (5 + number) < 3 ? 1 : 0));
      yield { part: { what: 'compressor', group, number }, values: run, measures: 'status' };
    }
  }
  yield { part: { what: 'discharge', group: 0 }, values: series(() => 13 + random()), measures: 'pressure' };
  yield { part: { what: 'level', group: 0 }, values: series(() => 35 + 4 * random()), measures: 'percent' };
  yield {
    part: { what: 'outdoor' },
    values: series((i) => 18 + 7 * Math.sin(i / 46)),
    measures: 'temperature',
  };
  yield { part: { what: 'indoor' }, values: series((i) => 21 + Math.sin(i / 46)), measures: 'temperature' };
  yield { part: { what: 'humidity' }, values: series((i) => 48 + 6 * Math.sin(i / 60)), measures: 'percent' };
}

function circuitHistory(facts: InventedCircuit, circuit: number, random: () => number) {
  const between = 1440 / stepMinutes / facts.defrostsPerDay;
  const lasts = Math.round((facts.class === 'low' ? 25 : 40) / stepMinutes);
  const shift = circuit * 13;
  const defrost = series((index) => ((index + shift) % between < lasts ? 1 : 0));
  const valve: number[] = [];
  const air: number[][] = Array.from({ length: facts.probes }, () => []);
  let rise = 0;
  let swing = 0;
  let open = 1;
  for (let index = 0; index < samples; index++) {
    if (random() < 0.25) open = 1 - open;
    const feeding = defrost[index] === 1 ? 0 : open;
    rise = defrost[index] === 1 ? rise + (9 - rise) * 0.25 : rise * 0.7;
    swing += ((feeding === 1 ? -0.8 : 0.8) - swing) * 0.4;
    valve.push(feeding);
    for (const [probe, values] of air.entries()) {
      values.push(facts.setPoint + rise + swing + 0.3 * probe + 0.2 * random());
    }
  }
  const average = air[0]!.map(
    (_, index) => air.reduce((sum, values) => sum + values[index]!, 0) / air.length,
  );
  return { air, average, defrost, valve };
}

function series(at: (index: number) => number): number[] {
  return Array.from({ length: samples }, (_, index) => at(index));
}

function randomNumbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 1664525 + 1013904223) >>> 0;
    return state / 4294967296;
  };
}
