import { circuitFigures } from '../figures/circuit-figures.ts';
import { blocksADay, type ClockBlocks, clockBlocks } from '../figures/clock-blocks.ts';
import { type Figure, figureMeanings } from '../figures/figure.ts';
import { median } from '../maths/median.ts';
import type { CircuitSignals, Signals } from '../signals/types.ts';

/** One figure of a circuit beside those of its sisters, medians over the clock blocks of the last week. */
export interface SisterFigure {
  readonly id: Figure['id'];
  readonly unit: Figure['unit'];
  readonly own: number;
  readonly sisters: readonly { readonly circuit: string; readonly value: number }[];
  /** Lowest and highest sister. */
  readonly low: number;
  readonly high: number;
  /** How far outside the sisters, in steps worth saying; 0 among them. */
  readonly outside: number;
}

export interface SisterComparison {
  readonly circuit: string;
  readonly sisters: readonly string[];
  /** Those farthest outside first. */
  readonly figures: readonly SisterFigure[];
}

const fewestSisters = 2;
const lastDays = 7;

/** Medians of what is followed on a circuit, by figure. */
type Middles = ReadonlyMap<Figure['id'], { readonly unit: Figure['unit']; readonly value: number }>;

/**
 * Sets any circuit of a site beside its sisters: the others of its suction group, which share pressure, weather and
 * trade; without a suction group all others. The medians are made once for all questions. Gives null for fewer than two
 * sisters and throws a RangeError for a circuit that is not there.
 */
export function sisterComparison(signals: Signals): (circuitId: string) => SisterComparison | null {
  const blocks = clockBlocks(signals.log);
  const known = new Map<CircuitSignals, Middles>();
  const middlesOf = (circuit: CircuitSignals): Middles => {
    const middles = known.get(circuit) ?? lastMiddles(circuit, blocks);
    known.set(circuit, middles);
    return middles;
  };
  return (circuitId) => {
    const own = signals.circuits.find(({ circuit }) => circuit.id === circuitId);
    if (own === undefined) throw new RangeError(`This log has no circuit ${circuitId}.`);
    const sisters = signals.circuits.filter(
      (other) => other !== own && other.circuit.suctionGroup === own.circuit.suctionGroup,
    );
    if (sisters.length < fewestSisters) return null;
    const others = sisters.map((circuit) => ({ circuit: circuit.circuit.id, figures: middlesOf(circuit) }));
    const figures = [...middlesOf(own)].flatMap(([id, { unit, value }]) => {
      const known = others.flatMap(({ circuit, figures: of }) => {
        const other = of.get(id);
        return other === undefined || other.unit !== unit ? [] : [{ circuit, value: other.value }];
      });
      return known.length < fewestSisters ? [] : [beside(id, unit, value, known)];
    });
    return {
      circuit: circuitId,
      sisters: sisters.map(({ circuit }) => circuit.id),
      figures: figures.sort((a, b) => b.outside - a.outside),
    };
  };
}

/** A figure known on fewer than half of the days says what the circuit was, not what it is. */
function lastMiddles(circuit: CircuitSignals, blocks: ClockBlocks): Middles {
  return new Map(
    circuitFigures(circuit, blocks)
      .filter(({ point, id }) => point === null || id === 'superheat')
      .flatMap(({ id, unit, values }) => {
        const last = values.subarray(-lastDays * blocksADay);
        return daysKnown(last) < last.length / blocksADay / 2 ? [] : [[id, { unit, value: median(last) }]];
      }),
  );
}

function daysKnown(values: Float64Array): number {
  let days = 0;
  for (let from = 0; from < values.length; from += blocksADay) {
    if (values.subarray(from, from + blocksADay).some((value) => !Number.isNaN(value))) days++;
  }
  return days;
}

function beside(
  id: Figure['id'],
  unit: Figure['unit'],
  own: number,
  sisters: SisterFigure['sisters'],
): SisterFigure {
  const values = sisters.map(({ value }) => value);
  const low = Math.min(...values);
  const high = Math.max(...values);
  const away = Math.max(0, own - high, low - own);
  return { id, unit, own, sisters, low, high, outside: away / figureMeanings[id].worthSaying };
}
