import { median } from '../maths/median.ts';
import type { Evidence } from '../model/evidence.ts';
import { dayAt, indexAt } from '../model/grid.ts';
import { isRecovery } from './circuit-rules.ts';
import { lengthenedAtOnce } from './recovered-until.ts';
import type { Trouble } from './trouble.ts';

const dayMs = 86_400_000;
/** A valve passes its limit on busy days, which may be some days later. */
const slackMs = 3 * dayMs;
/** The start of a trend is known less well than that of a step. */
const trendSlackMs = 7 * dayMs;
/** Valves of which so many, and this share of the circuits, begin to start too often at one time have one cause. */
const fewestTogether = 3;
const togetherShare = 0.5;
/** … and so many that begin with a machine of their group. */
const fewestWithMachine = 2;
const togetherMs = dayMs;

/**
 * Valves that open in step start too often together: the finding of their group stands for those of its circuits, and for
 * what strokes of minutes do to the rest of what is read of a circuit. Valves that begin to start too often at one time have
 * one cause even where the logging is too coarse to show their step.
 */
export function coverByStep(troubles: readonly Trouble[]): Trouble[] {
  let open = withTogether(troubles);
  for (const step of open.filter(({ lead }) => lead.circuit === null && isStep(lead))) {
    const valves = open.filter((one) => isCycling(one, step));
    const { tooOften } = step.lead.features;
    if (step.lead.features.valves === 2 && valves.length < 2 && tooOften !== 1) {
      open = open.flatMap((one) => (one === step ? withoutStep(step) : [one]));
      continue;
    }
    const together = valves.filter((one) => isAtOnce(one.lead, step.lead, slackMs));
    const machines = step.evidence.filter(({ circuit, shape }) => circuit === null && shape === 'compressor');
    const isHarmful = machines.length > 0 || valves.length > 1 || tooOften === 1;
    const guests = isHarmful ? open.filter((one) => valves.includes(one) || comesOfIt(one, step)) : together;
    const covers = [...new Set(guests.map(({ lead }) => lead.circuit!))].sort();
    open = open
      .filter((one) => !guests.includes(one))
      .map((one) => (one === step ? { ...one, covers } : one));
  }
  return open;
}

function isStep({ shape }: Evidence): boolean {
  return shape === 'in-step' || shape === 'valves-together';
}

/** Two valves of which not both start too often met by chance: what is left is what else there was. */
function withoutStep(step: Trouble): Trouble[] {
  const evidence = step.evidence.filter((one) => !isStep(one));
  return evidence.length === 0 ? [] : [{ ...step, lead: evidence[0]!, evidence }];
}

function isMember({ lead }: Trouble, { group }: Trouble): boolean {
  return lead.circuit !== null && group?.members.includes(lead.circuit) === true;
}

function isAtOnce(one: Evidence, other: Evidence, withinMs: number): boolean {
  return Math.abs(one.onset - other.onset) <= withinMs;
}

/** It passes the limit of starts with them, or later, for they are still in step. */
function isCycling(one: Trouble, step: Trouble): boolean {
  return one.scope === 'cycling' && isMember(one, step) && one.lead.onset >= step.lead.onset - slackMs;
}

/**
 * What short strokes do: superheat never settles in them, the share of time that is read of them is not what it was,
 * a coil that is never shut for long carries more frost to its defrost, and one that is fed in strokes after it is cold later, from
 * the first day on and no later with the days.
 */
function comesOfIt(one: Trouble, step: Trouble): boolean {
  const { shape, onset } = one.lead;
  if (!isMember(one, step)) return false;
  if (one.scope === 'whole-circuit') return shape === 'duty' && onset >= step.lead.onset - trendSlackMs;
  if (isRecovery(one)) return isLaterSince(one, step);
  if (shape === 'extended') return isAtOnce(one.lead, step.lead, slackMs);
  return one.scope === 'superheat' && onset >= step.lead.onset - slackMs;
}

function isLaterSince(one: Trouble, step: Trouble): boolean {
  if (one.circuit === null) return false;
  const { calendar, grid } = one.circuit.log;
  return lengthenedAtOnce(dayAt(calendar, indexAt(grid, step.lead.onset)), one);
}

/**
 * One more for each group without valves in step of which half of the circuits began to start too often at one time, or some
 * with a machine of the group, which is part of it then.
 */
function withTogether(troubles: readonly Trouble[]): Trouble[] {
  const cycling = troubles.filter(({ scope }) => scope === 'cycling');
  const valves = cycling.filter(({ lead }) => lead.circuit !== null);
  let open = [...troubles];
  for (const id of new Set(valves.map(({ lead }) => lead.suctionGroup))) {
    const ofGroup = cycling.filter(({ lead }) => lead.suctionGroup === id);
    if (id === null || ofGroup.some(({ lead }) => isStep(lead))) continue;
    const together = largestTogether(ofGroup.filter(({ lead }) => lead.circuit !== null));
    const members = together[0]?.group?.members.length ?? 0;
    const machine = ofGroup.find(
      ({ lead }) => lead.circuit === null && together.some((one) => isAtOnce(one.lead, lead, togetherMs)),
    );
    const isEnough =
      machine === undefined
        ? together.length >= Math.max(fewestTogether, togetherShare * members)
        : together.length >= fewestWithMachine;
    if (isEnough) open = [...open.filter((one) => one !== machine), asOne(together, machine)];
  }
  return open;
}

function largestTogether(valves: readonly Trouble[]): readonly Trouble[] {
  const around = valves.map((first) => valves.filter((one) => isAtOnce(one.lead, first.lead, togetherMs)));
  return around.reduce((most, some) => (some.length > most.length ? some : most), []);
}

function asOne(together: readonly Trouble[], machine: Trouble | undefined): Trouble {
  const leads = together.map(({ lead }) => lead);
  const lead: Evidence = {
    ...leads[0]!,
    circuit: null,
    probe: null,
    shape: 'valves-together',
    points: leads.map(({ points }) => points[0]!),
    onset: median(leads.map(({ onset }) => onset)),
    end: leads.every(({ end }) => end !== null) ? Math.max(...leads.map(({ end }) => end!)) : null,
    certainty: Math.max(...leads.map(({ certainty }) => certainty)),
    measures: [{ name: 'valvesTogether', value: leads.length, low: null, high: null, unit: '1' }],
    features: { valves: leads.length },
  };
  const evidence = [lead, ...(machine?.evidence ?? [])];
  return { ...together[0]!, lead, evidence, circuit: null, covers: [] };
}
