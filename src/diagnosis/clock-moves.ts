import { median } from '../maths/median.ts';
import type { Evidence } from '../model/evidence.ts';
import type { CircuitSignals } from '../signals/types.ts';
import { keepsTimes } from './kept-times.ts';
import { scheduleEdits } from './schedule-edits.ts';
import type { Trouble } from './trouble.ts';

const hourMs = 3_600_000;
const minutesADay = 1440;
/** Shifts this near to each other are one. */
const sameMinutes = 20;
const fewestCircuits = 3;
/** … and at least this share of the circuits of the group must have moved. */
const groupShare = 0.5;
/** Circuits of which nobody can have seen the same moment moved at different times. */
const togetherMs = 24 * hourMs;

/**
 * Circuits of one suction group whose defrosts all moved by the same amount at the same time: nobody edits so many
 * schedules alike, their clock jumped, unless as many others of the group keep theirs. One finding of the group stands
 * for them; what is left was edited.
 */
export function clockMoves(troubles: readonly Trouble[], circuits: readonly CircuitSignals[]): Trouble[] {
  const moved = troubles.filter((one) => one.scope === 'defrost' && one.lead.shape === 'moved');
  let open = [...troubles];
  for (const together of clocksOf(moved, circuits)) {
    const clock = asOne(together, moved);
    const guests = open.filter((one) => together.circuits.includes(one) || isMissedSince(one, clock));
    open = [...open.filter((one) => !guests.includes(one)), clock];
  }
  return scheduleEdits(open);
}

/** Groups of which enough circuits moved alike, and those too small for it that moved with one of them. */
function clocksOf(moved: readonly Trouble[], circuits: readonly CircuitSignals[]): Together[] {
  const groups = [...new Set(moved.map(({ lead }) => lead.suctionGroup))].filter((id) => id !== null);
  const alikeIn = (id: string, few: number) => {
    const together = largestAlike(
      moved.filter(({ lead }) => lead.suctionGroup === id),
      few,
    );
    const members = together?.circuits[0]?.group?.members.length ?? 0;
    if (together === null || together.circuits.length < groupShare * members) return null;
    return countKept(together, circuits) < together.circuits.length ? together : null;
  };
  const large = groups.flatMap((id) => alikeIn(id, fewestCircuits) ?? []);
  const small = groups
    .filter((id) => !large.some(({ circuits }) => circuits[0]!.lead.suctionGroup === id))
    .flatMap((id) => alikeIn(id, 1) ?? [])
    .filter(({ circuits }) =>
      large.some(
        (other) =>
          isTogether(other.circuits[0]!, circuits[0]!) &&
          circuits.every((one) => sharesShift(one, other.shift)),
      ),
    );
  return [...large, ...small];
}

/** Circuits of the group whose defrosts stayed where they were. */
function countKept({ circuits, shift }: Together, all: readonly CircuitSignals[]): number {
  const { lead, group } = circuits[0]!;
  const others = all.filter(
    ({ circuit: { id } }) =>
      group?.members.includes(id) === true && circuits.every((one) => one.lead.circuit !== id),
  );
  return others.filter((one) => keepsTimes(one, lead.onset, shift)).length;
}

/** The hour of a day on which clocks are changed. */
function isChangeover({ circuits }: Together): boolean {
  return circuits.every(({ lead }) => lead.features.clocksChanged === 1);
}

/** The other groups of the store moved alike, half of the circuits that moved in them at least. */
function isEverywhere({ shift, circuits }: Together, moved: readonly Trouble[]): boolean {
  const { suctionGroup } = circuits[0]!.lead;
  const elsewhere = moved.filter(({ lead }) => lead.suctionGroup !== suctionGroup);
  const alike = elsewhere.filter((one) => sharesShift(one, shift) && isTogether(circuits[0]!, one));
  return alike.length > 0 && alike.length >= groupShare * elsewhere.length;
}

