import { timeAt } from '../model/grid.ts';
import type { Signals } from '../signals/types.ts';
import type { Celsius, EpochMs } from '../units/quantities.ts';
import type { Stop } from './visit-sheet.ts';

/** What somebody in the store, or at the controller's screen, can tell before anybody drives. */
export type PhoneQuestion =
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
  | {
      readonly about: 'thermometer';
      readonly circuit: string;
      readonly probe: string;
      readonly since: EpochMs;
    }
  | { readonly about: 'goods'; readonly circuit: string; readonly since: EpochMs };

/** Set-point changes this long before the end are still worth asking about. */
const recentMs = 14 * 86_400_000;

/** In the order of the stops, what costs nothing first; each question once. */
export function phoneQuestions(stops: readonly Stop[], signals: Signals): PhoneQuestion[] {
  const questions = stops.flatMap((stop) => [...questionsOf(stop), ...goodsOf(stop)]);
  return [
    ...questions.filter(({ about }) => about === 'goods'),
    ...questions.filter(({ about }) => about !== 'goods'),
    ...setPointQuestions(stops, signals),
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
      if (lead.kind === 'defrost-missed') return [{ about: 'defrost-schedule', circuit, since }];
      if (lead.probe === null) return [];
      return [{ about: 'thermometer', circuit, probe: lead.probe, since }];
  }
}

/** Warm air now: the store has to look at its goods, whatever the cause. */
function goodsOf({ circuit, lead, exposure }: Stop): PhoneQuestion[] {
  return circuit !== null && exposure !== null && exposure.aboveMinutes > 0
    ? [{ about: 'goods', circuit, since: lead.onset }]
    : [];
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
