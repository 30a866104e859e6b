import type { Evidence } from '../model/evidence.ts';
import type { Projection, Severity } from '../model/finding.ts';
import type { EpochMs } from '../units/quantities.ts';
import { recoveryShapes } from './circuit-rules.ts';
import { warmsItsCircuits } from './group-rules.ts';
import type { Judgement } from './judgement.ts';
import { isSetRight } from './set-right.ts';
import { featuresOf, type Trouble } from './trouble.ts';
import { warmSpell } from './warm-spell.ts';

const dayMs = 86_400_000;
/** A trouble less likely than this to be real is worth knowing, not a visit. */
export const leastConfidence = 0.5;
/** A limit that will be reached within this many days cannot wait for the next round. */
const actWithinDays = 14;
/** What ended by itself within this time was an event of the day. */
const shortDays = 2;
/** What is over and was less than this at its highest is worth knowing, K (2.5 °F). */
const plainWarmth = 1.4;
/** A lie this large leads the control far enough astray to act on, K. */
const largeLie = 4.4;

/** Causes that make a warm case nobody's fault. */
const harmlessCauses: readonly string[] = ['set-point', 'weather', 'normal-variation', 'service-visit'];
/** Shapes that are worth knowing and no more, however sure they are. */
const noteShapes: readonly string[] = [
  'single',
  'fewer-than-planned',
  'drip-lost',
  'inferred',
  'override-was-on',
  'constant',
  'service-visit',
  'moved',
  'target-lowered',
];
const watchShapes: readonly string[] = [
  'low',
  'level-low',
  'condensing-high',
  'low-pressure-trips',
  'float-stopped',
  'target-left',
  'clock-moved',
];
/** A raised target is a change of intent until this share of its circuits went warm with it. */
const warmShare = 0.5;
/** A rack whose circuits are warm in this share is felt: those with the least reserve go first. */
const feltShare = 0.3;
/** K. */
const superheatChange = 2;
const superheatDanger = 14;
/** Times the limit, or its own earlier days, from which superheat plainly swings. */
const plainHunting = 1.25;
const creepDays = 3;
const setPointReachDays = 2;
const plainlyLonger = 1.6;
/** Times its own earlier median from which a recovery has plainly lengthened. */
const longerRecovery = 1.25;
/** Share of the defrosts due since the first missed one under which, once they come again, it was an event or two. */
const rarelyMissed = 0.1;
/** Times that an override came back by itself from which the next one is expected to. */
const fewestReturns = 2;
/** A stop that is over after this time was longer than a service visit, hours. */
const longStopHours = 24;

/** How soon somebody must look, by what is known now. */
export function severityOf(
  trouble: Trouble,
  judgement: Judgement,
  confidence: number,
  projection: Projection | null,
  now: EpochMs,
): Severity {
  const { lead } = trouble;
  const features = featuresOf(trouble);
  if (
    isOldSuperheat(trouble, features) ||
    isOldHunting(trouble, features) ||
    endsByItself(trouble) ||
    isOldRecovery(trouble, features) ||
    isNewSetPoint(trouble, features) ||
    isHarmlessStep(trouble) ||
    isSetRight(trouble, judgement) ||
    isLooseLength(trouble, features)
  ) {
    return 'note';
  }
  if (confidence < leastConfidence || noteShapes.includes(lead.shape) || features.note === 1) return 'note';
  const spell = warmSpell(trouble);
  if (spell !== null) return spell === 'weather' ? 'note' : 'watch';
  const end = lead.end;
  switch (trouble.scope) {
    case 'record':
      return 'note';
    case 'left-off':
      if (lead.shape === 'was-off')
        return (features.hours ?? 0) >= longStopHours && features.shared !== 1 ? 'watch' : 'note';
      if (lead.shape === 'set-point-changed') return projection?.at == null ? 'note' : 'watch';
      return lead.shape === 'set-point-left' ? 'watch' : 'act';
    case 'dead-probe':
      if (lead.shape === 'episodes') return features.loose === 1 ? 'watch' : 'note';
      if (end !== null && end - lead.onset < shortDays * dayMs) return 'note';
      return trouble.evidence.some(({ shape }) => shape === 'off') ? 'act' : 'watch';
    case 'one-probe':
    case 'whole-circuit':
      return ofWarmAir(trouble, judgement, features, projection, now);
    default:
      if (end !== null) return isPassed(trouble, end, features) ? 'note' : 'watch';
      if (trouble.scope === 'rack') return ofRack(trouble, features);
      return reaches(projection, now) ? 'act' : 'watch';
  }
}

/** An event of the day; a few defrosts that did not come and do again; or a pressure that is back where it was and that no circuit felt. */
function isPassed(trouble: Trouble, end: EpochMs, features: Readonly<{ [name: string]: number }>): boolean {
  if (end - trouble.lead.onset < shortDays * dayMs) return true;
  if (trouble.lead.shape === 'missed') return (features.missedSinceShare ?? 1) < rarelyMissed;
  return features.shareWarm !== undefined && !isFelt(trouble, features);
}

/** A valve that feeds ever more, or all the time: one that feeds more from one day on was told to. */
function losesReserve(features: Readonly<{ [name: string]: number }>): boolean {
  if (features.setPointMoved === 1) return false;
  return (features.rampDays ?? 0) >= creepDays || (features.dutyNow ?? 0) >= (features.dutyFull ?? 1);
}

/** Valves in step wear nothing until a machine, or the valves themselves, start too often for it. */
function isHarmlessStep({ lead, evidence, covers }: Trouble): boolean {
  return (
    lead.shape === 'in-step' &&
    covers.length === 0 &&
    evidence.every(({ shape, features }) => shape === 'in-step' && features.tooOften !== 1)
  );
}

