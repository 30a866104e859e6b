import { recoveryPanel } from '../../../src/reporting/charts/recovery-panel.ts';
import type { Picture } from './picture.ts';
import {
  chartOf,
  circuitOf,
  day,
  daysIn,
  hour,
  readings,
  type Scene,
  type Span,
  seriesIn,
  settledAir,
  shadesOf,
  storeScene,
  tint,
  valvePanel,
  wholeSpan,
} from './scene.ts';

/** Around the last defrost that began before `before`: half an hour ahead, and until `hours` after its start. */
function aroundDefrost(scene: Scene, before: number, hours: number): Span {
  const { log } = scene;
  const starts = circuitOf(scene).defrosts.map(({ from }) => log.grid.startMs + from * log.grid.stepMs);
  const start = starts.findLast((time) => time < before)!;
  return { from: start - hour / 2, to: start + hours * hour };
}

function closeUp(scene: Scene, title: string, span: Span, probe: number | null, height = 180) {
  const series = seriesIn(scene, span);
  return chartOf(scene, title, span, [readings(series, probe, height), ...valvePanel(series)], {
    shades: shadesOf(series),
  });
}

const upwardDrift: Picture = {
  id: 'upward-drift',
  alt: 'Settled air of three probes over 24 days: one end creeps up from day 9 on, its neighbours are driven below the set point, and the valve feeds ever longer.',
  tinted: 'ice grows at the end of probe A',
  draw: () => {
    const scene = storeScene('iced-end');
    const span = wholeSpan(scene);
    return [
      chartOf(
        scene,
        'An iced end that the average hides: settled air, defrosts and recoveries left out',
        span,
        [settledAir(scene, 'M01', 0), ...valvePanel(seriesIn(scene, span, 'M01', 96))],
        { highlight: tint(scene, scene.onset, span.to, 'act') },
      ),
    ];
  },
};

const probeDisagreement: Picture = {
  id: 'probe-disagreement',
  alt: 'Above, a probe that steps up between two defrosts and keeps its offset through the next defrost; below, a probe that creeps away for days while its neighbours are driven cold alike.',
  tinted: 'the probe lies',
  draw: () => {
    const step = storeScene('probe-step', { days: 14 }, 1);
    const around = { from: step.onset - 9 * hour, to: step.onset + 11 * hour };
    const series = seriesIn(step, around);
    const creep = storeScene('probe-creep');
    const span = wholeSpan(creep);
    return [
      chartOf(
        step,
        'A step: the offset is there at once, and in every defrost',
        around,
        [readings(series, 1)],
        {
          shades: shadesOf(series),
          highlight: { ...tint(step, step.onset, around.to), label: 'the step' },
        },
      ),
      chartOf(creep, 'A creep: settled air over the whole span', span, [settledAir(creep, 'M01', 2)], {
        highlight: tint(creep, creep.onset, span.to),
      }),
    ];
  },
};

const defrostRecovery: Picture = {
  id: 'defrost-recovery',
  alt: 'Minutes until the air was back after each defrost, rising for days; and two close-ups on one scale of hours, an early defrost that is over soon and a late one that is not.',
  tinted: 'recovery lengthens',
  draw: () => {
    const scene = storeScene('recovery-lengthening', {
      faults: [{ fault: 'recovery-lengthening', on: 'M01', onsetDay: 8 }],
    });
    const span = wholeSpan(scene);
    const early = aroundDefrost(scene, span.from + 6 * day, 5);
    const late = aroundDefrost(scene, span.to - 5 * hour, 5);
    return [
      chartOf(scene, 'Recovery over the whole span', span, recoveryPanel(scene.log, circuitOf(scene), null), {
        highlight: tint(scene, scene.onset, span.to),
      }),
      closeUp(scene, 'A defrost before it began', early, 0, 120),
      closeUp(scene, 'A defrost of the last day', late, 0, 120),
    ];
  },
};

const diagnosis: Picture = {
  id: 'diagnosis',
  alt: 'Two circuits whose probe stands the same distance above its neighbours. Above it is ice: late in the defrost that end is the colder one, and its cycles are flat. Below it is a lying probe: the distance stays the same all through.',
  tinted: '',
  draw: () => {
    const iced = storeScene('iced-end', {}, 1);
    const lying = storeScene(
      'probe-step',
      { faults: [{ fault: 'probe-step', on: 'M01', place: 0, onsetDay: 9.5, size: 6 }] },
      1,
    );
    return [
      closeUp(
        iced,
        'Truth: ice at the end of probe A',
        aroundDefrost(iced, wholeSpan(iced).to - 3 * hour, 3),
        0,
      ),
      closeUp(lying, 'Lie: probe A reads high', aroundDefrost(lying, wholeSpan(lying).to - 3 * hour, 3), 0),
    ];
  },
};

const leftOff: Picture = {
  id: 'left-off',
  alt: 'A circuit that was shut for work and not put back: its valve stays shut and the air of all its probes climbs to the temperature of the shop.',
  tinted: '',
  draw: () => {
    const scene = storeScene('left-off', {
      days: 14,
      faults: [{ fault: 'left-off', on: 'M01', onsetDay: 9.4 }],
    });
    const span = { from: scene.onset - day, to: scene.onset + 1.5 * day };
    const series = seriesIn(scene, span);
    return [
      chartOf(scene, 'Off, and left off', span, [readings(series), ...valvePanel(series)], {
        shades: shadesOf(series),
      }),
    ];
  },
};

const recordQuality: Picture = {
  id: 'record-quality',
  alt: 'Readings of a circuit with a gap of more than a day, in which nothing is drawn: neither air nor valve.',
  tinted: '',
  draw: () => {
    const scene = storeScene('healthy', { days: 14, lookAlikes: ['long-gap'], lookAlikeDay: 6 });
    const span = daysIn(scene, 4, 11);
    const series = seriesIn(scene, span, 'M01', 260);
    return [
      chartOf(scene, 'What the record does not hold is not filled in', span, [
        readings(series),
        ...valvePanel(series),
      ]),
    ];
  },
};

const signals: Picture = {
  id: 'signals',
  alt: 'A day of a healthy circuit: air that cycles about its set point, four shaded defrosts in which the valve is shut and the air climbs, and the recovery after each.',
  tinted: '',
  draw: () => {
    const scene = storeScene('healthy', { days: 10 }, 1);
    return [
      closeUp(
        scene,
        'One day: defrosts shaded, each followed by an hour of recovery; the rest is settled air',
        daysIn(scene, 5, 6),
        null,
      ),
    ];
  },
};

export const casePictures: readonly Picture[] = [
  upwardDrift,
  probeDisagreement,
  defrostRecovery,
  diagnosis,
  leftOff,
  recordQuality,
  signals,
];
