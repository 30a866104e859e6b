import { expect, test } from 'vitest';
import { studentQuantile } from '../../src/maths/student-quantile.ts';

/** Two-sided 95 % points as printed in every table (NIST/SEMATECH Handbook 1.3.6.7.2). */
const printed: [number, number][] = [
  [1, 12.706],
  [2, 4.303],
  [3, 3.182],
  [4, 2.776],
  [5, 2.571],
  [6, 2.447],
  [10, 2.228],
  [20, 2.086],
  [30, 2.042],
  [100, 1.984],
];

test.each(printed)('with %i degrees of freedom is the %f of the tables', (freedom, value) => {
  expect(Math.abs(studentQuantile(0.975, freedom) / value - 1)).toBeLessThan(freedom < 6 ? 2.5e-3 : 3e-4);
  expect(studentQuantile(0.025, freedom)).toBeCloseTo(-studentQuantile(0.975, freedom), 12);
});

test('is unknown below one degree of freedom', () => {
  expect(studentQuantile(0.975, 0.5)).toBeNaN();
});
