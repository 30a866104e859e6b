import { expect, test } from 'vitest';
import type { Abstention } from '../../src/model/evidence.ts';
import { headline, restsOn } from '../../src/reporting/headline.ts';
import { reportOrder } from '../../src/reporting/report-order.ts';
import { visitHeadline } from '../../src/reporting/visit/visit-words.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { visitSheet } from '../../src/visit/visit-sheet.ts';
import { gridOf, handMadeLog } from '../support/hand-made-log.ts';
import { simpleCase } from '../support/simple-case.ts';

test('an export without a circuit is not called healthy, and says what to do', () => {
  const log = handMadeLog({ days: 3 });
  const diagnosis = { findings: [], circuits: [], abstentions: [] };
  const sheet = visitSheet(computeSignals(log), diagnosis);
  for (const text of [
    headline(reportOrder(diagnosis, log), diagnosis, log),
    visitHeadline(sheet, { log, diagnosis }),
  ]) {
    expect(text).toMatch(/^No circuit was judged/);
    expect(text).toContain('site file');
    expect(text).not.toMatch(/no drift|Nothing here|No stop/);
  }
});

test('an export too short for a drift is not said to show none', () => {
  const log = handMadeLog({ days: 1, circuits: [simpleCase(gridOf(1, 1))] });
  const signals = computeSignals(log);
  const short: Abstention = {
    analysis: 'upward-drift',
    circuit: 'M01',
    suctionGroup: null,
    reason: 'too few days',
    needs: null,
  };
  const said = (abstentions: readonly Abstention[]) => {
    const diagnosis = { findings: [], circuits: [], abstentions };
    const sheet = visitSheet(signals, diagnosis);
    return [headline(reportOrder(diagnosis, log), diagnosis, log), visitHeadline(sheet, { log, diagnosis })];
  };
  for (const text of said([short])) {
    expect(text).toMatch(/^Too short to show a drift/);
    expect(text).not.toMatch(/no drift|Nothing here|No stop/);
  }
  for (const text of said([{ ...short, analysis: 'superheat' }])) expect(text).toMatch(/no drift|No stop/);
});

test('what an export rests on has its days, or the hours of a short one', () => {
  const rests = (days: number) => restsOn(handMadeLog({ days, stepMinutes: 5 }));
  expect(rests(1)).toMatch(/^1 Sep 2026 \(24 h, a reading every 5 minutes\)/);
  expect(rests(3)).toMatch(/^1 Sep to 3 Sep 2026 \(3 days, /);
});
