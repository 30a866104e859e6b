import type { ColumnFacts } from './column-facts.ts';
import { fewestDistinct, type Has, type Kind } from './kind.ts';

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

export interface RoleGuess {
  readonly role: Role;
  readonly confidence: number;
  readonly because: string;
}

/** What a column is in the store, from the words of its name, and from its behaviour where they say nothing. */
export function roleOf(kind: Kind, has: Has, facts: ColumnFacts): RoleGuess {
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

const named = (role: Role, confidence = 0.95, because = 'its name says so'): RoleGuess => ({
  role,
  confidence,
  because,
});

function statusRole(has: Has, facts: ColumnFacts): RoleGuess {
  if (has('alarm', 'light', 'door', 'limit', 'instrument')) return named('other');
  if (has('heater'))
    return has('defrost') ? named('defrost', 0.6, 'the heater that is on while it defrosts') : named('other');
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

function temperatureRole(has: Has, facts: ColumnFacts): RoleGuess {
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
  if (has('control') && !has('average', 'extreme') && facts.readings > 0 && facts.distinct <= fewestDistinct)
    return named('set-point', 0.6, 'a control temperature that hardly changes is a setting');
  if (has('average', 'control', 'extreme')) return named('control-temperature', 0.85);
  if (has('product')) return named('product');
  if (has('air') && has('inlet')) return named('return-air');
  if (has('coil') && !(has('air') && has('outlet'))) return coilRole(has);
  if (has('suction')) return named('coil-out', 0.6, 'a suction line temperature stands at the coil outlet');
  if (has('return')) return named('return-air');
  if (has('air', 'supply', 'discharge', 'probe')) return named('air');
  if (has('temperature')) return named('air', 0.8, 'a temperature whose name says nothing else');
  if (facts.distinct <= fewestDistinct) {
    return { role: 'other', confidence: 0.3, because: 'it hardly changes and its name says nothing' };
  }
  return { role: 'air', confidence: 0.5, because: 'its values look like the air of a case' };
}

function coilRole(has: Has): RoleGuess {
  if (has('inlet')) return named('other');
  if (has('outlet')) return named('coil-out');
  return named('defrost-termination', 0.55, 'the coil probe usually ends the defrost');
}

function pressureRole(has: Has): RoleGuess {
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

function percentRole(has: Has): RoleGuess {
  if (has('humidity')) return named('other');
  if (has('level')) return named('liquid-level');
  if (has('receiver')) return named('liquid-level', 0.8);
  if (has('compressor', 'fan', 'speed', 'light', 'heater')) return named('other');
  if (has('valve', 'feed', 'liquid')) return named('valve', 0.9);
  return { role: 'other', confidence: 0.3, because: 'per cent of what is not said' };
}
