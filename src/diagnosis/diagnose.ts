import type { Diagnosis } from '../model/finding.ts';
import type { Signals } from '../signals/types.ts';
import { gatherEvidence } from './gather.ts';
import { judge } from './judge.ts';

/** From signals to what is said of a site: every analysis is run and its evidence judged. */
export function diagnose(signals: Signals): Diagnosis {
  return judge(signals, gatherEvidence(signals));
}
