/** From which the air comes back plainly later from the defrosts of the night: its ratio, and minutes. */
const laterByNight = 1.3;
const laterMinutes = 4;

/**
 * A circuit that is warm in trading hours alone has more to cool then, or less to cool it with. The night tells which: doors and
 * loading rest then, and a coil that has lost capacity brings the air back later from its defrosts all the same.
 */
export function lacksByNight({
  nightRecoveryRatio = 1,
  nightRecoveryRise = 0,
}: Readonly<{ [name: string]: number }>): boolean {
  return nightRecoveryRatio >= laterByNight && nightRecoveryRise >= laterMinutes;
}
