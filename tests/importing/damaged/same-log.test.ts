import { beforeAll, describe, expect, it } from 'vitest';
import { normalizedContent, onlyReport, readContent } from '../support.ts';
import { written } from './plain-log.ts';
import { dialects, encodings, headers, layouts, type SameLog, times, values } from './same-log.ts';

let plain: string;
beforeAll(async () => {
  plain = await normalizedContent(written());
});

function comesOutIdentical(logs: readonly SameLog[]): void {
  it.each(logs)('$name', async ({ content }) => {
    const found = await readContent(content());
    const text = await normalizedContent(content());
    expect(text.slice(0, 600)).toBe(plain.slice(0, 600));
    expect(text === plain).toBe(true);
    const { rows, rowsRejected, values: met, valuesRejected } = onlyReport(found);
    expect(met - valuesRejected).toBe(plain.split('\n').length - 2);
    expect(rows - rowsRejected).toBeGreaterThan(0);
  });
}

describe('the plain log', () => {
  it('has every reading', () => {
    const lines = plain.split('\n');
    expect(lines[0]).toBe('time,point,value,unit');
    expect(lines[1]).toEqual(
      expect.stringMatching(/^2026-09-03T06:00:00Z,M01 air A \(°F\),4\d(\.\d)?,\[degF\]$/u),
    );
    expect(lines).toContain('2026-09-03T06:00:00Z,M01 dfr,ON,');
    expect(lines.length).toBeGreaterThan(6000);
  });
});

describe('the same log comes out identical in every encoding', () => comesOutIdentical(encodings));
describe('the same log comes out identical in every dialect', () => comesOutIdentical(dialects));
describe('the same log comes out identical under every header', () => comesOutIdentical(headers));
describe('the same log comes out identical with times written in every way', () => comesOutIdentical(times));
describe('the same log comes out identical in every layout', () => comesOutIdentical(layouts));
describe('the same log comes out identical with values written in every way', () =>
  comesOutIdentical(values));
