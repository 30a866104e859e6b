import type { Random } from '../random.ts';
import type { CircuitHabits } from './parameters.ts';
import type { Symptoms } from './symptoms.ts';

/** The usual curve of a defrost: a rise that dwells while frost melts, a pause, then an exponential return. */
export function createDefrostShape(habits: CircuitHabits, symptoms: Symptoms, random: Random) {
  const { defrost } = habits;
  const excess = new Float64Array(habits.offsets.length);
  const shape = {
    excess,
    /** In defrost or in its pause. */
    defrosting: false,
    logged: false,
    /** How much of the line-up's state is defrost, 0 to 1. */
    share: 0,
    advance,
  };
  let age = 0;
  let lasts = 0;
  let dwellFrom = 0;
  let pause = 0;
  return shape;

  function advance(clock: number): void {
    if (shape.logged && ++age >= lasts) {
      shape.logged = false;
      pause = defrost.delayMinutes;
    } else if (!shape.logged && pause > 0) pause -= 1;
    if (
      !shape.logged &&
      defrost.starts.includes((clock + symptoms.clockAhead + 2880) % 1440) &&
      !symptoms.skipDefrost &&
      symptoms.forced !== 'off'
    ) {
      shape.logged = true;
      age = 0;
      const usual =
        defrost.usualMinutes * (defrost.usualMinutes < defrost.minutes ? random.between(0.9, 1.1) : 1);
      lasts = Math.round(symptoms.defrostToTime ? defrost.minutes : Math.min(defrost.minutes, usual));
      dwellFrom = defrost.usualMinutes * random.between(0.1, 0.25);
    }
    shape.defrosting = shape.logged || pause > 0;
    shape.share += ((shape.defrosting ? 1 : 0) - shape.share) / 6;
    for (let i = 0; i < excess.length; i++) {
      if (shape.logged) {
        const melting =
          age >= dwellFrom &&
          age < dwellFrom + defrost.dwellMinutes / Math.max(0.3, symptoms.defrostRise[i]!);
        const goal = defrost.rise[i]! * symptoms.defrostRise[i]!;
        excess[i] = excess[i]! + ((goal - excess[i]!) / defrost.riseMinutes) * (melting ? 0.15 : 1);
      } else if (pause <= 0) {
        excess[i] = excess[i]! * Math.exp(-1 / (defrost.recoveryMinutes * symptoms.recovery[i]!));
      }
    }
  }
}
