import { alarmInputOf } from '../../../src/alarm-replay/alarm-input.ts';
import { type AlarmRule, usualAlarm } from '../../../src/alarm-replay/alarm-rule.ts';
import { replayOnCircuit } from '../../../src/alarm-replay/replay-circuit.ts';
import { diagnose } from '../../../src/diagnosis/diagnose.ts';
import { circuitFigures } from '../../../src/figures/circuit-figures.ts';
import { blockHours, blocksADay, clockBlocks } from '../../../src/figures/clock-blocks.ts';
import { timeAt } from '../../../src/model/grid.ts';
import { learnNorms } from '../../../src/norms/learn-norms.ts';
import type { Chart, ChartLine, Level, MarksPanel } from '../../../src/reporting/charts/chart.ts';
import { domainOf } from '../../../src/reporting/charts/scale.ts';
import { columnRange, reduceSeries } from '../../../src/reporting/reduce-series.ts';
import { settledBand } from '../../../src/reporting/settled-band.ts';
import { siteScale } from '../../../src/reporting/site-scale.ts';
import { gridOf, handMadeLog } from '../../support/hand-made-log.ts';
import { simpleCase } from '../../support/simple-case.ts';
import type { Picture } from './picture.ts';
import {
  chartOf,
  circuitOf,
  day,
  daysIn,
  hour,
  type Scene,
  type Span,
  samplesOf,
  sceneOf,
  seriesIn,
  settledAir,
  storeScene,
  tint,
  valvePanel,
  wholeSpan,
} from './scene.ts';

function level({ from, to }: Span, value: number, kind: Level['kind'], label: string): Level {
  return { kind, label, line: { times: [from, to], values: [value, value] } };
}

function airChart(
  scene: Scene,
  title: string,
  span: Span,
  lines: readonly ChartLine[],
  levels: readonly Level[],
  rest: { readonly marks?: readonly MarksPanel[]; readonly highlight?: Chart['highlight'] } = {},
): Chart {
  const shown = lines.flatMap(({ line, band }) => (band === null ? [line.values] : [band.low, band.high]));
  const domain = domainOf([...shown, ...levels.map(({ line }) => line.values)], 4)!;
  const unit = siteScale(scene.log).temperatureSign;
  return chartOf(
    scene,
    title,
    span,
    [{ kind: 'lines', title: 'Air', unit, height: 180, domain, lines, levels }, ...(rest.marks ?? [])],
    { highlight: rest.highlight ?? null },
  );
}

const alarmReplay: Picture = {
  id: 'alarm-replay',
  alt: 'An end of a line-up that stands above the alarm limit for days. The average, on which the alarm listens, never comes near it; below, the same alarm on the warmest probe, which would have come.',
  tinted: 'ice grows at the end of probe A',
  draw: () => {
    const scene = storeScene('iced-end', {
      faults: [{ fault: 'iced-end', on: 'M01', place: 0, onsetDay: 8, size: 10 }],
    });
    const { log } = scene;
    const own = circuitOf(scene);
    const span = wholeSpan(scene);
    const { temperature } = siteScale(log);
    const { high, minutes } = own.circuit.limits!;
    const rule: AlarmRule = { ...usualAlarm, limit: high, delayMinutes: minutes, input: 'average' };
    const columns = 96;
    const range = { from: 0, to: log.grid.count };
    const times = Array.from({ length: columns }, (_, column) => {
      const { from, to } = columnRange(range, columns, column);
      return timeAt(log.grid, (from + to - 1) / 2);
    });
    const line = (label: string, slot: ChartLine['slot'], values: Float64Array): ChartLine => {
      const { low, median, high: top } = settledBand(values, own.phase, range, columns, temperature);
      return {
        label,
        slot,
        strong: slot === 0,
        line: { times, values: median },
        band: { times, low, high: top },
      };
    };
    const marks = (title: string, input: AlarmRule['input']): MarksPanel => ({
      kind: 'marks',
      title,
      height: 16,
      spans: replayOnCircuit(own, { ...rule, input }).trips.map(({ from, to }) => ({
        from: timeAt(log.grid, from),
        to: timeAt(log.grid, to ?? log.grid.count),
      })),
    });
    return [
      airChart(
        scene,
        'What the alarm hears, and what it does not: settled air',
        span,
        [
          line('air A', 0, own.circuit.probes[0]!.record.values),
          line('average', 'plain', alarmInputOf(own, 'average')),
        ],
        [level(span, temperature(high), 'limit', 'alarm limit')],
        {
          marks: [
            marks('Alarm in force, on the average', 'average'),
            marks('The same on the warmest probe', 'warmest'),
          ],
          highlight: tint(scene, scene.onset, span.to, 'act'),
        },
      ),
    ];
  },
};

/** Formula of the lag view, started at the first reading. */
function lagged(values: Float64Array, stepMinutes: number, timeConstant: number): Float64Array {
  const weight = -Math.expm1(-stepMinutes / timeConstant);
  let body = values[0]!;
  return values.map((air) => {
    body += weight * (air - body);
    return body;
  });
}

