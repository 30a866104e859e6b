import { isDecided, type Judgement } from '../judgement.ts';
import { lacksByNight } from '../lacks-by-night.ts';
import type { Trouble } from '../trouble.ts';
import { pointName } from './clauses.ts';

/** Doors are opened, and valves fail, from one hour to the next: where both may be, the free look comes first. */
function isSudden({ lead }: Trouble, { causes }: Judgement): boolean {
  const atOnce = lead.features.sudden === 1 || lead.shape === 'step';
  return (
    causes[0]!.cause === 'door-or-load' || (atOnce && causes.some(({ cause }) => cause === 'door-or-load'))
  );
}

/** From this likelihood a second cause is told with the measurement that tells it apart. */
const worthTelling = 0.1;

/** A probe that was moved, or fell, agrees with a thermometer beside it: what tells it from a warm section is its place. */
function mayBeMoved({ causes }: Judgement): boolean {
  return causes.some(({ cause, likelihood }) => cause === 'probe-moved' && likelihood >= worthTelling);
}

/** What a column would have told from afar, where there is none. */
function withoutReturnAir({ lead, circuit }: Trouble): string {
  if (lead.features.returnGapLog !== undefined || (circuit?.circuit.returnAir.length ?? 0) > 0) return '';
  return ' No return air is logged, which would tell: farther over the discharge air than before means that warm air comes in or that too little passes the coil, no farther means too little liquid.';
}

/** The one measurement that would settle a verdict the data leave open; null where they do not. */
export function whatWouldDecide(trouble: Trouble, judgement: Judgement): string | null {
  if (trouble.scope === 'one-probe' && trouble.lead.features.sinceStart !== 1) {
    const probe = pointName(trouble.lead.probe);
    if (mayBeMoved(judgement)) {
      const open = isDecided(judgement)
        ? ''
        : 'Undecided between a section that is truly off and a probe that lies or was moved. ';
      return `${open}Hold a reference thermometer where ${probe} belongs, not where it may hang now, while it cools, away from a defrost: if it reads like the probe, the section is warm; if like the neighbours, the probe was moved or lies.`;
    }
    const ask = `Hold a reference thermometer beside ${probe} while it cools, away from a defrost`;
    if (isDecided(judgement)) {
      return `${ask}: if it ${judgement.origin === 'probe' ? 'agrees with the probe, the section is warm' : 'reads like the neighbours, the probe lies'}.`;
    }
    return `Undecided between a section that is truly off and a probe that lies. ${ask}: the same reading means the case, the neighbours’ reading means the probe.`;
  }
  if (trouble.lead.shape === 'trading-hours' && !lacksByNight(trouble.lead.features)) {
    return 'A look at doors, load line and return grille in the busiest hour, and at the same case before the store opens.';
  }
  if (trouble.scope === 'whole-circuit' && isSudden(trouble, judgement)) {
    return `A look at its doors, covers and load line first: one that stands open or does not seal is seen at once. With all shut, superheat at the coil outlet while the valve feeds: high means too little liquid.${withoutReturnAir(trouble)}`;
  }
  if (trouble.scope === 'whole-circuit') {
    return `Superheat at the coil outlet while the valve feeds: high means too little liquid, usual means air or ice.${withoutReturnAir(trouble)}`;
  }
  if (trouble.lead.shape === 'short-of-liquid') {
    return 'The sight glass of the liquid line, and subcooling where the liquid leaves the receiver: bubbles with little subcooling mean little charge, bubbles behind a drier that is colder at its outlet a blocked drier; a clear glass sends you to the valves and strainers, case by case.';
  }
  if (trouble.lead.shape === 'set-point-changed' && trouble.lead.features.fromColumn !== 1) {
    return 'The set point that its control shows, against the one on the list of the site.';
  }
  if (trouble.scope === 'dead-probe') {
    return `Resistance of ${pointName(trouble.lead.probe)} at its plug against the table of its type.`;
  }
  return null;
}
