import { expect, test } from 'vitest';
import { monthName } from '../../web/month-name.ts';

test.each([
  ['2026-09', 'September 2026'],
  ['2026-13', '2026-13'],
  ['<b>', '<b>'],
])('the month %s is called %s', (month, name) => {
  expect(monthName(month)).toBe(name);
});
