import { endedByProbeLetter } from '../header/probe-letters.ts';
import { unitInHeader } from '../header/unit-words.ts';
import type { ValueTally } from './value-tally.ts';

/** Takes back a unit read from the last letter of a header where its siblings show that the letter is the probe's. */
export function forgetProbeLetters(tallies: readonly ValueTally[]): void {
  const ended = endedByProbeLetter(tallies.map(({ name }) => name));
  for (const tally of tallies) {
    if (tally.unitSource !== 'header' || !ended.has(tally.name)) continue;
    tally.unit = unitInHeader(tally.name.trimEnd().slice(0, -1));
    if (tally.unit === null) tally.unitSource = null;
  }
}
