/** A seeded stream of random numbers: the same seed gives the same stream on every machine. */
export interface Random {
  /** Uniform in [0, 1). */
  next(): number;
  between(low: number, high: number): number;
  /** Whole number, both ends included. */
  whole(low: number, high: number): number;
  normal(): number;
  chance(probability: number): boolean;
  pick<T>(choices: readonly T[]): T;
  /** An independent stream that depends on this stream's seed and the label alone. */
  branch(label: string): Random;
}

/** 32-bit FNV-1a of a label, so that streams can be told apart by name. */
function hash(label: string, start: number): number {
  let h = (2166136261 ^ start) >>> 0;
  for (let i = 0; i < label.length; i++) h = Math.imul(h ^ label.charCodeAt(i), 16777619) >>> 0;
  return h;
}

/** Small fast counter generator (sfc32, public domain algorithm of C. Doty-Humphrey), seeded from one integer. */
export function createRandom(seed: number): Random {
  let a = 0x9e3779b9 ^ seed;
  let b = 0x243f6a88 ^ Math.imul(seed, 0x85ebca6b);
  let c = 0xb7e15162;
  let counter = 1;
  const next32 = (): number => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + sum;
    c |= 0;
    return sum >>> 0;
  };
  for (let i = 0; i < 15; i++) next32();

  let spare = Number.NaN;
  const random: Random = {
    next: () => next32() / 4294967296,
    between: (low, high) => low + (high - low) * random.next(),
    whole: (low, high) => low + Math.floor(random.next() * (high - low + 1)),
    normal() {
      if (!Number.isNaN(spare)) {
        const value = spare;
        spare = Number.NaN;
        return value;
      }
      let u: number;
      let v: number;
      let s: number;
      do {
        u = 2 * random.next() - 1;
        v = 2 * random.next() - 1;
        s = u * u + v * v;
      } while (s >= 1 || s === 0);
      const scale = Math.sqrt((-2 * Math.log(s)) / s);
      spare = v * scale;
      return u * scale;
    },
    chance: (probability) => random.next() < probability,
    pick: (choices) => choices[Math.floor(random.next() * choices.length)]!,
    branch: (label) => createRandom(hash(label, seed)),
  };
  return random;
}
