import { isPlaceLetter } from './place-letter.ts';
import type { ResidualToken } from './residual.ts';

/** A way of reading the names: which tokens name the circuit. */
export interface NameReading {
  readonly read: (
    residual: readonly ResidualToken[],
    ofOthers: readonly ResidualToken[] | null,
  ) => readonly ResidualToken[];
  readonly because: string;
  /** Too bold to be believed unless set points, defrosts or valves carry the same names. */
  readonly onlyWithOthers: boolean;
  /** What it leaves of a name is a place in whatever word, since the circuit is known from elsewhere. */
  readonly placesInAnyWord?: boolean;
}

export const nameReadings: readonly NameReading[] = [
  {
    read: (all) => all.filter((token) => token.mark !== 'probe'),
    because: 'their names share what comes before the probe',
    onlyWithOthers: false,
  },
  {
    read: (all) => all.filter((token) => token.mark !== 'probe' && token.mark !== 'case'),
    because: 'their names share what comes before the case',
    onlyWithOthers: false,
  },
  {
    read: (all) => (isShort(all.at(-1)) ? all.slice(0, -1) : all),
    because: 'their names share all but the last letter or number',
    onlyWithOthers: false,
  },
  {
    read: (all) => (isShort(all[0]) ? all.slice(1) : all),
    because: 'their names share all but the first letter or number',
    onlyWithOthers: false,
  },
  {
    read: (all) => all.filter((token) => token.mark === 'circuit'),
    because: 'their names carry the same circuit number',
    onlyWithOthers: false,
  },
  {
    read: (all) => withoutLastDigits(all, 2),
    because: 'their numbers begin with the number of the circuit',
    onlyWithOthers: true,
  },
  {
    read: (all) => withoutLastDigits(all, 1),
    because: 'their numbers begin with the number of the circuit',
    onlyWithOthers: true,
  },
  { read: (all) => all, because: 'each has a name of its own', onlyWithOthers: false },
  {
    read: (all, ofOthers) => ofOthers ?? all.filter((token) => token.mark !== 'probe'),
    because: 'their names hold the name that set points, defrosts and valves carry',
    onlyWithOthers: true,
    placesInAnyWord: true,
  },
];

/** `0401` is probe 01 of circuit 04. */
function withoutLastDigits(all: readonly ResidualToken[], digits: number): readonly ResidualToken[] {
  const last = all.at(-1);
  if (last === undefined || !/^\d+$/.test(last.written) || last.written.length <= digits) return all;
  const written = last.written.slice(0, -digits);
  const text = written.replace(/^0+(?=\d)/, '');
  return [...all.slice(0, -1), { ...last, text, written, to: last.to - digits }];
}

function isShort(token: ResidualToken | undefined): boolean {
  return (
    token !== undefined &&
    token.mark !== 'circuit' &&
    (isPlaceLetter(token.text) || /^\d{1,3}$/.test(token.text) || token.mark === 'probe')
  );
}
