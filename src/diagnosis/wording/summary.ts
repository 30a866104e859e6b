import type { Projection } from '../../model/finding.ts';
import type { Signals } from '../../signals/types.ts';
import type { Judgement } from '../judgement.ts';
import type { Trouble } from '../trouble.ts';
import { cyclingSummary, defrostSummary, superheatSummary, wholeCircuitSummary } from './circuit-summary.ts';
import { leftOffSummary } from './left-off-summary.ts';
import { deadProbeSummary, oneProbeSummary } from './probe-summary.ts';
import { rackSummary, recordSummary } from './site-summary.ts';

/** One sentence: where, what, since when, whose fault, how long until the limit. */
export function summarise(
  trouble: Trouble,
  judgement: Judgement,
  projection: Projection | null,
  signals: Signals,
): string {
  const { log } = signals;
  switch (trouble.scope) {
    case 'one-probe':
      return oneProbeSummary(trouble, judgement, projection, signals);
    case 'dead-probe':
      return deadProbeSummary(trouble, judgement, signals);
    case 'whole-circuit':
      return wholeCircuitSummary(trouble, judgement, projection, log);
    case 'defrost':
      return defrostSummary(trouble, log);
    case 'cycling':
      return cyclingSummary(trouble, judgement, log);
    case 'superheat':
      return superheatSummary(trouble, log);
    case 'left-off':
      return leftOffSummary(trouble, projection, log);
    case 'rack':
      return rackSummary(trouble, log);
    case 'record':
      return recordSummary(trouble, log);
  }
}