const exposure: Picture = {
  id: 'exposure',
  alt: 'Air of one probe over twelve hours with peaks above 41 °F in two defrosts, and what bodies with time constants of 20, 60 and 120 minutes would have shown: the slower the body, the flatter the peak.',
  tinted: '',
  draw: () => {
    const scene = storeScene('iced-end', {}, 1);
    const { log } = scene;
    const { temperature } = siteScale(log);
    const { values } = circuitOf(scene).circuit.probes[1]!.record;
    const span = daysIn(scene, 5, 5.5);
    const line = (label: string, slot: ChartLine['slot'], of: Float64Array): ChartLine => ({
      label,
      slot,
      strong: false,
      band: null,
      line: reduceSeries(of, log.grid, samplesOf(scene, span), 360, temperature),
    });
    const lag = (minutes: number, slot: number) => line(`${minutes} min`, slot, lagged(values, 1, minutes));
    return [
      airChart(
        scene,
        'Air, and slower bodies in it',
        span,
        [line('air', 'plain', values), lag(20, 0), lag(60, 1), lag(120, 2)],
        [level(span, 41, 'limit', '41 °F')],
      ),
    ];
  },
};

const norms: Picture = {
  id: 'norms',
  alt: 'The usual range of one probe for each four hours of a day, learnt from its quiet days, and its readings on a later day, which stand above the range.',
  tinted: '',
  draw: () => {
    const scene = storeScene('iced-end');
    const { log, signals } = scene;
    const own = circuitOf(scene);
    const { point, record } = own.circuit.probes[0]!;
    const { findings } = diagnose(signals);
    const norm = learnNorms(signals, findings).find((one) => one.id === 'air' && one.point === point)!;
    const { temperature } = siteScale(log);
    const span = daysIn(scene, 20, 21);
    const edges = [...Array(blocksADay).keys()].flatMap((block) =>
      [block, block + 1].map((edge) => ({ block, edge })),
    );
    const times = edges.map(({ edge }) => span.from + edge * blockHours * hour);
    const cell = (block: number) => norm.cells.find((one) => one.dayType === 'any' && one.block === block)!;
    const each = (part: 'p10' | 'median' | 'p90') => edges.map(({ block }) => temperature(cell(block)[part]));
    const settled = settledBand(record.values, own.phase, samplesOf(scene, span), 144, temperature);
    const readingTimes = settled.median.map((_, column) => span.from + (column + 0.5) * (day / 144));
    return [
      airChart(
        scene,
        'Usual here: nine tenths of the readings lie above the band’s foot, nine tenths below its top',
        span,
        [
          {
            label: 'usual',
            slot: 0,
            strong: false,
            line: { times, values: each('median') },
            band: { times, low: each('p10'), high: each('p90') },
          },
          {
            label: 'this day',
            slot: 'plain',
            strong: false,
            line: { times: readingTimes, values: settled.median },
            band: null,
          },
        ],
        [],
      ),
    ];
  },
};

const repairCheck: Picture = {
  id: 'repair-check',
  alt: 'Settled air of a line-up: one end creeps up while the others are driven cold, until a visit, after which all three stand at the set point again.',
  tinted: 'after the visit',
  draw: () => {
    const days = 22;
    const visit = 14 * 1440 + 630;
    const share = (minute: number) =>
      minute < visit ? Math.min(1, Math.max(0, (minute / 1440 - 6) / 6)) : 0;
    const grid = gridOf(days, 5);
    const circuit = simpleCase(grid, {
      cooling: (minute, probe) => (probe === 0 ? 0.35 * (1 - 0.3 * share(minute)) : 0.35),
    });
    const at = grid.startMs + visit * 60_000;
    const scene = sceneOf(handMadeLog({ days, stepMinutes: 5, circuits: [circuit] }), at);
    const span = wholeSpan(scene);
    return [
      chartOf(
        scene,
        'Before and after: settled air',
        span,
        [settledAir(scene, 'M01', 0), ...valvePanel(seriesIn(scene, span, 'M01', 96))],
        {
          highlight: { severity: 'note', from: at, to: span.to, label: 'the visit' },
        },
      ),
    ];
  },
};

const comparison: Picture = {
  id: 'comparison',
  alt: 'One probe by hour of the day in an earlier and a later week: the later week stands several degrees higher in every block of four hours.',
  tinted: '',
  draw: () => {
    const scene = storeScene('iced-end');
    const { log } = scene;
    const own = circuitOf(scene);
    const { point } = own.circuit.probes[0]!;
    const figure = circuitFigures(own, clockBlocks(log)).find(
      (one) => one.id === 'air' && one.point === point,
    )!;
    const { temperature } = siteScale(log);
    const span = daysIn(scene, 0, 1);
    const week = (label: string, slot: number, first: number): ChartLine => {
      const rows = [...Array(blocksADay).keys()].map((block) =>
        [...Array(7).keys()]
          .map((k) => figure.values[(first + k) * blocksADay + block]!)
          .filter((value) => !Number.isNaN(value))
          .map(temperature),
      );
      const times = rows.map((_, block) => span.from + (block + 0.5) * blockHours * hour);
      return {
        label,
        slot,
        strong: false,
        line: { times, values: rows.map((row) => row.reduce((sum, value) => sum + value, 0) / row.length) },
        band: { times, low: rows.map((row) => Math.min(...row)), high: rows.map((row) => Math.max(...row)) },
      };
    };
    return [
      airChart(
        scene,
        'The same hours of the day: mean of seven days, and from the lowest to the highest of them',
        span,
        [week('earlier week', 0, 0), week('later week', 1, 16)],
        [level(span, temperature(own.setPoint[0]!), 'set-point', 'set point')],
      ),
    ];
  },
};

export const workPictures: readonly Picture[] = [alarmReplay, exposure, norms, repairCheck, comparison];
