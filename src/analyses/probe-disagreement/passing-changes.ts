import { median } from '../../maths/median.ts';
import type { Evidence } from '../../model/evidence.ts';
import { timeAt } from '../../model/grid.ts';
import type { CircuitSignals } from '../../signals/types.ts';
import { changeEvidence } from './change-evidence.ts';
import { episodesOf } from './episodes.ts';
import { type OffsetTable, offsetTable } from './offset-table.ts';
import { settings } from './settings.ts';

/** Days without an episode after which a probe that had several is said to be over it. */
const quietDays = 3;

const repeatedly = 2;

/** Away and back in jumps, more than once: days in which it happened often must not pass for a lasting change. */
export function isLooseContact({ features }: Evidence): boolean {
  return features.loose === 1;
}

function isLoose(edge: number, shift: number): boolean {
  return edge >= settings.jumpShare.value && Math.abs(shift) >= settings.looseContact.value;
}

/** Probes that left their neighbours for hours and came back, once or again and again. */
export function passingChanges(
  signals: CircuitSignals,
  settled: OffsetTable,
  living: readonly number[],
): Evidence[] {
  const { grid } = signals.log;
  const table = signals.offSpells.length === 0 ? settled : offsetTable(signals, true);
  return living.flatMap((probe) => {
    const peers = living.filter((other) => other !== probe);
    const episodes = episodesOf(signals, table, probe, peers);
    if (episodes.length === 0) return [];
    // Of two probes only the warmer side of an episode is written down, as in the votes.
    const told = living.length === 2 ? episodes.filter((one) => one.shift > 0) : episodes;
    if (told.length === 0) return [];
    const shift = told.reduce((most, one) => (Math.abs(one.shift) > Math.abs(most) ? one.shift : most), 0);
    const samples = told.reduce((sum, one) => sum + one.to - one.from, 0);
    const last = told.at(-1)!;
    const isOver = told.length === 1 || (grid.count - last.to) * grid.stepMs > quietDays * 86_400_000;
    const edge = median(told.map((one) => one.edge));
    const hours = (samples * grid.stepMs) / 3_600_000;
    return [
      {
        ...changeEvidence(signals, probe, peers, {
          shape: 'episodes',
          onset: timeAt(grid, told[0]!.from),
          end: isOver ? timeAt(grid, last.to) : null,
          certainty: Math.min(0.95, 0.55 + 0.1 * told.length + 0.03 * Math.abs(shift)),
          shift,
          error: 0,
          features: {
            episodes: told.length,
            hours,
            edge,
            jumps: edge >= settings.jumpShare.value ? 1 : 0,
            loose: told.length >= repeatedly && isLoose(edge, shift) ? 1 : 0,
          },
        }),
        measures: [
          { name: 'episodes', value: told.length, low: null, high: null, unit: '1' },
          { name: 'hours off its neighbours', value: hours, low: null, high: null, unit: 'h' },
          { name: 'largest departure', value: shift, low: null, high: null, unit: 'K' },
        ],
      },
    ];
  });
}
