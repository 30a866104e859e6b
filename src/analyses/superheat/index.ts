import { median } from '../../maths/median.ts';
import type { Evidence, Verdict } from '../../model/evidence.ts';
import { stepMinutes, timeAt } from '../../model/grid.ts';
import type { CircuitSignals, GroupSignals } from '../../signals/types.ts';
import type { Kelvin } from '../../units/quantities.ts';
import {
  abstention,
  circuitSubject,
  held,
  knownFeatures,
  knownMeasures,
  measure,
} from '../evidence-parts.ts';
import { type SuperheatDays, superheatDays } from './daily.ts';
import { meta } from './meta.ts';
import { type SuperheatSeries, superheatSeries } from './series.ts';
import { settings } from './settings.ts';
import { settledFeeding } from './settled-feeding.ts';

export { meta };

/** Each evaporator whose superheat is logged or can be worked out. */
export function analyse(signals: CircuitSignals, group: GroupSignals | null): Verdict {
  const { circuit } = signals;
  const silent = (reason: string, needs: string | null): Verdict => ({
    evidence: [],
    abstentions: [abstention(meta.id, circuitSubject(circuit), reason, needs)],
  });
  const found = superheatSeries(signals, group);
  if ('reason' in found) return silent(found.reason, found.needs);
  if (circuit.valve === null)
    return silent(
      'Without the valve it is not known when the coil is fed, and superheat means nothing else.',
      'the valve',
    );
  const settled = settledFeeding(signals);
  const judged = found.series.map((series) => ({ series, days: superheatDays(series, settled, signals) }));
  if (judged.every(({ days }) => !days.median.some(Number.isFinite)))
    return silent(
      'The valve never feeds for more than 5 minutes with the air near its set point.',
      isCoarse(signals) ? finer : null,
    );
  const evidence = judged.flatMap(({ series, days }) => judge(series, days, signals));
  const single = singleOpenings(signals);
  if (evidence.length > 0 || single < settings.singleOpenings.value) return { evidence, abstentions: [] };
  const minutes = stepMinutes(signals.log.grid);
  return silent(
    `${Math.round(100 * single)} % of the openings of its valve are seen in one reading of ${minutes} min: superheat has not settled in them, and a coil that floods or starves only then is not seen.`,
    finer,
  );
}

const finer = 'superheat and valve every minute, or at every change';
const fewestOpenings = 20;

/** A reading is no shorter than superheat needs to settle. */
function isCoarse({ log }: CircuitSignals): boolean {
  return stepMinutes(log.grid) >= settings.feedingMinutes.value;
}

/** Share of the openings that one reading shows, where readings are that coarse; else 0. */
function singleOpenings(signals: CircuitSignals): number {
  if (!isCoarse(signals)) return 0;
  const { from, to, on, whole } = signals.valveSpells;
  const openings = to.map((end, k) => end - from[k]!).filter((_, k) => on[k] === 1 && whole[k] === 1);
  if (openings.length < fewestOpenings) return 0;
  return openings.filter((samples) => samples === 1).length / openings.length;
}

type Shape = 'starving' | 'flooding' | 'hunting';

function judge(series: SuperheatSeries, days: SuperheatDays, signals: CircuitSignals): Evidence[] {
  const isStarved = (day: number, usual: Kelvin) =>
    days.open[day]! > settings.starvingAlways.value ||
    (days.open[day]! > settings.starving.value && days.open[day]! > usual + settings.starvingRise.value);
  const isFlooded = (day: number) => days.median[day]! < settings.flooding.value;
  const isFine = stepMinutes(signals.log.grid) <= settings.huntingInterval.value;
  const isHunting = (day: number) => isFine && days.roughness[day]! > settings.hunting.value;
  const shapes: [Shape, Float64Array, (day: number, usual: Kelvin) => boolean][] = [
    ['hunting', days.median, isHunting],
    ['starving', days.open, isStarved],
    ['flooding', days.median, isFlooded],
  ];
  return shapes.flatMap(([shape, daily, judged]) => {
    const known = [...daily.keys()].filter((day) => Number.isFinite(daily[day]!));
    if (known.length < meta.minimumDays) return [];
    const usual = median(daily.subarray(0, known[Math.ceil(known.length / 3)]!));
    const isSo = (day: number) => judged(day, usual);
    const last = known.slice(-7);
    const agreeing = last.filter(isSo);
    if (agreeing.length < Math.min(settings.daysInAWeek.value, last.length) || !last.slice(-3).some(isSo))
      return [];
    const since = shape === 'starving' ? sinceRise(daily, usual, last, isSo) : isSo;
    const onset = onsetDay(known, since);
    return [evidenceOf(shape, series, { daily, days, usual, onset }, agreeing.length / last.length, signals)];
  });
}

/** A coil that always stood about the limit passes it by chance: it is dated by when it came nearer its level of late. */
function sinceRise(
  daily: Float64Array,
  usual: number,
  last: readonly number[],
  isSo: (day: number) => boolean,
): (day: number) => boolean {
  const now = median(last.map((day) => daily[day]!));
  const isOld = usual > settings.starvingAlways.value - settings.aboutLimit.value;
  if (!isOld || now - usual < settings.aboutLimit.value) return isSo;
  return (day) => isSo(day) && daily[day]! > (usual + now) / 2;
}

/** The first day after the last pair of days on which it was not so. */
function onsetDay(known: readonly number[], isSo: (day: number) => boolean): number {
  let onset = known.length - 1;
  for (let i = known.length - 1; i >= 0; i--) {
    if (isSo(known[i]!)) onset = i;
    else if (i > 0 && !isSo(known[i - 1]!) && onset < known.length - 1) break;
  }
  return known[onset]!;
}

function evidenceOf(
  shape: Shape,
  series: SuperheatSeries,
  told: {
    readonly daily: Float64Array;
    readonly days: SuperheatDays;
    readonly usual: Kelvin;
    readonly onset: number;
  },
  share: number,
  { circuit, log }: CircuitSignals,
): Evidence {
  const { days, usual, onset } = told;
  const level = median(told.daily.subarray(onset));
  const swing = median(days.swing.subarray(onset));
  const roughness = median(days.roughness.subarray(onset));
  const before = median(days.roughness.subarray(0, onset));
  return {
    analysis: meta.id,
    kind: 'superheat',
    circuit: circuit.id,
    suctionGroup: circuit.suctionGroup,
    probe: series.record.point,
    points: [series.record.point, circuit.valve!.point],
    onset: timeAt(log.grid, log.calendar.days[onset]!.from),
    end: null,
    certainty: held(
      0.5 + 0.4 * share + (shape === 'starving' ? held((level - usual) / 40, 0, 0.08) : 0),
      0,
      0.95,
    ),
    measures: knownMeasures([
      measure('superheat', level, 'K'),
      measure('usualSuperheat', usual, 'K'),
      measure('superheatSwing', swing, 'K'),
    ]),
    features: knownFeatures({
      superheat: level,
      superheatRise: level - usual,
      superheatSwing: swing,
      agreeingShare: share,
      ...(shape === 'hunting'
        ? { huntingOverLimit: roughness / settings.hunting.value, huntingOverUsual: roughness / before }
        : {}),
    }),
    shape,
  };
}
