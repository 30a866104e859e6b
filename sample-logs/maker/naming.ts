import type { PointRole, SimulatedPoint } from './simulated-store.ts';

/** Turns a point into the name that the export carries. All schemes are invented. */
export type Naming = (point: SimulatedPoint) => string;

const letters = 'ABCDEFGH';
type Words = { readonly [role in PointRole]: (place: number) => string };

function scheme(separator: string, words: Words, owner: (point: SimulatedPoint) => string = ownerOf): Naming {
  return (point) => `${owner(point)}${separator}${words[point.role](point.place)}`;
}

function ownerOf(point: SimulatedPoint): string {
  return point.circuit ?? point.group ?? 'Store';
}

/** `M01 air A`, `S1 suction`. */
export const plainNaming = scheme(' ', {
  air: (place) => `air ${letters[place]}`,
  'set-point': () => 'set',
  valve: () => 'liquid',
  defrost: () => 'dfr',
  'return-air': () => 'return',
  'coil-out': () => 'coil out',
  'defrost-termination': () => 'term',
  superheat: () => 'superheat',
  suction: () => 'suction',
  'suction-set-point': () => 'suction set',
  compressor: (place) => `comp ${place + 1}`,
  discharge: () => 'discharge',
  'liquid-level': () => 'liquid level',
  outdoor: () => 'outdoor temp',
  'not-connected': (place) => `aux ${place + 1}`,
});

/** `M01_DISCH_AIR_1`, `S1_SUCT_PRESS`. */
export const upperNaming = scheme('_', {
  air: (place) => `DISCH_AIR_${place + 1}`,
  'set-point': () => 'TEMP_SETPT',
  valve: () => 'LIQ_SOLENOID',
  defrost: () => 'DEFROST_ON',
  'return-air': () => 'RET_AIR_1',
  'coil-out': () => 'COIL_OUT_TEMP',
  'defrost-termination': () => 'DEFR_TERM_TEMP',
  superheat: () => 'SUPERHEAT',
  suction: () => 'SUCT_PRESS',
  'suction-set-point': () => 'SUCT_SETPT',
  compressor: (place) => `CMP${place + 1}_RUN`,
  discharge: () => 'DISCH_PRESS',
  'liquid-level': () => 'RECEIVER_LEVEL',
  outdoor: () => 'OUTDOOR_TEMP',
  'not-connected': (place) => `SPARE_${place + 1}`,
});

/** `M01 / Discharge air temperature 1`, `S1 / Suction pressure`. */
export const spelledNaming = scheme(' / ', {
  air: (place) => `Discharge air temperature ${place + 1}`,
  'set-point': () => 'Temperature set point',
  valve: () => 'Liquid valve',
  defrost: () => 'Defrost',
  'return-air': () => 'Return air temperature',
  'coil-out': () => 'Coil outlet temperature',
  'defrost-termination': () => 'Defrost termination temperature',
  superheat: () => 'Superheat',
  suction: () => 'Suction pressure',
  'suction-set-point': () => 'Suction pressure set point',
  compressor: (place) => `Compressor ${place + 1} running`,
  discharge: () => 'Discharge pressure',
  'liquid-level': () => 'Receiver liquid level',
  outdoor: () => 'Outside air temperature',
  'not-connected': (place) => `Spare input ${place + 1}`,
});

/** `Case temp 1.M01`, the owner last. */
export const ownerLastNaming: Naming = (point) => {
  const words: Words = {
    air: (place) => `Case temp ${place + 1}`,
    'set-point': () => 'Case SP',
    valve: () => 'Valve',
    defrost: () => 'Defrost state',
    'return-air': () => 'Return temp',
    'coil-out': () => 'Coil out',
    'defrost-termination': () => 'Term temp',
    superheat: () => 'SH',
    suction: () => 'Suction',
    'suction-set-point': () => 'Suction SP',
    compressor: (place) => `Compressor ${letters[place]}`,
    discharge: () => 'Discharge',
    'liquid-level': () => 'Level',
    outdoor: () => 'Outside temp',
    'not-connected': (place) => `Input ${place + 9}`,
  };
  return `${words[point.role](point.place)}.${ownerOf(point)}`;
};

export const namings: readonly Naming[] = [plainNaming, upperNaming, spelledNaming, ownerLastNaming];