/** A colder set point takes longer to come back to, and its coil longer to end its defrost: that is intent. */
function isNewSetPoint(trouble: Trouble, features: Readonly<{ [name: string]: number }>): boolean {
  const { lead, circuit, scope } = trouble;
  if (scope !== 'defrost' || circuit === null) return false;
  const { grid } = circuit.log;
  const daysSince = circuit.setPointSteps.map((step) => ({
    ...step,
    days: (lead.onset - grid.startMs - step.at * grid.stepMs) / dayMs,
  }));
  if (recoveryShapes.includes(lead.shape)) {
    return daysSince.some(({ days }) => Math.abs(days) < setPointReachDays);
  }
  return (
    lead.shape === 'extended' &&
    (features.lengthRatio ?? 2) < plainlyLonger &&
    daysSince.some(({ days, from, to }) => to < from && days >= 0 && days < setPointReachDays)
  );
}

/** A defrost somewhat longer than before that does not end by the clock may only be logged coarsely. */
function isLooseLength({ lead }: Trouble, features: Readonly<{ [name: string]: number }>): boolean {
  return (
    lead.shape === 'extended' &&
    features.heatedOn !== 1 &&
    features.endedByTheClock === 0 &&
    (features.lengthRatio ?? 2) < plainlyLonger
  );
}

/** Superheat that is a little high and has always been so is a habit of its valve. */
function isOldSuperheat({ lead }: Trouble, features: Readonly<{ [name: string]: number }>): boolean {
  return (
    lead.shape === 'starving' &&
    (features.superheatRise ?? 0) < superheatChange &&
    (features.superheat ?? 0) < superheatDanger
  );
}

/** A valve that always swung about the limit of hunting passes it by chance. */
function isOldHunting({ lead }: Trouble, features: Readonly<{ [name: string]: number }>): boolean {
  const { huntingOverLimit = plainHunting, huntingOverUsual = plainHunting } = features;
  return lead.shape === 'hunting' && huntingOverLimit < plainHunting && huntingOverUsual < plainHunting;
}

/** Fed on over cold air again and again, as long before as now, and back each time: nobody left it so. */
function endsByItself({ lead, evidence }: Trouble): boolean {
  const earlier = evidence.filter(({ shape }) => shape === 'override-was-on');
  return (
    lead.shape === 'override-on' &&
    earlier.length >= fewestReturns &&
    earlier.some(({ features }) => (features.hours ?? 0) >= (lead.features.hours ?? 0))
  );
}

/** A recovery over its limit that takes no longer than it ever did is how that case is: worth knowing. */
function isOldRecovery({ lead }: Trouble, features: Readonly<{ [name: string]: number }>): boolean {
  return lead.shape === 'slow' && (features.recoveryRatio ?? longerRecovery) < longerRecovery;
}

/** A rack is acted on when its circuits feel it: a pressure alone warms no case. */
function ofRack(trouble: Trouble, features: Readonly<{ [name: string]: number }>): Severity {
  const { shape } = trouble.lead;
  if (shape === 'target-raised' && (features.shareWarm ?? 0) < warmShare) {
    return coveredShare(trouble) < warmShare ? 'note' : 'watch';
  }
  if (watchShapes.includes(shape) && !isWarmByHalf(trouble, features)) return 'watch';
  return isFelt(trouble, features) ? 'act' : 'watch';
}

/** What is only watched by itself is acted on where the pressure is up with it and half of the circuits are warm. */
function isWarmByHalf(trouble: Trouble, features: Readonly<{ [name: string]: number }>): boolean {
  return warmsItsCircuits(trouble) && Math.max(features.shareWarm ?? 0, coveredShare(trouble)) >= warmShare;
}

function isFelt(trouble: Trouble, features: Readonly<{ [name: string]: number }>): boolean {
  return Math.max(features.shareWarm ?? 0, coveredShare(trouble)) >= feltShare;
}

/** Of the circuits of its group, those for which it stands. */
function coveredShare({ covers, group }: Trouble): number {
  return covers.length / Math.max(1, group?.members.length ?? 0);
}

function ofWarmAir(
  { lead, scope }: Trouble,
  judgement: Judgement,
  features: Readonly<{ [name: string]: number }>,
  projection: Projection | null,
  now: EpochMs,
): Severity {
  if (judgement.origin !== 'case' && harmlessCauses.includes(judgement.causes[0]!.cause)) {
    const isAtLimit = lead.end === null && reaches(projection, now);
    return judgement.causes[0]!.cause === 'set-point' && isAtLimit ? 'watch' : 'note';
  }
  if (lead.end !== null) return isPassedWarmth(lead, features) ? 'note' : 'watch';
  if (lead.shape === 'duty') return losesReserve(features) ? 'watch' : 'note';
  if (scope === 'one-probe' && judgement.origin === 'probe') {
    return Math.abs(features.shift ?? 0) >= largeLie ? 'act' : 'watch';
  }
  return reaches(projection, now) ? 'act' : 'watch';
}

function isPassedWarmth({ onset, end }: Evidence, features: Readonly<{ [name: string]: number }>): boolean {
  return (
    end! - onset < shortDays * dayMs || Math.abs(features.shift ?? features.rise ?? plainWarmth) < plainWarmth
  );
}

function reaches(projection: Projection | null, now: EpochMs): boolean {
  return projection?.at != null && projection.at <= now + actWithinDays * dayMs;
}
