import type { SimulatedPoint, SimulatedStore } from '../../sample-logs/maker/simulated-store.ts';

const width = 1500;
const height = 420;
const colours = ['#c0392b', '#2471a3', '#1e8449', '#b7950b', '#7d3c98', '#5d6d7e'];

/** Air of one circuit (or pressures of one group) over the whole log, with the onset marked. °F or psig. */
export function circuitPicture(
  store: SimulatedStore,
  circuitId: string | null,
  groupId: string | null,
  onset: number,
  title: string,
): string {
  const circuit = store.circuits.find(({ id }) => id === circuitId);
  const group = store.groups.find(({ id }) => id === groupId);
  const points: readonly SimulatedPoint[] =
    circuit?.air ?? group?.points.filter(({ quantity }) => quantity === 'pressure').slice(0, 2) ?? [];
  const shown = (value: number): number =>
    circuit === undefined ? (value - store.atmosphere) / 6.895 : value * 1.8 + 32;
  const all = points
    .flatMap(({ values }) =>
      Array.from(
        values.filter((_, i) => i % 7 === 0),
        shown,
      ),
    )
    .filter((v) => v > -45 && v < 120);
  const low = Math.min(...all) - 1;
  const high = Math.max(...all) + 1;
  const y = (value: number): number => height - 20 - ((value - low) / (high - low)) * (height - 60);
  const x = (i: number): number => 50 + (i / store.count) * (width - 60);
  const lines = points.map(
    (point, p) =>
      `<path d="${envelope(point, shown, x, y)}" stroke="${colours[p % colours.length]}" fill="none" stroke-width="0.7"/>`,
  );
  const days = Array.from(
    { length: Math.ceil(store.count / 1440) },
    (_, d) => `<text x="${x(d * 1440)}" y="${height - 4}" font-size="9">${d}</text>`,
  );
  const marks = [Math.ceil(low), Math.floor(high)].map(
    (v) => `<text x="4" y="${y(v)}" font-size="10">${v}</text>`,
  );
  const at = x((onset - store.startMs) / store.stepMs);
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" font-family="sans-serif"><rect width="100%" height="100%" fill="#fff"/><text x="8" y="16" font-size="13">${title.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}</text><line x1="${at}" x2="${at}" y1="24" y2="${height - 16}" stroke="#000" stroke-dasharray="4"/>${lines.join('')}${days.join('')}${marks.join('')}</svg>\n`;
}

/** Smallest and largest value of each pixel column. */
function envelope(
  point: SimulatedPoint,
  shown: (value: number) => number,
  x: (i: number) => number,
  y: (value: number) => number,
): string {
  const bin = Math.ceil(point.values.length / (width - 60));
  let path = '';
  for (let from = 0; from < point.values.length; from += bin) {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (let i = from; i < Math.min(point.values.length, from + bin); i++) {
      const value = shown(point.values[i]!);
      if (value < low) low = value;
      if (value > high) high = value;
    }
    if (low > high) continue;
    path += `${path === '' ? 'M' : 'L'}${x(from).toFixed(1)} ${y(low).toFixed(1)}L${x(from).toFixed(1)} ${y(high).toFixed(1)}`;
  }
  return path;
}
