import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import type { FindingsDocument } from '../../src/reporting/findings-schema.ts';
import { runCli } from './support/run-cli.ts';

interface Truth {
  readonly faults: readonly {
    readonly circuit: string | null;
    readonly suctionGroup: string | null;
    readonly probe: string | null;
    readonly kinds: readonly string[];
    readonly origins: readonly string[];
    readonly causes: readonly string[];
    readonly onset: string;
  }[];
}

const folder = fileURLToPath(new URL('../../sample-logs', import.meta.url));
const samples = readdirSync(folder)
  .filter((name) => existsSync(join(folder, name, 'truth.json')))
  .map((name) => ({
    name,
    truth: JSON.parse(readFileSync(join(folder, name, 'truth.json'), 'utf8')) as Truth,
  }));
const planted = samples.filter(({ truth }) => truth.faults.length > 0);
const healthy = samples.filter(({ truth }) => truth.faults.length === 0);

async function findingsOf(name: string): Promise<FindingsDocument> {
  const { code, out } = await runCli(['check', join(folder, name), '--json']);
  expect(code).toBe(0);
  return JSON.parse(out) as FindingsDocument;
}

describe('the shipped sample logs, from export text to findings', () => {
  test('hold planted faults and a healthy month', () => {
    expect(planted.length).toBeGreaterThanOrEqual(6);
    expect(healthy.length).toBeGreaterThanOrEqual(1);
  });

  test.each(planted)(
    '$name: the planted fault stands first, with the right origin and cause',
    async ({ name, truth }) => {
      const [fault] = truth.faults;
      const [first] = (await findingsOf(name)).findings;
      expect(first, 'nothing was found').toBeDefined();
      expect(fault!.kinds).toContain(first!.kind);
      expect(fault!.origins).toContain(first!.origin);
      expect(fault!.causes).toContain(first!.causes[0]?.cause);
      expect(['watch', 'act']).toContain(first!.severity);
      expect(first!.circuit ?? first!.suctionGroup).toBe(fault!.circuit ?? fault!.suctionGroup);
    },
  );

  test.each(healthy)('$name: nothing above a note', async ({ name }) => {
    const { findings } = await findingsOf(name);
    expect(findings.filter(({ severity }) => severity !== 'note').map(({ summary }) => summary)).toEqual([]);
  });
});
