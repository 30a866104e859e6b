import { keyText, residualOf } from './residual.ts';
import type { NamedColumn } from './role.ts';

/**
 * A bare `R1 discharge` without a unit can be air or pressure. It is a pressure where the same name carries a
 * suction pressure or compressors, and no other column of a circuit.
 */
export function withRackPressures(columns: readonly NamedColumn[]): NamedColumn[] {
  const rackKeys = new Set<string>();
  const circuitKeys = new Set<string>();
  for (const column of columns) {
    const key = keyText(residualOf(column).filter((token) => token.mark !== 'probe'));
    if (column.role === 'suction-pressure' || column.role === 'compressor') rackKeys.add(key);
    else if (!isBareDischarge(column)) circuitKeys.add(key);
  }
  return columns.map((column) => {
    if (!isBareDischarge(column)) return column;
    const key = keyText(residualOf(column));
    if (!rackKeys.has(key) || circuitKeys.has(key)) return column;
    return {
      ...column,
      kind: 'pressure',
      role: 'discharge-pressure',
      confidence: 0.8,
      because: 'it is named discharge and stands beside a suction pressure and compressors',
    };
  });
}

function isBareDischarge({ role, tokens, point }: NamedColumn): boolean {
  const meanings = new Set(tokens.map((token) => token.meaning));
  const air = meanings.has('air') || meanings.has('temperature') || meanings.has('probe');
  return role === 'air' && meanings.has('discharge') && !air && point.unit === null;
}
