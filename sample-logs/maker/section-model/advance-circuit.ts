import type { CircuitState } from './circuit-state.ts';
import type { CircuitEffects } from './effects.ts';
import type { CircuitParameters } from './parameters.ts';

const fusionHeat = 335e3;
const sublimationHeat = 2.833e6;
const mostIce = 45;

/**
 * Heat and mass balance of every section over `seconds`: air, coil wall with frost and ice pinned at 0 °C while
 * they melt, goods, liner. `load` scales infiltration (hour, stocking), `saturated` is the evaporating temperature.
 */
export function advanceSections(
  parameters: CircuitParameters,
  state: CircuitState,
  effects: CircuitEffects,
  surroundings: { load: number; saturated: number; storeTemperature: number },
  seconds: number,
): void {
  const {
    sections,
    airMass,
    wallMass,
    goodsMass,
    linerMass,
    goods: goodsUa,
    liner: linerUa,
    mixing,
  } = parameters;
  const { air, wall, goods, liner, frost, ice, pool } = state;
  const cooling = state.mode === 'cooling';
  const fans = cooling ? (state.fansDelay > 0 ? 0.2 : 1) : parameters.defrost.fansRun ? 1 : 0.07;
  const drawn = 0.25 + 0.75 * fans;
  const load = surroundings.load * effects.load * drawn;
  const stillAir = fans < 1;
  const heater = state.mode === 'defrost' ? parameters.defrost.heat * effects.defrostHeat : 0;
  let evaporatorHeat = 0;
  let takenUp = 0;
  let airflow = 0;
  let before = air[0]!;
  for (let i = 0; i < sections; i++) {
    const here = air[i]!;
    const after = i + 1 < sections ? air[i + 1]! : here;
    const wander = Math.max(0.4, 1 + state.wander[i]! + state.commonWander);
    const entering = load * (1 + effects.curtainLeak[i]!) + effects.leak[i]! * drawn;
    const infiltration =
      parameters.infiltration[i]! * entering * wander * (surroundings.storeTemperature - here);
    const frostShare = Math.min(2.6, frost[i]! / parameters.usualFrost);
    const coil =
      parameters.coil[i]! *
      effects.airflow[i]! *
      Math.max(0.25, 1 - parameters.frostPenalty * frostShare) *
      fans;
    const w = wall[i]!;
    const toWall = coil * (here - w);
    const exchange = (stillAir ? 0.3 : 1) * mixing * (before + after - 2 * here);
    const toRefrigerant =
      w > surroundings.saturated
        ? parameters.refrigerant * state.fill * effects.feeding * (w - surroundings.saturated)
        : 0;
    evaporatorHeat += toRefrigerant;
    const heat = infiltration + goodsUa * (goods[i]! - here) + linerUa * (liner[i]! - here);
    takenUp += heat;
    airflow += coil / parameters.coil[i]! / sections;
    air[i] = here + ((heat + exchange - toWall) * seconds) / airMass;
    let warmed = w + ((toWall - toRefrigerant + heater) * seconds) / wallMass;
    if (warmed > 0 && frost[i]! + ice[i]! > 0)
      warmed = melt(state, i, warmed, wallMass, effects.refreeze[i]!);
    wall[i] = warmed;
    goods[i] = goods[i]! + (goodsUa * (here - goods[i]!) * seconds) / goodsMass;
    liner[i] = liner[i]! + (linerUa * (here - liner[i]!) * seconds) / linerMass;
    if (warmed < -0.5 && toWall > 0) {
      frost[i] =
        frost[i]! +
        (parameters.latentShare * effects.humidity * Math.max(0, infiltration) * seconds) / sublimationHeat;
    }
    if (pool[i]! > 0 && cooling && warmed < 0) {
      const frozen = Math.min(pool[i]!, (pool[i]! * seconds) / 1500);
      pool[i] = pool[i]! - frozen;
      ice[i] = Math.min(mostIce, ice[i]! + frozen);
    }
    before = here;
  }
  state.evaporatorHeat = evaporatorHeat;
  state.takenUp = takenUp;
  state.airflow = airflow;
}

/** Spends the heat above 0 °C on frost first, then ice; returns the wall temperature that is left. */
function melt(state: CircuitState, i: number, warmed: number, wallMass: number, refreeze: number): number {
  const available = (warmed * wallMass) / fusionHeat;
  const fromFrost = Math.min(state.frost[i]!, available);
  const fromIce = Math.min(state.ice[i]!, available - fromFrost);
  state.frost[i] = state.frost[i]! - fromFrost;
  state.ice[i] = state.ice[i]! - fromIce;
  state.pool[i] = state.pool[i]! * 0.999 + refreeze * (fromFrost + fromIce);
  return warmed - ((fromFrost + fromIce) * fusionHeat) / wallMass;
}
