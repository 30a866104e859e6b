import { residualOf } from './residual.ts';
import type { NamedColumn, Role } from './role.ts';
import { textOf } from './tokens.ts';

/**
 * Columns that carry the name of a rack and of no circuit belong to the rack: a bare `R1 discharge` without a
 * unit is a pressure there, and `R1 suction temp` is no coil outlet.
 */
export function withRackColumns(columns: readonly NamedColumn[]): NamedColumn[] {
  const keys = columns.map((column) => textOf(residualOf(column).filter((token) => token.mark !== 'probe')));
  const rackKeys = new Set<string>();
  const circuitKeys = new Set<string>();
  for (const [index, column] of columns.entries()) {
    if (column.role === 'suction-pressure' || column.role === 'compressor') rackKeys.add(keys[index]!);
    else if (saysCircuit(column)) circuitKeys.add(keys[index]!);
  }
  return columns.map((column, index) => {
    const key = keys[index]!;
    if (!rackKeys.has(key) || circuitKeys.has(key)) return column;
    if (isBareDischarge(column)) {
      const because = 'it is named discharge and stands beside a suction pressure and compressors';
      return { ...column, kind: 'pressure', role: 'discharge-pressure', confidence: 0.8, because };
    }
    const ofRack =
      isDischargeGas(column) ||
      column.role === 'coil-out' ||
      column.role === 'defrost-termination' ||
      column.role === 'set-point' ||
      column.role === 'return-air';
    return ofRack
      ? { ...column, role: 'other', confidence: 0.8, because: 'it carries the name of the rack' }
      : column;
  });
}

/** Only air, defrosts and valves make a name that of a circuit. */
function saysCircuit(column: NamedColumn): boolean {
  return (
    (column.role === 'air' && !isBareDischarge(column) && !isDischargeGas(column)) ||
    column.role === 'defrost' ||
    column.role === 'valve'
  );
}

/** Compressors discharge far above any air of a case. */
function isDischargeGas({ role, tokens, point, facts }: NamedColumn): boolean {
  const hotFrom = point.unit === 'degC' ? 25 : point.unit === 'degF' ? 75 : 60;
  return role === 'air' && tokens.some((token) => token.meaning === 'discharge') && facts.median > hotFrom;
}

function isBareDischarge({ role, tokens, point }: NamedColumn): boolean {
  const meanings = new Set(tokens.map((token) => token.meaning));
  const air = meanings.has('air') || meanings.has('temperature') || meanings.has('probe');
  return role === 'air' && meanings.has('discharge') && !air && point.unit === null;
}

const placedRoles: ReadonlySet<Role> = new Set<Role>([
  'air',
  'return-air',
  'control-temperature',
  'suction-pressure',
  'compressor',
]);

/**
 * An export that holds no case and no rack, only a state that switches or a power: most likely one machine was
 * logged by itself.
 */
export function withLoneMachines(columns: readonly NamedColumn[]): NamedColumn[] {
  if (columns.some(({ role }) => placedRoles.has(role))) return [...columns];
  return columns.map((column) => {
    const { unit } = column.point;
    const switches = column.kind === 'status' && column.facts.startsPerDay >= 2 && column.confidence <= 0.6;
    const draws = (unit === 'W' || unit === 'kW' || unit === 'A') && column.facts.high > 2 * column.facts.p10;
    if (!switches && !draws) return column;
    const because = draws
      ? 'a power that comes and goes, with nothing else logged'
      : 'a state that switches, with nothing else logged';
    return { ...column, role: 'compressor', confidence: 0.4, because };
  });
}
