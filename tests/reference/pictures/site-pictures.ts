import type { Panel } from '../../../src/reporting/charts/chart.ts';
import { domainOf } from '../../../src/reporting/charts/scale.ts';
import { startsPanel } from '../../../src/reporting/charts/starts-panel.ts';
import { suctionPanel } from '../../../src/reporting/charts/suction-panel.ts';
import { columnMeans } from '../../../src/reporting/column-means.ts';
import { reduceSeries } from '../../../src/reporting/reduce-series.ts';
import { siteScale } from '../../../src/reporting/site-scale.ts';
import type { GroupSignals } from '../../../src/signals/types.ts';
import { gridOf, handMadeLog, recordOf } from '../../support/hand-made-log.ts';
import { simpleCase } from '../../support/simple-case.ts';
import type { Picture } from './picture.ts';
import {
  chartOf,
  dailyLine,
  day,
  hour,
  type Scene,
  type Span,
  samplesOf,
  sceneOf,
  seriesIn,
  storeScene,
  tint,
  valvePanel,
  wholeSpan,
} from './scene.ts';

function groupOf({ signals }: Scene, id = 'S1'): GroupSignals {
  return signals.groups.find(({ group }) => group.id === id)!;
}

function running(scene: Scene, { group }: GroupSignals, span: Span): readonly Panel[] {
  return group.compressors.map(({ point, values }) => {
    const { times, mean } = columnMeans(
      values,
      scene.log.grid,
      samplesOf(scene, span),
      240,
      (share) => share,
    );
    return { kind: 'share', title: `${point}, running`, height: 24, line: { times, values: mean } };
  });
}

const shortCycling: Picture = {
  id: 'short-cycling',
  alt: 'Starts an hour of the compressors of one group by day: those of one machine jump from under three to more than sixteen. Below, suction pressure and machines for four hours of the day before and of the day after.',
  tinted: 'compressor 3 cycles too fast',
  draw: () => {
    const scene = storeScene(
      'compressor-short-cycle',
      { days: 16, faults: [{ fault: 'compressor-short-cycle', on: 'S1', onsetDay: 9.5 }] },
      1,
    );
    const own = groupOf(scene);
    const span = wholeSpan(scene);
    const starters = own.group.compressors.map(({ point }, k) => ({
      label: point,
      spells: own.compressorSpells[k]!,
      strong: false,
    }));
    const closeUp = (title: string, from: number) => {
      const four = { from, to: from + 4 * hour };
      return chartOf(scene, title, four, [
        ...suctionPanel(scene.log, own.group, samplesOf(scene, four), 300, 70),
        ...running(scene, own, four),
      ]);
    };
    return [
      chartOf(scene, 'Starts of each machine', span, startsPanel(scene.log, starters), {
        highlight: tint(scene, scene.onset, span.to),
      }),
      closeUp('Four hours of the day before', scene.onset - day),
      closeUp('The same hours of the day after', scene.onset + day),
    ];
  },
};

const rackPressure: Picture = {
  id: 'rack-pressure',
  alt: 'Suction pressure that leaves its target for higher values, and below it the air of every circuit of the group against its own usual level: they rise within days of it, those with the least reserve most.',
  tinted: 'the suction pressure rises',
  draw: () => {
    const scene = storeScene('suction-rise');
    const { log } = scene;
    const own = groupOf(scene);
    const span = wholeSpan(scene);
    const { difference, temperatureSign } = siteScale(log);
    const lines = [...own.departures].map(([circuit, days], slot) => ({
      label: circuit,
      slot,
      strong: false,
      band: null,
      line: dailyLine(log, days, difference),
    }));
    const domain = domainOf([...lines.map(({ line }) => line.values), [0]], 2)!;
    const usual = { times: [span.from, span.to], values: [0, 0] };
    return [
      chartOf(
        scene,
        'One fault of the rack, felt by all its cases',
        span,
        [
          ...suctionPanel(log, own.group, samplesOf(scene, span), 96, 120),
          {
            kind: 'lines',
            title: 'Air of each circuit above its own usual level, by day',
            unit: temperatureSign,
            height: 140,
            domain,
            lines,
            levels: [{ kind: 'set-point', label: 'usual', line: usual }],
          },
        ],
        { highlight: tint(scene, scene.onset, span.to, 'act') },
      ),
    ];
  },
};

const superheat: Picture = {
  id: 'superheat',
  alt: 'Superheat of a coil over six hours. It stands near 22 °F while the valve is shut, which means nothing, and settles at 7 °F while it feeds; in the second half it swings by many degrees within minutes.',
  tinted: 'the valve hunts',
  draw: () => {
    const grid = gridOf(2);
    const circuit = simpleCase(grid, { differential: 2.2, cooling: () => 0.3, isDefrosting: () => false });
    const onset = grid.startMs + 30 * hour;
    const hunting = 30 * 60;
    let value = 12;
    const values = circuit.valve!.values.map((open, minute) => {
      const settled = minute < hunting ? 3.9 : 5 + 8 * Math.sin((2 * Math.PI * minute) / 5);
      value += ((open > 0 ? settled : 12) - value) / 1.5;
      return value;
    });
    const superheatRecord = recordOf('M01 superheat', 'temperature-difference', values);
    const scene = sceneOf(
      handMadeLog({ days: 2, circuits: [{ ...circuit, superheat: superheatRecord }] }),
      onset,
    );
    const span = { from: onset - 3 * hour, to: onset + 3 * hour };
    const { difference, temperatureSign } = siteScale(scene.log);
    const line = reduceSeries(values, grid, samplesOf(scene, span), 360, difference);
    return [
      chartOf(
        scene,
        'Superheat counts only while the valve has fed for some minutes',
        span,
        [
          {
            kind: 'lines',
            title: 'Superheat',
            unit: temperatureSign,
            height: 150,
            domain: domainOf([line.values, [0]], 6)!,
            lines: [{ label: 'superheat', slot: 'plain', strong: false, line, band: null }],
            levels: [],
          },
          ...valvePanel(seriesIn(scene, span, 'M01', 360)),
        ],
        { highlight: { ...tint(scene, onset, span.to), label: 'hunting' } },
      ),
    ];
  },
};

export const sitePictures: readonly Picture[] = [shortCycling, rackPressure, superheat];
