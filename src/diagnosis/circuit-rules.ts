import { type Rule, slackMs } from './merge.ts';
import { overlap, type Trouble } from './trouble.ts';

const dayMs = 86_400_000;

/**
 * What on one circuit is one trouble: a circuit that is off explains everything on it, a dead probe its own
 * readings, a section that ices its slow recovery and the valve that feeds for it. Fed in strokes of a few minutes superheat
 * never settles.
 */
export const circuitRules: readonly Rule[] = [
  {
    keeper: 'one-probe',
    guest: 'left-off',
    when: (k, g) => (isOverride(g) && begins(g) >= begins(k)) || isFedFor(k, g),
  },
  { keeper: 'dead-probe', guest: 'left-off', when: (k, g) => isBlind(k) && begins(g) >= begins(k) },
  { keeper: 'left-off', guest: 'left-off', when: (k, g) => !isNewSetPoint(k) || isNewSetPoint(g) },
  { keeper: 'left-off', guest: 'whole-circuit', when: explains },
  {
    keeper: 'left-off',
    guest: 'one-probe',
    when: (k, g) => explains(k, g) && begins(g) >= begins(k) - (g.lead.shape === 'creep' ? slackMs : dayMs),
  },
  { keeper: 'left-off', guest: 'defrost', when: explains },
  {
    keeper: 'left-off',
    guest: 'defrost',
    when: (k, g) => isOtherUse(k) && begins(g) >= begins(k) - dayMs,
  },
  { keeper: 'left-off', guest: 'superheat', when: explains },
  { keeper: 'left-off', guest: 'cycling', when: explains },
  { keeper: 'dead-probe', guest: 'dead-probe', when: sameProbe },
  { keeper: 'dead-probe', guest: 'one-probe', when: sameProbe },
  { keeper: 'dead-probe', guest: 'record', when: sameProbe },
  { keeper: 'dead-probe', guest: 'defrost', when: (k, g) => isBlind(k) && begins(g) >= begins(k) - slackMs },
  {
    keeper: 'dead-probe',
    guest: 'defrost',
    when: (k, g) => isRecovery(g) && begins(g) >= begins(k) - slackMs,
  },
  {
    keeper: 'dead-probe',
    guest: 'whole-circuit',
    when: (k, g) => !isPassing(k) && begins(g) >= begins(k) - slackMs,
  },
  { keeper: 'record', guest: 'one-probe', when: (k, g) => k.lead.shape === 'unit-change' && sameProbe(k, g) },
  { keeper: 'one-probe', guest: 'one-probe', when: sameProbe },
  { keeper: 'one-probe', guest: 'one-probe', when: (k, g) => changed(k) && changed(g) && isEcho(k, g) },
  { keeper: 'defrost', guest: 'defrost', when: (k, g) => k.lead.kind === g.lead.kind },
  {
    keeper: 'defrost',
    guest: 'defrost',
    when: (k, g) => k.lead.shape === 'missed' && isLonger(g) && begins(g) >= begins(k),
  },
  {
    keeper: 'defrost',
    guest: 'one-probe',
    when: (k, g) => neverComes(k) && changed(g) && begins(g) >= begins(k) - slackMs && !isFar(g),
  },
  { keeper: 'whole-circuit', guest: 'defrost', when: (k, g) => endsOtherwise(g) && outruns(k, g) },
  {
    keeper: 'defrost',
    guest: 'whole-circuit',
    when: (k, g) => isSpecific(k) && begins(g) >= begins(k) - slackMs,
  },
  { keeper: 'whole-circuit', guest: 'one-probe', when: (k, g) => changed(g) && isLarger(k, g) },
  { keeper: 'one-probe', guest: 'whole-circuit', when: (k, g) => changed(k) && follows(k, g) },
  { keeper: 'one-probe', guest: 'defrost', when: (k, g) => changed(k) && isRecovery(g) },
  {
    keeper: 'one-probe',
    guest: 'defrost',
    when: (k, g) => isIcing(k) && isLonger(g) && begins(g) >= begins(k),
  },
  { keeper: 'one-probe', guest: 'superheat', when: (k, g) => changed(k) && begins(g) >= begins(k) - slackMs },
  { keeper: 'superheat', guest: 'whole-circuit', when: (_, g) => g.lead.shape === 'duty' },
  { keeper: 'whole-circuit', guest: 'superheat', when: () => true },
  { keeper: 'whole-circuit', guest: 'defrost', when: (_, g) => isRecovery(g) },
  { keeper: 'superheat', guest: 'defrost', when: (_, g) => isRecovery(g) },
  { keeper: 'cycling', guest: 'cycling', when: () => true },
  { keeper: 'cycling', guest: 'superheat', when: (k, g) => begins(g) >= begins(k) - slackMs },
];

function sameProbe(keeper: Trouble, guest: Trouble): boolean {
  return keeper.lead.probe === guest.lead.probe;
}

function begins(trouble: Trouble): number {
  return trouble.lead.onset;
}

/** Another probe of the circuit that moved later and either less or the cold way: the control passes one trouble on. */
function isEcho(first: Trouble, later: Trouble): boolean {
  const shift = ({ lead }: Trouble): number => lead.features.shift ?? lead.features.rise ?? 0;
  if (begins(later) < begins(first)) return false;
  return shift(later) < 0 || Math.abs(shift(later)) < 0.6 * Math.abs(shift(first));
}

