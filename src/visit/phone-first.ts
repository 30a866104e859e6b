import { timeAt } from '../model/grid.ts';
import type { Signals } from '../signals/types.ts';
import type { Celsius, EpochMs } from '../units/quantities.ts';
import type { Stop } from './visit-sheet.ts';

/** What somebody in the store, or at the controller's screen, can tell before anybody drives. */
export type PhoneQuestion =
  | { readonly about: 'goods'; readonly circuits: readonly string[] }
  | {
      readonly about: 'switched-off' | 'held-open' | 'doors-and-load' | 'defrost-schedule';
      readonly circuit: string;
      readonly since: EpochMs;
    }
  | {
      readonly about: 'set-point';
      readonly circuit: string;
      readonly since: EpochMs;
      readonly from: Celsius;
      readonly to: Celsius;
    }
  | { readonly about: 'compressors'; readonly suctionGroup: string; readonly since: EpochMs }
  /** Which of these probes lie? One thermometer tells. */
  | { readonly about: 'thermometer'; readonly probes: readonly string[] };

/** Set-point changes this long before the end are still worth asking about. */
const recentMs = 14 * 86_400_000;

/** What concerns the goods first, then in the order of the stops, then what one thermometer can tell. */
export function phoneQuestions(stops: readonly Stop[], signals: Signals): PhoneQuestion[] {
  const probes = stops.flatMap(probeToHold);
  return [
    ...goodsOf(stops),
    ...stops.flatMap(questionsOf),
    ...setPointQuestions(stops, signals),
    ...(probes.length === 0 ? [] : [{ about: 'thermometer', probes } as const]),
  ];
}

function questionsOf({ circuit, suctionGroup, lead, cause }: Stop): PhoneQuestion[] {
  const since = lead.onset;
  if (circuit === null) {
    return suctionGroup === null ? [] : [{ about: 'compressors', suctionGroup, since }];
  }
  if (lead.kind === 'left-off') {
    const isOverride = lead.evidence.some(({ shape }) => shape.startsWith('override'));
    return [{ about: isOverride ? 'held-open' : 'switched-off', circuit, since }];
  }
  switch (cause?.cause) {
    case 'defrost-schedule':
      return [{ about: 'defrost-schedule', circuit, since }];
    case 'door-or-load':
      return [{ about: 'doors-and-load', circuit, since }];
    default:
      return lead.kind === 'defrost-missed' ? [{ about: 'defrost-schedule', circuit, since }] : [];
  }
}

/** One probe that stands off its neighbours: somebody can hold a thermometer beside it. */
function probeToHold({ circuit, lead }: Stop): string[] {
  return circuit === null || lead.probe === null || lead.kind === 'left-off' ? [] : [lead.probe];
}

/** Warm air now: the store has to look at its goods, whatever the cause. */
function goodsOf(stops: readonly Stop[]): PhoneQuestion[] {
  const warm = stops.flatMap(({ exposures }) => exposures.filter(({ aboveMinutes }) => aboveMinutes > 0));
  const circuits = [...new Set(warm.map(({ circuit }) => circuit))];
  return circuits.length === 0 ? [] : [{ about: 'goods', circuits }];
}

function setPointQuestions(stops: readonly Stop[], { circuits, log }: Signals): PhoneQuestion[] {
  const end = timeAt(log.grid, log.grid.count);
  const visited = new Set(stops.map(({ circuit }) => circuit));
  return circuits.flatMap(({ circuit, setPointSteps }) => {
    const last = setPointSteps.at(-1);
    if (last === undefined || !visited.has(circuit.id)) return [];
    const since = timeAt(log.grid, last.at);
    return end - since > recentMs
      ? []
      : [{ about: 'set-point', circuit: circuit.id, since, from: last.from, to: last.to }];
  });
}
