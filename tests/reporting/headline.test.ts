import { expect, test } from 'vitest';
import { headline } from '../../src/reporting/headline.ts';
import { reportOrder } from '../../src/reporting/report-order.ts';
import { visitHeadline } from '../../src/reporting/visit/visit-words.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';
import { visitSheet } from '../../src/visit/visit-sheet.ts';
import { handMadeLog } from '../support/hand-made-log.ts';

test('an export without a circuit is not called healthy, and says what to do', () => {
  const log = handMadeLog({ days: 3 });
  const diagnosis = { findings: [], circuits: [], abstentions: [] };
  const sheet = visitSheet(computeSignals(log), diagnosis);
  for (const text of [headline(reportOrder(diagnosis, log), diagnosis, log), visitHeadline(sheet, log)]) {
    expect(text).toMatch(/^No circuit was judged/);
    expect(text).toContain('site file');
    expect(text).not.toMatch(/no drift|Nothing here|No stop/);
  }
});
