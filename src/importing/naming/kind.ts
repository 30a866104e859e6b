import { quantityOf } from '../../units/export-units.ts';
import type { Point } from '../points/point.ts';
import type { ColumnFacts } from './column-facts.ts';
import type { Token } from './tokens.ts';
import type { Meaning } from './vocabulary.ts';

/** What a column measures, as far as unit, values and name tell. */
export type Kind = 'temperature' | 'pressure' | 'percent' | 'status' | 'number' | 'empty';

export type Has = (...meanings: readonly Meaning[]) => boolean;

/** Whether any of the meanings stands in the name. */
export function wordsIn(tokens: readonly Token[]): Has {
  const present = new Set(tokens.map((token) => token.meaning));
  return (...meanings) => meanings.some((meaning) => present.has(meaning));
}

export function kindOf(point: Point, facts: ColumnFacts, tokens: readonly Token[], has: Has): Kind {
  if (point.status) return 'status';
  if (point.unit !== null) {
    const quantity = quantityOf(point.unit);
    if (quantity === 'temperature' || quantity === 'temperature-difference') return 'temperature';
    if (quantity === 'pressure') return 'pressure';
    if (quantity === 'fraction') return 'percent';
    return 'number';
  }
  if (facts.readings === 0)
    return has('air', 'probe', 'temperature', 'return', 'supply') ? 'temperature' : 'empty';
  const first = tokens[0]?.ofName === true ? undefined : tokens[0]?.text;
  if (has('instrument')) return 'number';
  if (has('pressure')) return 'pressure';
  if (facts.binary && !has('temperature', 'set', 'superheat', 'level')) return 'status';
  if (has('level', 'humidity')) return 'percent';
  if (has('temperature', 'superheat', 'subcooling', 'saturated')) return 'temperature';
  if (has('power', 'speed')) return 'number';
  const share = facts.low >= 0 && facts.high <= 100 && !has('set');
  if (share && (has('valve') || (has('feed', 'liquid') && saysPercent(tokens)))) return 'percent';
  if (has('suction', 'highSide', 'condenser') && facts.low > -1)
    return first === 't' ? 'temperature' : 'pressure';
  if (has('discharge') && !has('air', 'probe', 'case', 'circuit') && facts.median > 60) return 'pressure';
  if ((first === 'p' || first === 'pt') && tokens.length > 1 && facts.low > -1) return 'pressure';
  if (has('outdoor') && !has('light', 'fan') && weatherLike(facts)) return 'temperature';
  const moves = facts.distinct > fewestDistinct;
  return (airLike(facts) && moves) ||
    (has('discharge') && moves) ||
    has('air', 'probe', 'return', 'supply', 'coil', 'product', 'set', 'differential')
    ? 'temperature'
    : 'number';
}

/** `FeedPct`: the unit as the last word of the name. */
function saysPercent(tokens: readonly Token[]): boolean {
  return /^(?:pct|perc|percent|prozent|pourcent|porcentaje|percentuale|procent)$/.test(
    tokens.at(-1)?.text ?? '',
  );
}

/** Within what weather can be, in °F or °C. */
function weatherLike(facts: ColumnFacts): boolean {
  return facts.low > -60 && facts.high < 140 && facts.distinct > fewestDistinct;
}

/** Within what air of a case can be, in °F or °C. */
function airLike(facts: ColumnFacts): boolean {
  return facts.median > -40 && facts.median < 75 && facts.high < 130;
}

/** Air logged even to a whole degree takes more values than this in a week of defrosts. */
export const fewestDistinct = 4;
