import type { CauseId } from '../../model/finding.ts';
import { formatDays, formatDifference, formatShare } from '../../units/display.ts';
import type { DisplayUnits } from '../../units/display-units.ts';
import type { WeighedCause } from '../judgement.ts';

type Features = Readonly<{ [name: string]: number }>;

/** One clause for each feature that speaks for or against a cause; the first few make the sentence. */
type Reason = (features: Features, units: DisplayUnits) => string | null;

const when = (known: unknown, text: () => string): string | null => (known ? text() : null);

/** Share of its offset from which a probe keeps it in defrost, as its words have it. */
const keptThroughDefrost = 0.75;

const offsetInDefrost: Reason = (f) =>
  when(f.defrostOffsetRatio !== undefined, () => {
    const ratio = f.defrostOffsetRatio!;
    if (ratio <= 0.1) return 'late in defrost it is colder than its neighbours, as melting ice is';
    if (ratio >= keptThroughDefrost)
      return `it keeps ${formatShare(Math.min(1, ratio))} of its offset all through defrost`;
    return `${formatShare(1 - ratio)} of the offset goes away in defrost`;
  });
const dayAndNight: Reason = (f) =>
  when(f.dayNightRatio !== undefined, () =>
    Math.abs(f.dayNightRatio!) < 0.2
      ? 'it is the same by day and by night'
      : f.dayNightRatio! > 0
        ? `it is ${f.dayNightRatio! < 0.6 ? 'only somewhat ' : ''}larger in the trading day than by night`
        : 'it is larger by night than by day',
  );
/** Where the offset late in defrost says it already, it is not said again. */
const steadiness: Reason = (f) =>
  when(f.inconstancy !== undefined && (f.defrostOffsetRatio ?? 1) >= keptThroughDefrost, () =>
    f.inconstancy! < 0.1
      ? 'its offset is the same before, in and after defrosts'
      : `its offset differs by ${formatShare(f.inconstancy!)} before, in and after defrosts`,
  );
const restless: Reason = (f) =>
  when(f.wanderRatio !== undefined && Math.abs(f.wanderRatio - 1) > 0.15, () =>
    f.wanderRatio! > 1
      ? 'its offset is more restless from hour to hour than it was, as air is and a false reading is not'
      : 'its offset is steadier from hour to hour than it was',
  );
const warmsItsNeighbours: Reason = (f) =>
  when(f.spill !== undefined && Math.abs(f.spill) > 0.07, () =>
    f.spill! > 0
      ? 'the place beside it is warmer too, against those farther off'
      : 'the place beside it is no warmer than those farther off',
  );
const swing: Reason = (f) =>
  when(f.swingRatio !== undefined, () =>
    f.swingRatio! < 0.85
      ? `its swing shrank to ${formatShare(f.swingRatio!)} of what it was against its neighbours`
      : f.swingRatio! > 1.2
        ? 'it swings more than it did'
        : 'it still cycles as its neighbours do',
  );
const recovery: Reason = (f) =>
  when(f.recoveryRatio !== undefined && f.recoveryRatio > 1.25, () => 'it comes back later after defrost');
const step: Reason = (f) =>
  when(f.rampDays !== undefined, () =>
    (f.creeping ?? 1) < 0.5
      ? f.sudden === 1
        ? 'it began within an hour'
        : 'it came within hours'
      : `it grew over ${formatDays(Math.max(1, Math.round(f.rampDays!)))}`,
  );
const stopped: Reason = (f) =>
  when(f.offOffsetRatio !== undefined, () =>
    f.offOffsetRatio! > 0.7
      ? 'the offset stayed while the circuit stood still'
      : 'the offset closed while the circuit stood still',
  );
const suction: Reason = (f, units) =>
  when(
    f.aboveSuction !== undefined && f.aboveSuction < 0,
    () =>
      `it reads ${formatDifference(-f.aboveSuction!, units)} below the evaporating temperature, which air cannot`,
  );
const duty: Reason = (f) =>
  when(
    f.dutyRise !== undefined && f.dutyRise > 0.05,
    () => `its valve feeds ${formatShare(f.dutyRise!)} more of the time than before, the other circuits not`,
  );
const steadyDuty: Reason = (f) =>
  when(f.dutyRise !== undefined && f.dutyRise <= 0.05, () => 'its valve feeds no more than before');

const riseInDefrost: Reason = (f) =>
  when(f.riseRateRatio !== undefined, () =>
    f.riseRateRatio! < 0.65
      ? 'its air rises slowly in defrost now, as over a cold coil that is laden or gets no air'
      : f.riseRateRatio! > 1.35
        ? 'its air rises faster in defrost than it did, as where shop air comes in'
        : 'its air rises in defrost about as fast as it did, as over a coil that carries little frost',
  );
