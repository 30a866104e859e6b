/** Whole numbers from a seed, the same on every machine: the quick generator of Numerical Recipes, upper bits. */
export class SeededDraws {
  private state: number;

  constructor(seed: number) {
    this.state = Math.imul(seed + 1, 0x9e3779b1) >>> 0;
    for (let warm = 0; warm < 4; warm++) this.below(2);
  }

  /** A whole number from 0 to `count` - 1. */
  below(count: number): number {
    this.state = (Math.imul(this.state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((this.state / 2 ** 32) * count);
  }

  chance(share: number): boolean {
    return this.below(1_000_000) < share * 1_000_000;
  }

  of<T>(choices: readonly T[]): T {
    return choices[this.below(choices.length)]!;
  }
}
