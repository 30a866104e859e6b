import { wordsIn } from './kind.ts';
import type { NamedColumn } from './role.ts';

const fewestValues = 12;
/** Units, of °F or °C, that a column may stand outside the circuits. */
const beside = 3;
const leastShareOfSwing = 1 / 3;
const mostTimesSwing = 3;

/**
 * Columns that serve no circuit though they read and swing as the air of the circuits does: a word in their names was
 * perhaps understood wrongly, and a whole case would be missing without a word.
 */
export function unusedAir(
  columns: readonly NamedColumn[],
  air: readonly NamedColumn[],
): readonly NamedColumn[] {
  const swings = air.map(swingOf).filter((swing) => swing > 0);
  if (swings.length === 0) return [];
  const medians = air.map(({ facts }) => facts.median);
  const [low, high] = [Math.min(...medians) - beside, Math.max(...medians) + beside];
  const usual = swings.sort((a, b) => a - b)[swings.length >> 1]!;
  const units = new Set(air.map(({ point }) => point.unit));
  return columns.filter((column) => {
    const { facts, point } = column;
    const swing = swingOf(column);
    return (
      column.role === 'other' &&
      mayBeAir(column) &&
      (point.unit === null || units.has(point.unit)) &&
      facts.distinct >= fewestValues &&
      facts.median >= low &&
      facts.median <= high &&
      swing >= usual * leastShareOfSwing &&
      swing <= usual * mostTimesSwing
    );
  });
}

const swingOf = ({ facts }: NamedColumn): number => facts.p90 - facts.p10;

/** Words of what stands at the machines or is no air at all. */
const elsewhere = [
  ...([
    'saturated',
    'subcooling',
    'superheat',
    'humidity',
    'limit',
    'alarm',
    'set',
    'oil',
    'suction',
    'extreme',
  ] as const),
  ...(['liquid', 'gas', 'condenser', 'highSide', 'compressor', 'receiver', 'outdoor'] as const),
];

/** A temperature, or a number that is called air or a case. */
function mayBeAir({ kind, tokens }: NamedColumn): boolean {
  const has = wordsIn(tokens);
  if (has(...elsewhere) || (has('coil') && has('inlet'))) return false;
  return (
    kind === 'temperature' || (kind === 'number' && has('air', 'probe', 'temperature', 'case', 'circuit'))
  );
}
