import { type Rule, slackMs } from './merge.ts';
import { featuresOf, type Trouble } from './trouble.ts';

const warmingShapes: readonly string[] = [
  'high',
  'target-raised',
  'capacity-shortfall',
  'group-warm',
  'short-of-liquid',
];
/** What little liquid does to the rest of the rack. */
const emptyShapes: readonly string[] = ['level-low', 'low', 'low-pressure-trips'];

/** True for a rack that warms what it feeds. */
export function warmsItsCircuits(rack: Trouble): boolean {
  return rack.evidence.some(({ shape }) => warmingShapes.includes(shape));
}

/** Machines move less against a high condensing pressure: a shortfall that goes with one is its effect. */
function isShortOfCondensing(one: Trouble, other: Trouble): boolean {
  const shapes = [one.lead.shape, other.lead.shape];
  return (
    shapes.includes('condensing-high') &&
    shapes.some((shape) => shape === 'high' || shape === 'capacity-shortfall')
  );
}

/** Warm circuits, or valves that hardly ever shut, in this share, or all machines at work for this share of the time. */
const fullShare = 0.6;
const fullRunning = 0.85;

/**
 * Valves that hardly ever shut, for the rack cannot satisfy them, do so in the same hours of little load: that is no step of theirs,
 * unless machines cycle with it.
 */
function isStepOfFullValves(rack: Trouble, cycling: Trouble): boolean {
  const { shareWarm = 0, allRunningShare = 0 } = featuresOf(rack);
  const { shareFull = 0 } = cycling.lead.features;
  return (
    cycling.evidence.every(({ shape }) => shape === 'in-step') &&
    cycling.lead.onset >= rack.lead.onset - slackMs &&
    warmsItsCircuits(rack) &&
    (Math.max(shareWarm, shareFull) >= fullShare || allRunningShare >= fullRunning)
  );
}

const dayMs = 86_400_000;
const targetShapes: readonly string[] = ['target-left', 'target-lowered', 'target-raised'];

/** What a target brings about that stands elsewhere from then on: cut-outs at the lower pressure, and a float that does not come back. */
function comesOfTarget({ lead }: Trouble, guest: Trouble): boolean {
  if (!targetShapes.includes(lead.shape) || guest.lead.onset < lead.onset - dayMs || isRemark(guest))
    return false;
  return (
    guest.lead.shape === 'float-stopped' ||
    (guest.lead.shape === 'low-pressure-trips' && (lead.features.targetMoved ?? 0) < 0)
  );
}

/** What is worth no more than a word stands by itself, and makes no remark of what it goes with. */
function isRemark({ lead }: Trouble): boolean {
  return lead.features.note === 1;
}

/** Machines that are cut out again and again do not hold the pressure either. */
function isHighOfTrips(one: Trouble, other: Trouble): boolean {
  const shapes = [one.lead.shape, other.lead.shape];
  if (isRemark(one) || isRemark(other)) return false;
  return (
    shapes.includes('low-pressure-trips') &&
    shapes.some((shape) => shape === 'high' || shape === 'capacity-shortfall') &&
    Math.abs(one.lead.onset - other.lead.onset) <= slackMs
  );
}

const ofMachines: readonly string[] = ['compressor', 'inferred'];

/** Machines that start too often since their suction stands far too low are those that draw it down to their cut-out. */
function isDrawnDown(cycling: Trouble, rack: Trouble): boolean {
  return (
    rack.lead.shape === 'low' &&
    cycling.evidence.some(({ shape }) => ofMachines.includes(shape)) &&
    Math.abs(cycling.lead.onset - rack.lead.onset) <= slackMs
  );
}

/** What on one suction group is one trouble: several machines that cycle, one pressure seen in several ways. */
export const groupRules: readonly Rule[] = [
  { keeper: 'cycling', guest: 'cycling', when: () => true },
  {
    keeper: 'rack',
    guest: 'rack',
    when: (k, g) => k.lead.shape === 'short-of-liquid' && emptyShapes.includes(g.lead.shape),
  },
  { keeper: 'rack', guest: 'rack', when: (k, g) => warmsItsCircuits(k) && warmsItsCircuits(g) },
  { keeper: 'rack', guest: 'rack', when: isShortOfCondensing },
  {
    keeper: 'rack',
    guest: 'rack',
    when: (k, g) => k.lead.shape === g.lead.shape && k.lead.shape !== 'service-visit',
  },
  {
    keeper: 'rack',
    guest: 'rack',
    when: (k, g) => k.lead.shape === 'target-left' && warmsItsCircuits(g),
  },
  { keeper: 'rack', guest: 'rack', when: comesOfTarget },
  { keeper: 'rack', guest: 'rack', when: isHighOfTrips },
  {
    keeper: 'cycling',
    guest: 'rack',
    when: (_, g) => g.lead.shape === 'low-pressure-trips' && !warmsItsCircuits(g),
  },
  { keeper: 'cycling', guest: 'rack', when: isDrawnDown },
  { keeper: 'rack', guest: 'cycling', when: isStepOfFullValves },
];
