import { describe, expect, it } from 'vitest';
import { createRandom } from '../../sample-logs/maker/random.ts';
import { advanceSections } from '../../sample-logs/maker/section-model/advance-circuit.ts';
import { createCircuitState } from '../../sample-logs/maker/section-model/circuit-state.ts';
import { drawCircuit } from '../../sample-logs/maker/section-model/draw-circuit.ts';
import { createCircuitEffects, resetCircuitEffects } from '../../sample-logs/maker/section-model/effects.ts';

const around = { load: 1, saturated: -8, storeTemperature: 21 };

function lineUp() {
  const parameters = drawCircuit(createRandom(7), 'M01', {
    class: 'medium',
    saturated: -8,
    storeTemperature: 21,
  });
  const state = createCircuitState(parameters);
  const effects = createCircuitEffects(parameters.sections);
  resetCircuitEffects(effects);
  return { parameters, state, effects };
}

describe('the heat balance of a line-up', () => {
  it('closes: heat in from the store less heat out to the refrigerant is what the masses took up, within 2 %', () => {
    const { parameters, state, effects } = lineUp();
    state.frost.fill(0);
    state.fill = 0.7;
    const stored = (): number =>
      [...state.air.keys()].reduce(
        (sum, i) =>
          sum +
          parameters.airMass * state.air[i]! +
          parameters.wallMass * state.wall[i]! +
          parameters.goodsMass * state.goods[i]! +
          parameters.linerMass * state.liner[i]!,
        0,
      );
    let passed = 0;
    let moved = 0;
    const before = stored();
    for (let step = 0; step < 240; step++) {
      for (let i = 0; i < parameters.sections; i++)
        passed += parameters.infiltration[i]! * (21 - state.air[i]!) * 15;
      moved += Math.abs(state.evaporatorHeat) * 15;
      advanceSections(parameters, state, effects, around, 15);
      passed -= state.evaporatorHeat * 15;
    }
    expect(Math.abs(stored() - before - passed)).toBeLessThan(0.02 * moved);
  });

  it('holds the coil at 0 °C while frost melts, for as long as the latent heat asks', () => {
    const { parameters, state, effects } = lineUp();
    state.mode = 'defrost';
    state.fill = 0;
    state.wall.fill(0);
    state.frost.fill(3);
    let seconds = 0;
    let heat = 0;
    while (state.frost[0]! > 0 && seconds < 7200) {
      heat +=
        parameters.coil[0]! *
        (1 - parameters.frostPenalty * Math.min(2.6, state.frost[0]! / parameters.usualFrost)) *
        (state.air[0]! - state.wall[0]!) *
        15;
      advanceSections(parameters, state, effects, around, 15);
      seconds += 15;
      if (state.frost[0]! > 0) expect(state.wall[0]!).toBeCloseTo(0, 6);
    }
    // Latent heat of fusion of ice 333.6 kJ/kg at 0 °C (handbook value; the model rounds to 335).
    expect(heat / 333.6e3).toBeGreaterThan(2.7);
    expect(heat / 333.6e3).toBeLessThan(3.5);
  });
});
