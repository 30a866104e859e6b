import { describe, expect, it } from 'vitest';
import { diagnose } from '../../src/diagnosis/diagnose.ts';
import type { Finding } from '../../src/model/finding.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { inThrees, labLog, labStartMs, type Mote, motesOf, withStep } from '../analyses/support/intel-lab.ts';

// Real sensors in a real room: de Bruijn et al., SENSORNETS 2016 (tests/golden/de-bruijn/SOURCES.md).

const clean = motesOf('clean');
const flags = (lineUps: readonly (readonly Mote[])[]): Finding[] =>
  diagnose(computeSignals(labLog(lineUps))).findings.filter(({ severity }) => severity !== 'note');

/** The line-up of one mote, that mote replaced. */
function lineUpWith(mote: Mote): Mote[] {
  const lineUp = inThrees(clean).find((motes) => motes.some(({ name }) => name === mote.name))!;
  return lineUp.map((one) => (one.name === mote.name ? mote : one));
}

function namedWithStep(size: number): { named: number; hoursOff: number[] } {
  const day = 3.5;
  let named = 0;
  const hoursOff: number[] = [];
  for (const mote of clean) {
    const found = flags([lineUpWith(withStep(mote, size, day))]).find(({ probe }) => probe === mote.name);
    if (found === undefined) continue;
    named++;
    hoursOff.push(Math.abs(found.onset - labStartMs - day * 86_400_000) / 3_600_000);
  }
  return { named, hoursOff: hoursOff.sort((a, b) => a - b) };
}

describe('ten motes of a laboratory', () => {
  it('raise no flag in a clean week, taken as three line-ups', () => {
    expect(flags(inThrees(clean))).toEqual([]);
  });

  it('are named for a step of 3 K, nearly all for 2 K, and for 0.5 K nobody is blamed', () => {
    const large = namedWithStep(3);
    expect(large.named).toBe(10);
    expect(large.hoursOff[5]).toBeLessThanOrEqual(4);
    expect(namedWithStep(2).named).toBeGreaterThanOrEqual(8);
    expect(namedWithStep(0.5).named).toBe(0);
  });

  it('are named for the hours in which one of them was biased, each alone among clean neighbours', () => {
    const biased = motesOf('bias');
    const named = biased.filter((mote) => flags([lineUpWith(mote)]).some(({ probe }) => probe === mote.name));
    expect(named.map(({ name }) => name)).toEqual(biased.map(({ name }) => name));
  });
});
