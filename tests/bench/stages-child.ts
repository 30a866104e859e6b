import { diagnose } from '../../src/diagnosis/diagnose.ts';
import { assembleLog } from '../../src/importing/assemble.ts';
import { gatherReadings } from '../../src/pipeline/gather-readings.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';

/** Prints how long each stage took on the export of `stages-child.ts EXPORT`, cold, in seconds. */
let last = performance.now();
const lap = (): number => {
  const now = performance.now();
  const seconds = (now - last) / 1000;
  last = now;
  return seconds;
};
const { readings, site } = await gatherReadings({ exports: [process.argv[2]!], timeZone: 'UTC' });
const reading = lap();
const { log } = assembleLog(readings, site, {});
const arranging = lap();
const signals = computeSignals(log);
const signalsTime = lap();
diagnose(signals);
const judging = lap();
process.stdout.write(JSON.stringify({ reading, arranging, signals: signalsTime, judging }));