const lengthOfDefrost: Reason = (f) =>
  when(f.defrostLengthRatio !== undefined && Math.abs(f.defrostLengthRatio - 1) > 0.15, () =>
    f.defrostLengthRatio! > 1
      ? `its defrosts take ${formatShare(f.defrostLengthRatio!)} of their time before`
      : `its defrosts end after ${formatShare(f.defrostLengthRatio!)} of their time before`,
  );

const returnAir: Reason = (f) =>
  when(f.returnGapLog !== undefined, () =>
    f.returnGapLog! > 0.18
      ? `its return air stands ${Math.exp(f.returnGapLog!).toFixed(1)} times as far above its discharge air as before`
      : 'its return air stands no farther above its discharge air than before: no more heat comes in, and no less air passes',
  );

/** The features that are weighed, in the order in which they are said, each in words. */
const reasons: readonly (readonly [feature: string, reason: Reason])[] = [
  ['defrostOffsetRatio', offsetInDefrost],
  ['inconstancy', steadiness],
  ['returnGapLog', returnAir],
  ['creeping', step],
  ['dutyRise', duty],
  ['dutyRise', steadyDuty],
  ['riseRateRatio', riseInDefrost],
  ['defrostLengthRatio', lengthOfDefrost],
  ['swingRatio', swing],
  ['wanderRatio', restless],
  ['spill', warmsItsNeighbours],
  ['recoveryRatio', recovery],
  ['dayNightRatio', dayAndNight],
  ['offOffsetRatio', stopped],
];

const fallback: Readonly<Partial<{ [cause in CauseId]: string }>> = {
  'airflow-or-ice': 'ice and blocked air are the usual reasons for a section that warms',
  drain: 'ice at one end is often a drain that does not run',
  'evaporator-fan': 'a fan that stops warms one section within hours',
  underfeeding: 'a coil that gets too little liquid warms all its probes together',
  overfeeding: 'liquid comes back where superheat is lost',
  'door-or-load': 'doors and loading warm a case in trading hours',
  'probe-offset': 'wiring work and failed splices shift a reading at once',
  'probe-drift': 'moisture in a splice shifts a reading little by little',
  'probe-noise': 'air has inertia: it cannot jump from sample to sample',
  'probe-stuck': 'the reading did not move while its neighbours went through defrosts',
  'probe-open-or-short': 'an open or shorted lead reads the end of the scale, or nothing',
  'probe-moved': 'a probe that has fallen reads another air',
  'probe-swapped': 'two probes exchanged their levels at the same time',
  'defrost-schedule': 'a defrost that is due and does not come is first a matter of schedule or override',
  'defrost-heat': 'a heater that fails leaves frost, and the coil takes longer to pull down',
  'defrost-termination':
    'a defrost that never ends by temperature is first a matter of its probe or thermostat',
  'tight-differential': 'cut-in and cut-out too close together make short cycles',
  'circuits-in-step':
    'circuits that call together load and unload the rack at once, and its machines start each time',
  'compressor-control':
    'pressure controls, unloaders or their order start and stop the machines at the wrong pressure',
  'low-charge': 'little liquid starves the far coils first',
  'capacity-shortfall': 'the group warms together when the compressors that run cannot hold the pressure',
  condensing: 'a dirty condenser or a still fan raises the pressure for all',
  'set-point': 'all probes moved together, at once and by the same amount',
  'left-off': 'something was switched off or put in hand, and stayed so',
  'service-visit': 'several things changed together and came back within hours',
  weather: 'all circuits felt it',
  'normal-variation': 'it has stood there since the first day of this export',
  logging: 'it is in the record and not in the air',
};

const mostReasons = 3;
const mostDoubts = 2;
/** Log likelihoods below which a feature speaks neither way. */
const leastFor = 0.05;
const leastAgainst = 0.4;
const liars: readonly CauseId[] = ['probe-offset', 'probe-drift'];

/** Why this cause, in half a line: what the data show for it, else what the trade knows; then what speaks against it. */
export function becauseOf(
  { cause, leanings = {} }: WeighedCause,
  features: Features,
  units: DisplayUnits,
): string {
  const said = (isSaid: (leaning: number) => boolean): string[] =>
    reasons
      .filter(([feature]) => leanings[feature] !== undefined && isSaid(leanings[feature]))
      .map(([, reason]) => reason(features, units))
      .filter((text) => text !== null);
  const impossible = liars.includes(cause) ? suction(features, units) : null;
  const found = [...(impossible === null ? [] : [impossible]), ...said((leaning) => leaning > leastFor)];
  const doubts = said((leaning) => leaning < -leastAgainst).slice(0, mostDoubts);
  const why =
    found.length > 0
      ? found.slice(0, mostReasons).join('; ')
      : (fallback[cause] ?? 'possible after what was seen');
  return doubts.length === 0 ? why : `${why}; but ${doubts.join(', and ')}`;
}
