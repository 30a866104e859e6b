import type { CircuitSeries } from '../json.ts';

/** Where a panel stands, as shares of the drawing from the bottom. */
export type Panel = readonly [number, number];

/** Top to bottom: air, valve or machines, suction pressure; those that there is something to show of. */
export interface Panels {
  readonly air: Panel | null;
  readonly strip: Panel | null;
  readonly suction: Panel | null;
  /** The one that findings are marked on. */
  readonly main: Panel;
  /** Pixels, without margins. */
  readonly height: number;
}

const airHeight = 340;
const stripHeight = 46;
const suctionHeight = 110;
const gap = 34;

export function panelsFor({ probes, valve, suction }: CircuitSeries): Panels {
  const hasAir = probes.length > 0;
  const heights = [
    hasAir ? airHeight : 0,
    valve === null ? 0 : stripHeight,
    suction === null ? 0 : hasAir ? suctionHeight : airHeight,
  ];
  const shown = heights.filter((pixels) => pixels > 0);
  const height = shown.reduce((sum, pixels) => sum + pixels, 0) + gap * Math.max(0, shown.length - 1);
  let top = height;
  const [air = null, strip = null, pressure = null] = heights.map((pixels): Panel | null => {
    if (pixels === 0) return null;
    const panel = [(top - pixels) / height, top / height] as const;
    top -= pixels + gap;
    return panel;
  });
  return {
    air,
    strip,
    suction: pressure,
    main: air ?? pressure ?? [0, 1],
    height: Math.max(height, stripHeight),
  };
}
