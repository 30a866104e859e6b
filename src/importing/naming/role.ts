import { quantityOf } from '../../units/export-units.ts';
import type { Point } from '../points/point.ts';
import { type ColumnFacts, factsOf } from './column-facts.ts';
import { type Token, tokensOf } from './tokens.ts';
import type { Meaning } from './vocabulary.ts';

/** What a column is in the store. */
export const roles = [
  'air',
  'return-air',
  'coil-out',
  'product',
  'defrost-termination',
  'control-temperature',
  'set-point',
  'differential',
  'defrost',
  'valve',
  'superheat',
  'suction-pressure',
  'suction-set-point',
  'compressor',
  'discharge-pressure',
  'liquid-level',
  'outdoor',
  'other',
] as const;
export type Role = (typeof roles)[number];

/** What a column measures, as far as unit, values and name tell. */
export type Kind = 'temperature' | 'pressure' | 'percent' | 'status' | 'number' | 'empty';

/** A column with everything the guess knows of it. */
export interface NamedColumn {
  readonly point: Point;
  readonly tokens: readonly Token[];
  readonly facts: ColumnFacts;
  readonly kind: Kind;
  readonly role: Role;
  /** 0 to 1: how sure the role is. */
  readonly confidence: number;
  readonly because: string;
}

/** All columns of a site; words at the front that every column shares (`Store 12/Rack A/`) say nothing of a role. */
export function nameColumns(points: readonly Point[]): NamedColumn[] {
  const tokens = points.map((point) => tokensOf(point.header));
  const shared = sharedFront(tokens);
  return points.map((point, index) => nameColumn(point, tokens[index]!, shared));
}

const rolelessInFront: ReadonlySet<Meaning | null> = new Set<Meaning | null>([
  'indoor',
  'outdoor',
  'low',
  'medium',
  'control',
]);

function sharedFront(all: readonly (readonly Token[])[]): number {
  const [first, ...rest] = all;
  if (first === undefined || rest.length < 3) return 0;
  let shared = 0;
  while (first[shared] !== undefined && rest.every((tokens) => tokens[shared]?.text === first[shared]!.text))
    shared++;
  return shared;
}

function nameColumn(point: Point, written: readonly Token[], shared: number): NamedColumn {
  const tokens = written.map((token, index) =>
    index < shared && rolelessInFront.has(token.meaning) ? { ...token, meaning: null } : token,
  );
  const facts = factsOf(point);
  const has = wordsIn(tokens);
  const kind = kindOf(point, facts, tokens, has);
  const { role, confidence, because } = roleOf(kind, has, facts);
  return { point, tokens, facts, kind, role, confidence, because };
}

export type Has = (...meanings: readonly Meaning[]) => boolean;

/** Whether any of the meanings stands in the name. */
function wordsIn(tokens: readonly Token[]): Has {
  const present = new Set(tokens.map((token) => token.meaning));
  return (...meanings) => meanings.some((meaning) => present.has(meaning));
}

function kindOf(point: Point, facts: ColumnFacts, tokens: readonly Token[], has: Has): Kind {
  if (point.status) return 'status';
  if (point.unit !== null) {
    const quantity = quantityOf(point.unit);
    if (quantity === 'temperature' || quantity === 'temperature-difference') return 'temperature';
    if (quantity === 'pressure') return 'pressure';
    if (quantity === 'fraction') return 'percent';
    return 'number';
  }
  if (facts.readings === 0) return 'empty';
  const first = tokens[0]?.text;
  if (has('instrument')) return 'number';
  if (has('pressure')) return 'pressure';
  if (facts.binary && !has('temperature', 'set', 'superheat', 'level')) return 'status';
  if (has('level', 'humidity')) return 'percent';
  if (has('temperature', 'superheat', 'subcooling', 'saturated')) return 'temperature';
  if (has('power', 'speed')) return 'number';
  if (has('valve') && !has('set') && facts.low >= 0 && facts.high <= 100) return 'percent';
  if (has('suction', 'highSide', 'condenser') && facts.low > -1)
    return first === 't' ? 'temperature' : 'pressure';
  if (has('discharge') && !has('air', 'probe', 'case', 'circuit') && facts.median > 60) return 'pressure';
  if (first === 'p' && tokens.length > 1 && facts.low > -1) return 'pressure';
  return (airLike(facts) && facts.distinct > fewestDistinct) ||
    has('air', 'probe', 'return', 'supply', 'coil', 'product', 'set', 'differential')
    ? 'temperature'
    : 'number';
}

/** Within what air of a case can be, in °F or °C. */
function airLike(facts: ColumnFacts): boolean {
  return facts.median > -40 && facts.median < 75 && facts.high < 130;
}

interface Guess {
  readonly role: Role;
  readonly confidence: number;
  readonly because: string;
}

