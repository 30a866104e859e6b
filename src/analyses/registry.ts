import type { Analysis, AnalysisMeta, CircuitAnalysis, GroupAnalysis } from './analysis.ts';
import * as defrostRecovery from './defrost-recovery/index.ts';
import * as leftOff from './left-off/index.ts';
import * as probeDisagreement from './probe-disagreement/index.ts';
import * as rackPressure from './rack-pressure/index.ts';
import * as recordQuality from './record-quality/index.ts';
import * as shortCycling from './short-cycling/index.ts';
import * as superheat from './superheat/index.ts';
import * as upwardDrift from './upward-drift/index.ts';

const circuit = (meta: AnalysisMeta, analyse: CircuitAnalysis['analyse']): Analysis => ({
  meta,
  scope: 'circuit',
  analyse,
});
const group = (meta: AnalysisMeta, analyse: GroupAnalysis['analyse']): Analysis => ({
  meta,
  scope: 'group',
  analyse,
});

/** Every analysis, in the order in which they run. Short-cycling looks at valves and at compressors. */
export const analyses: readonly Analysis[] = [
  circuit(upwardDrift.meta, upwardDrift.analyse),
  circuit(probeDisagreement.meta, probeDisagreement.analyse),
  circuit(shortCycling.meta, shortCycling.analyse),
  group(shortCycling.meta, shortCycling.analyseCompressors),
  circuit(defrostRecovery.meta, defrostRecovery.analyse),
  group(rackPressure.meta, rackPressure.analyse),
  circuit(superheat.meta, superheat.analyse),
  circuit(leftOff.meta, leftOff.analyse),
  circuit(recordQuality.meta, recordQuality.analyse),
];
