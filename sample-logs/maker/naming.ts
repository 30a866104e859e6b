import type { SimulatedPoint } from './simulated-store.ts';

/** Turns a point into the header that the export carries. */
export type Naming = (point: SimulatedPoint) => string;

const letters = 'ABCDEFGH';

/** The plain scheme: `M01 air A`, `S1 suction`. */
export const plainNaming: Naming = (point) => {
  const owner = point.circuit ?? point.group ?? 'Store';
  switch (point.role) {
    case 'air':
      return `${owner} air ${letters[point.place]}`;
    case 'set-point':
      return `${owner} set`;
    case 'valve':
      return `${owner} liquid`;
    case 'defrost':
      return `${owner} dfr`;
    case 'return-air':
      return `${owner} return`;
    case 'coil-out':
      return `${owner} coil out`;
    case 'defrost-termination':
      return `${owner} term`;
    case 'superheat':
      return `${owner} superheat`;
    case 'suction':
      return `${owner} suction`;
    case 'suction-set-point':
      return `${owner} suction set`;
    case 'compressor':
      return `${owner} comp ${point.place + 1}`;
    case 'discharge':
      return `${owner} discharge`;
    case 'liquid-level':
      return `${owner} liquid level`;
    case 'outdoor':
      return 'Outdoor temp';
    case 'not-connected':
      return `${owner} aux ${point.place + 1}`;
  }
};
