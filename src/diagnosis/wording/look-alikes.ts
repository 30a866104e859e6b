import { median } from '../../maths/median.ts';
import type { Signals } from '../../signals/types.ts';
import { formatDifference } from '../../units/display.ts';
import type { Judgement } from '../judgement.ts';
import { featuresOf, type Trouble } from '../trouble.ts';

const dayMs = 86_400_000;

/** The healthy things that this could be taken for, each with why it is not that one. */
export function notThese(trouble: Trouble, judgement: Judgement, signals: Signals): string[] {
  if (trouble.lead.shape === 'set-point-changed') return notFeeding(trouble);
  if (trouble.lead.shape === 'short-of-liquid') return notOfTheRack(trouble);
  if (trouble.circuit === null || !['one-probe', 'whole-circuit'].includes(trouble.scope)) return [];
  const named = judgement.causes[0]!.cause;
  const lines: string[] = [];
  const add = (line: string | null): void => {
    if (line !== null) lines.push(line);
  };
  add(notItsRack(trouble, signals));
  if (named !== 'set-point') add(notSetPoint(trouble, signals));
  add(notWeather(trouble, signals));
  if (named !== 'door-or-load') add(notStocking(trouble, signals));
  if (named !== 'normal-variation') add(notHabit(trouble, signals));
  return lines;
}

/** A rack warms a coil by no more than its suction is up. */
function notItsRack({ beyondRack, lead }: Trouble, { log }: Signals): string | null {
  if (beyondRack == null) return null;
  const [stood, explained] = [beyondRack.warmth, beyondRack.explained].map((kelvin) =>
    formatDifference(kelvin, log.units),
  );
  return `Not its rack alone: what ${lead.suctionGroup} does explains ${explained}, and this circuit stood ${stood} over its usual level.`;
}

/** What else makes all circuits of a group call for more. */
function notOfTheRack({ lead }: Trouble): string[] {
  const { machinesBusier, groupRiseRate } = lead.features;
  return [
    'Not the capacity of the rack: its suction pressure holds where it was.',
    ...(machinesBusier === undefined
      ? []
      : ['Not humid weather, and not stocking: for those its machines would run more.']),
    ...(groupRiseRate === undefined
      ? []
      : ['Not coils full of frost: in defrost the air over them still rises about as fast as it did.']),
  ];
}

/** Air that stepped as a whole under a valve that answers as a control does. */
function notFeeding({ lead }: Trouble): string[] {
  const { setPointChange = 0, dutyChange, fromColumn } = lead.features;
  if (fromColumn === 1 || dutyChange === undefined) return [];
  return setPointChange > 0
    ? ['Not a coil that lacks liquid or air, and not a door: for those its valve would feed more.']
    : ['Not a valve held open: it still shuts.'];
}

function notSetPoint(trouble: Trouble, signals: Signals): string | null {
  const circuit = trouble.circuit!;
  const { grid } = signals.log;
  const near = circuit.setPointSteps.some(
    (step) => Math.abs(grid.startMs + step.at * grid.stepMs - trouble.lead.onset) < 1.5 * dayMs,
  );
  if (near) return null;
  if (trouble.scope === 'one-probe') {
    return 'Not a set-point change: that moves all probes of the circuit, and the others did not go with it.';
  }
  if (typeof circuit.circuit.setPoint === 'object' && circuit.circuit.setPoint !== null) {
    return 'Not a set-point change: the logged set point did not change then.';
  }
  return null;
}

function notWeather(trouble: Trouble, signals: Signals): string | null {
  if (trouble.scope === 'one-probe') {
    return 'Not the weather: its own neighbours stand in the same air of the store.';
  }
  const peers = trouble.group?.peers.get(trouble.circuit!.circuit.id);
  if (peers === undefined || trouble.beyondRack != null) return null;
  const moved = median(peers.subarray(Math.max(0, peers.length - 3)));
  if (!Number.isFinite(moved)) return null;
  const amount = formatDifference(Math.abs(moved), signals.log.units);
  const way = moved >= 0 ? 'up' : 'down';
  return `Not the weather: the other circuits of ${trouble.lead.suctionGroup} went ${way} by only ${amount} meanwhile.`;
}

function notStocking(trouble: Trouble, signals: Signals): string | null {
  const features = featuresOf(trouble);
  const { grid } = signals.log;
  const end = trouble.lead.end ?? grid.startMs + grid.count * grid.stepMs;
  const days = (end - trouble.lead.onset) / dayMs;
  if (Math.abs(features.dayNightRatio ?? 1) < 0.6) {
    return 'Not stocking or a busy day: it is there by night too.';
  }
  return days >= 2 ? 'Not stocking: that is over in hours, and this has lasted for days.' : null;
}

function notHabit(trouble: Trouble, signals: Signals): string | null {
  const features = featuresOf(trouble);
  if (features.sinceStart === 1 || features.offsetBefore === undefined) return null;
  if ((features.daysBefore ?? 0) < 2) return null;
  const before = formatDifference(Math.abs(features.offsetBefore), signals.log.units);
  return `Not an old habit: before, it stood ${before} from its neighbours.`;
}
