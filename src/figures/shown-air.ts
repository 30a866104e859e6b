import { median } from '../maths/median.ts';
import type { CircuitSignals } from '../signals/types.ts';
import { Phase } from '../signals/types.ts';

/**
 * Daily air of one probe as a list or a picture may show it: the median of settled air; of a day on which the circuit
 * stood off for longer than it cooled, the median of its air while off. A case that is off must not be shown by how
 * cold it was before.
 *
 * @param probe position in `circuit.probes`
 * @returns one value a day of the calendar, Celsius, NaN where nothing is known
 */
export function shownAir(
  { circuit, probes, phase, offSpells, log }: CircuitSignals,
  probe: number,
): Float64Array {
  const settled = probes[probe]!.median;
  if (offSpells.length === 0) return settled;
  const { values } = circuit.probes[probe]!.record;
  return settled.map((usual, d) => {
    const { from, to } = log.calendar.days[d]!;
    const phases = phase.subarray(from, to);
    const off = values.subarray(from, to).filter((_, i) => phases[i] === Phase.off);
    return off.length > phases.filter((code) => code === Phase.cooling).length ? median(off) : usual;
  });
}