function roleOf(kind: Kind, has: Has, facts: ColumnFacts): Guess {
  switch (kind) {
    case 'status':
      return statusRole(has, facts);
    case 'temperature':
      return temperatureRole(has, facts);
    case 'pressure':
      return pressureRole(has);
    case 'percent':
      return percentRole(has);
    case 'number':
      if (has('compressor') && !has('fan', 'oil', 'set'))
        return named('compressor', 0.8, 'an amount that a compressor draws or runs at');
      return { role: 'other', confidence: 0.3, because: 'neither name nor values say what it is' };
    default:
      return { role: 'other', confidence: 0.3, because: 'neither name nor values say what it is' };
  }
}

const named = (role: Role, confidence = 0.95, because = 'its name says so'): Guess => ({
  role,
  confidence,
  because,
});

function statusRole(has: Has, facts: ColumnFacts): Guess {
  if (has('alarm', 'light', 'door', 'heater', 'limit', 'instrument')) return named('other');
  if (has('defrost')) return named('defrost');
  if (has('compressor')) return has('fan', 'oil') ? named('other') : named('compressor');
  if (has('fan')) return named('other');
  if (has('valve')) return named('valve');
  if (has('liquid', 'feed') && !has('level')) return named('valve', 0.85);
  if (facts.startsPerDay >= 1.5 && facts.startsPerDay <= 9 && facts.onMinutes >= 8 && facts.onMinutes <= 90) {
    return {
      role: 'defrost',
      confidence: 0.6,
      because: `it is on ${facts.startsPerDay.toFixed(1)} times a day for about ${Math.round(facts.onMinutes)} min`,
    };
  }
  if (facts.startsPerDay > 24) {
    return {
      role: 'valve',
      confidence: 0.5,
      because: `it switches ${Math.round(facts.startsPerDay)} times a day`,
    };
  }
  return { role: 'other', confidence: 0.3, because: 'neither name nor behaviour says what it is' };
}

function temperatureRole(has: Has, facts: ColumnFacts): Guess {
  if (has('alarm', 'limit')) return named('other');
  if (has('superheat')) return has('set') ? named('other') : named('superheat');
  if (has('subcooling', 'saturated', 'humidity', 'oil')) return named('other');
  if (has('differential')) return named('differential');
  if (has('set'))
    return has('suction', 'condenser', 'highSide', 'compressor', 'defrost')
      ? named('other')
      : named('set-point');
  if (has('outdoor')) return named('outdoor');
  if (has('indoor')) return named('other', 0.8);
  if (has('defrost', 'termination')) return named('defrost-termination', 0.9);
  if (has('condenser', 'highSide', 'compressor', 'receiver', 'fan')) return named('other');
  if (has('liquid', 'gas')) return named('other', 0.8);
  if (has('average', 'control', 'extreme')) return named('control-temperature', 0.85);
  if (has('product')) return named('product');
  if (has('coil')) return coilRole(has);
  if (has('suction')) return named('coil-out', 0.6, 'a suction line temperature stands at the coil outlet');
  if (has('return')) return named('return-air');
  if (has('air', 'supply', 'discharge', 'probe')) return named('air');
  if (has('temperature')) return named('air', 0.8, 'a temperature whose name says nothing else');
  if (facts.distinct <= fewestDistinct) {
    return { role: 'other', confidence: 0.3, because: 'it hardly changes and its name says nothing' };
  }
  return { role: 'air', confidence: 0.5, because: 'its values look like the air of a case' };
}

/** Air logged even to a whole degree takes more values than this in a week of defrosts. */
const fewestDistinct = 4;

function coilRole(has: Has): Guess {
  if (has('inlet')) return named('other');
  if (has('outlet')) return named('coil-out');
  return named('defrost-termination', 0.55, 'the coil probe usually ends the defrost');
}

function pressureRole(has: Has): Guess {
  if (has('alarm', 'limit', 'differential', 'oil')) return named('other');
  const low = has('suction', 'low');
  if (has('set'))
    return low || !has('discharge', 'condenser', 'highSide')
      ? named('suction-set-point', low ? 0.95 : 0.6)
      : named('other');
  if (has('discharge', 'condenser', 'highSide')) return named('discharge-pressure');
  if (has('liquid', 'receiver', 'coil')) return named('other');
  if (has('suction')) return named('suction-pressure');
  return { role: 'other', confidence: 0.4, because: 'a pressure whose name does not say where' };
}

function percentRole(has: Has): Guess {
  if (has('humidity')) return named('other');
  if (has('level')) return named('liquid-level');
  if (has('receiver')) return named('liquid-level', 0.8);
  if (has('compressor', 'fan', 'speed', 'light', 'heater')) return named('other');
  if (has('valve', 'feed', 'liquid')) return named('valve', 0.9);
  return { role: 'other', confidence: 0.3, because: 'per cent of what is not said' };
}