/** Half of the circuits at least had no defrost in the trading day and have now. */
function losesTrading({ circuits }: Together): boolean {
  const lost = circuits.filter(
    ({ lead: { features } }) => features.tradingBefore === 0 && (features.tradingNow ?? 0) > 0,
  );
  return lost.length >= groupShare * circuits.length;
}

/** Defrosts of the group that are missed since its clock jumped came at another hour, or were lost by the jump. */
function isMissedSince({ lead }: Trouble, clock: Trouble): boolean {
  return (
    lead.kind === 'defrost-missed' &&
    lead.circuit !== null &&
    clock.group?.members.includes(lead.circuit) === true &&
    lead.onset >= clock.lead.onset - togetherMs
  );
}

interface Together {
  readonly shift: number;
  readonly circuits: readonly Trouble[];
}

/** The shift that most of them share; of several the smallest. */
function largestAlike(moved: readonly Trouble[], fewest: number): Together | null {
  let best: Together | null = null;
  for (const first of moved) {
    for (const shift of shiftsOf(first)) {
      const circuits = moved.filter((one) => sharesShift(one, shift) && isTogether(first, one));
      if (circuits.length < fewest) continue;
      const more = circuits.length - (best?.circuits.length ?? 0);
      if (best === null || more > 0 || (more === 0 && Math.abs(shift) < Math.abs(best.shift)))
        best = { shift, circuits };
    }
  }
  return best;
}

/** Every shift that its times of day allow: they are known up to the spacing between them. */
function shiftsOf({ lead }: Trouble): number[] {
  const { shiftMinutes = 0, spacingMinutes = minutesADay } = lead.features;
  const shifts: number[] = [];
  for (let shift = shiftMinutes - minutesADay; shift <= minutesADay / 2; shift += spacingMinutes)
    if (shift >= -minutesADay / 2) shifts.push(shift);
  return shifts;
}

function sharesShift(one: Trouble, shift: number): boolean {
  return shiftsOf(one).some((own) => Math.abs(own - shift) <= sameMinutes);
}

function isTogether(one: Trouble, other: Trouble): boolean {
  return Math.abs(one.lead.onset - other.lead.onset) <= togetherMs;
}

/** The clock jumped after the last defrost at an old hour and before the first one at a new hour. */
function asOne(together: Together, moved: readonly Trouble[]): Trouble {
  const { shift, circuits } = together;
  const everywhere = isEverywhere(together, moved);
  const changeover = isChangeover(together);
  const inTrading = losesTrading(together);
  const leads = circuits.map((one) => one.lead);
  const lastOld = Math.max(...leads.map((lead) => lead.onset));
  const firstNew = Math.min(
    ...leads.map((lead) => lead.onset + (lead.features.hoursUntilSeen ?? 0) * hourMs),
  );
  const lead: Evidence = {
    ...leads[0]!,
    circuit: null,
    shape: 'clock-moved',
    points: [...new Set(leads.flatMap(({ points }) => points))],
    onset: firstNew > lastOld ? (lastOld + firstNew) / 2 : lastOld,
    certainty: Math.max(0.9, ...leads.map(({ certainty }) => certainty)),
    measures: [
      {
        name: 'defrostsMovedBy',
        value: median(leadShifts(circuits, shift)),
        low: null,
        high: null,
        unit: 'min',
      },
    ],
    features: {
      shiftMinutes: shift,
      circuitsMoved: circuits.length,
      everywhere: everywhere ? 1 : 0,
      clocksChanged: changeover ? 1 : 0,
      inTrading: inTrading ? 1 : 0,
      note: changeover || (everywhere && !inTrading) ? 1 : 0,
    },
  };
  return {
    ...circuits[0]!,
    lead,
    evidence: [lead, ...circuits.flatMap(({ evidence }) => evidence)],
    circuit: null,
    covers: leads.map(({ circuit }) => circuit!),
  };
}

/** Of each circuit the shift that it may have made that lies nearest to the common one. */
function leadShifts(circuits: readonly Trouble[], shift: number): number[] {
  return circuits.map((one) =>
    shiftsOf(one).reduce((a, b) => (Math.abs(b - shift) < Math.abs(a - shift) ? b : a)),
  );
}
