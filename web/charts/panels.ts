/** Where the panels of a circuit's plot stand, as shares of the drawing, from the bottom. */
export interface Panels {
  readonly air: readonly [number, number];
  readonly valve: readonly [number, number] | null;
  readonly suction: readonly [number, number] | null;
  readonly height: number;
}

const airHeight = 340;
const valveHeight = 46;
const suctionHeight = 110;
const gap = 34;

/** Top to bottom: air, valve, suction pressure; those that the circuit has. `height` in pixels, without margins. */
export function panelsFor(hasValve: boolean, hasSuction: boolean): Panels {
  const below = (hasValve ? valveHeight + gap : 0) + (hasSuction ? suctionHeight + gap : 0);
  const height = airHeight + below;
  const share = (pixels: number): number => pixels / height;
  const valveFrom = hasSuction ? suctionHeight + gap : 0;
  return {
    air: [share(below), 1],
    valve: hasValve ? [share(valveFrom), share(valveFrom + valveHeight)] : null,
    suction: hasSuction ? [0, share(suctionHeight)] : null,
    height,
  };
}