const blindShapes: readonly string[] = ['stuck', 'open-or-short', 'silent'];

/** Hours in which one probe left its neighbours are no reason for days of a circuit. */
function isPassing(trouble: Trouble): boolean {
  return trouble.lead.shape === 'episodes';
}

/** A control that is given a dead reading stops or overcools its circuit, and the circuit's mean air misleads. */
function isBlind(trouble: Trouble): boolean {
  return blindShapes.includes(trouble.lead.shape);
}

/**
 * A valve that never closes although the air is cold: what a probe that reads too warm makes its control do. That stops no
 * defrosts, and all its probes are not cold from the first hour on: where they part later, the frost of the coil parts them.
 */
function isOverride(trouble: Trouble): boolean {
  const { inCooling, beganCold } = trouble.lead.features;
  if (inCooling === 1 || beganCold === 1) return false;
  return trouble.lead.shape === 'override-on' || trouble.lead.shape === 'override-was-on';
}

/**
 * Air that a probe grew too warm to let the control see is cold from the first hour of a valve that no longer closes: a day
 * before it, and as long as defrosts come.
 */
function isFedFor(one: Trouble, held: Trouble): boolean {
  const { shape, features } = held.lead;
  if (shape !== 'override-on' || features.inCooling === 1) return false;
  return changed(one) && (one.lead.features.shift ?? 0) >= farApart && begins(held) >= begins(one) + dayMs;
}

function changed(trouble: Trouble): boolean {
  return trouble.lead.features.sinceStart !== 1;
}

/** A stop or an override explains the air; a set point that was left changed only shifts it. */
function explains(keeper: Trouble, guest: Trouble): boolean {
  return !isNewSetPoint(keeper) && overlap(keeper.lead, guest.lead, dayMs);
}

/** From frozen to chilled or back, K: those set points stand 10 K and more apart. Common practice, no source. */
const otherUse = 8;

/** A case that holds other goods than before is defrosted otherwise, too. */
function isOtherUse(trouble: Trouble): boolean {
  return isNewSetPoint(trouble) && Math.abs(trouble.lead.features.setPointChange ?? 0) >= otherUse;
}

function isNewSetPoint({ lead }: Trouble): boolean {
  return lead.shape === 'set-point-left' || lead.shape === 'set-point-changed';
}

export const recoveryShapes: readonly string[] = ['slow', 'not-recovered', 'lengthening'];

const longerShapes: readonly string[] = ['extended', 'by-the-clock'];
const otherwiseShapes: readonly string[] = [...longerShapes, 'overheated', 'ended-early'];

/** A coil that ices needs all the defrost it can get. */
export function isLonger(trouble: Trouble): boolean {
  return longerShapes.includes(trouble.lead.shape);
}

/** Longer, or farther past the melt: what begins in warm air ends warmer. Sooner: a coil that begins warm is soon through. */
function endsOtherwise(trouble: Trouble): boolean {
  return otherwiseShapes.includes(trouble.lead.shape);
}

/** No defrost at all any more: frost parts the probes of its coil. */
function neverComes({ lead }: Trouble): boolean {
  return lead.shape === 'missed' && lead.features.allSince === 1;
}

/** Farther from its neighbours, or above its own level, than frost that grows everywhere parts them, K (4 °F). */
const farApart = 2.2;

function isFar({ lead }: Trouble): boolean {
  return Math.abs(lead.features.shift ?? lead.features.rise ?? 0) >= farApart;
}

/**
 * Warm by `farApart` within a day of defrosts that run longer, hotter or shorter: some minutes of heat more or less do not make a
 * circuit so warm, and a coil does not ice over in a day. What let the warm air in also frosts the coil.
 */
function outruns(whole: Trouble, changed: Trouble): boolean {
  return (whole.lead.features.rise ?? 0) >= farApart && begins(whole) < begins(changed) + dayMs;
}

/** A section that is warm while it cools and loses at least half of that late in defrost. */
function isIcing({ lead }: Trouble): boolean {
  return (lead.features.shift ?? 0) > 0 && (lead.features.defrostOffsetRatio ?? 1) < 0.5;
}

/** A slow recovery is the air's side of another trouble; weak heat, a wrong length or a missed defrost is its own. */
export function isRecovery(trouble: Trouble): boolean {
  return recoveryShapes.includes(trouble.lead.shape);
}

function isSpecific(trouble: Trouble): boolean {
  return trouble.scope === 'defrost' && !isRecovery(trouble);
}

/**
 * All air of the circuit went up and one probe more or less than the others: one trouble, of the circuit when the
 * common part is the larger. The other way round a section that ices took the whole circuit with it.
 */
function isLarger(whole: Trouble, one: Trouble): boolean {
  const common = whole.lead.features.rise ?? 0;
  const apart = Math.abs(one.lead.features.shift ?? one.lead.features.rise ?? 0);
  if (whole.lead.shape === 'duty' || whole.lead.features.compared === 0) return false;
  return common > apart && begins(one) >= begins(whole) - slackMs;
}

/** A valve that feeds more is part of it even when it was first. */
function follows(one: Trouble, whole: Trouble): boolean {
  return begins(whole) >= begins(one) - (whole.lead.shape === 'duty' ? 3 : 1) * slackMs;
}
