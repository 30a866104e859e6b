import { h, svg, visible } from '../dom.ts';
import type { CircuitDays, PressureDays } from '../json.ts';

const width = 240;
const height = 64;
const pad = 4;

type Values = readonly (number | null)[];

function known(values: Values): number[] {
  return values.filter((value) => value !== null);
}

function last(values: Values): number | null {
  return known(values).at(-1) ?? null;
}

function pathOf(values: Values, low: number, high: number): string {
  const step = (width - 2 * pad) / Math.max(1, values.length - 1);
  let pen = 'M';
  let path = '';
  values.forEach((value, day) => {
    if (value === null) {
      pen = 'M';
      return;
    }
    const y = height - pad - ((value - low) / (high - low)) * (height - 2 * pad);
    path += `${pen}${(pad + day * step).toFixed(1)} ${y.toFixed(1)}`;
    pen = 'L';
  });
  return path;
}

/** Lines of a figure a day each, and the level that they are steered to. */
interface Daily {
  /** What a value of theirs is, for who cannot see the picture. */
  readonly title: string;
  readonly caption: string;
  readonly unit: string;
  readonly lines: readonly { readonly point: string; readonly median: Values }[];
  readonly setPoint: Values;
  /** Room that is left above and below at least, in the unit: what moves less than that is drawn as level. */
  readonly leastRoom: number;
}

/** Daily air of a circuit's probes over the span, the marked one strong; null where nothing is known. */
export function sparkline(
  circuit: CircuitDays,
  unit: string,
  marked: ReadonlySet<string>,
  onsetDay: number,
): HTMLElement | null {
  const daily = {
    title: 'Daily air while cooling or off',
    caption: 'air, a median a day',
    unit,
    leastRoom: 0.2,
  };
  return dailyPicture({ ...daily, lines: circuit.probes, setPoint: circuit.setPoint }, marked, onsetDay);
}

/** Daily suction of a rack and its target, or what it discharges at; null where nothing is known. */
export function pressureSparkline(
  pressure: PressureDays,
  unit: string,
  onsetDay: number,
): HTMLElement | null {
  const name = pressure.of === 'suction' ? 'suction' : 'discharge pressure';
  const leastRoom = 0.05 * Math.max(0, ...known(pressure.median));
  const daily = { title: `Daily ${name}`, caption: `${name}, a median a day`, unit, leastRoom };
  return dailyPicture({ ...daily, lines: [pressure], setPoint: pressure.target }, new Set(), onsetDay);
}

function dailyPicture(
  { title, caption, unit, lines, setPoint, leastRoom }: Daily,
  marked: ReadonlySet<string>,
  onsetDay: number,
): HTMLElement | null {
  const all = [...lines.flatMap(({ median }) => known(median)), ...known(setPoint)];
  if (all.length === 0) return null;
  const lowest = Math.min(...all);
  const highest = Math.max(...all);
  const room = Math.max(leastRoom, (highest - lowest) * 0.05);
  const [low, high] = [lowest - room, highest + room];
  const ends = lines
    .map(({ point, median }) => ({ point, value: last(median) }))
    .filter(({ value }) => value !== null)
    .map(({ point, value }) => `${visible(point)} ${value!.toFixed(1)}`);
  const text = `${title}, ending at ${ends.join(', ')} ${unit}`;
  const onsetX = pad + (onsetDay * (width - 2 * pad)) / Math.max(1, setPoint.length - 1);
  return h(
    'figure',
    { class: 'spark' },
    svg(
      'svg',
      { viewBox: `0 0 ${width} ${height}`, role: 'img', 'aria-label': text, preserveAspectRatio: 'none' },
      onsetDay >= 0 && svg('rect', { class: 'since', x: onsetX, y: 0, width: width - onsetX, height }),
      svg('path', { class: 'set', d: pathOf(setPoint, low, high) }),
      lines.map(({ point, median }, index) =>
        svg('path', {
          class: `s${index % 6}${marked.has(point) ? ' strong' : ''}`,
          d: pathOf(median, low, high),
        }),
      ),
    ),
    h(
      'figcaption',
      {},
      h('span', {}, `${lowest.toFixed(1)} to ${highest.toFixed(1)} ${unit}`),
      h('span', {}, caption),
    ),
  );
}
