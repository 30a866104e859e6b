import { readFileSync } from 'node:fs';
import { diagnose } from '../../src/diagnosis/diagnose.ts';
import { assembleLog } from '../../src/importing/assemble.ts';
import { gatherReadings } from '../../src/pipeline/gather-readings.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';

/** Seconds on a processor that the stages of one analysis took. */
export interface Stages {
  readonly reading: number;
  readonly arranging: number;
  readonly signals: number;
  readonly judging: number;
}

/** After so many logs the code is compiled, as in a server that has been up for a while. */
const logsToWarm = 8;

/** Seconds that the main thread has been on a processor: others on the machine change that little. Wall time outside Linux. */
function secondsWorked(): number {
  try {
    return Number(readFileSync('/proc/self/schedstat', 'utf8').split(' ')[0]) / 1e9;
  } catch {
    return performance.now() / 1000;
  }
}

async function stagesOf(file: string): Promise<Stages> {
  let last = secondsWorked();
  const lap = (): number => {
    const now = secondsWorked();
    const seconds = now - last;
    last = now;
    return seconds;
  };
  const { readings, site } = await gatherReadings({ exports: [file], timeZone: 'UTC' });
  const reading = lap();
  const { log } = assembleLog(readings, site, {});
  const arranging = lap();
  const computed = computeSignals(log);
  const signals = lap();
  diagnose(computed);
  return { reading, arranging, signals, judging: lap() };
}

/** `stages-child.ts EXPORT` prints the stages of the first analysis of a process, and of one after several. */
const file = process.argv[2]!;
const cold = await stagesOf(file);
let warm = cold;
for (let log = 0; log < logsToWarm; log++) warm = await stagesOf(file);
process.stdout.write(JSON.stringify({ cold, warm }));
