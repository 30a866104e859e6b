import { quantile } from '../maths/quantile.ts';
import type { Circuit, Log } from '../model/log.ts';
import { targetAt } from '../model/record.ts';
import type { Celsius, Kelvin } from '../units/quantities.ts';
import type { CircuitAir } from './air.ts';
import { airOf, isUsable } from './air.ts';
import type { ClockWindows } from './clock-windows.ts';
import { circuitDays } from './daily-circuit.ts';
import { completeByDay, probeDays } from './daily-probe.ts';
import type { FoundDefrost } from './defrost/find-defrosts.ts';
import { findDefrosts } from './defrost/find-defrosts.ts';
import { measureProbe } from './defrost/measure-probe.ts';
import { defrostSlots } from './defrost-slots.ts';
import { offSpells } from './off-spells.ts';
import { markUnknown, phasesOf } from './phases.ts';
import { factsOf } from './record-facts.ts';
import { runThreshold } from './run-threshold.ts';
import { columnSteps, levelSteps } from './set-point-steps.ts';
import { settledWindows } from './settled-windows.ts';
import { noSpells, spellsOf } from './spells.ts';
import type { CircuitSignals, DefrostWindow, SetPointStep } from './types.ts';
import { usualAbove } from './usual-level.ts';

/** A dead band that nobody stated (common practice, no source). */
const usualDifferential: Kelvin = 1.1;
/** The valve is shut for this share of an off-cycle defrost whose start is known to some minutes. */
const restShare = 0.8;

/** @param clock one entry a day of the calendar */
export function circuitSignals(circuit: Circuit, log: Log, clock: readonly ClockWindows[]): CircuitSignals {
  const { grid, calendar } = log;
  const facts = circuit.probes.map((probe) => factsOf(probe.record));
  const usable = facts.map(isUsable);
  const air = airOf(circuit.probes, usable, grid.count);
  const { source, found } = findDefrosts(circuit, air.median, log);
  const valveSpells =
    circuit.valve === null ? noSpells : spellsOf(circuit.valve.values, runThreshold(circuit.valve));
  const off = offSpells(circuit, valveSpells, air.median, () => usualAir(circuit, air), found, grid);
  const phase = phasesOf(found, off, grid);
  const isGapless = facts.some(({ known }, i) => usable[i] && known === grid.count);
  if (!isGapless) markUnknown(phase, air.median);
  const usual = circuit.probes.map((probe) => usualAbove(probe.record.values, circuit.setPoint, phase));
  const defrosts = found.map((one, i) =>
    measured(circuit, one, found[i + 1]?.from ?? grid.count, usual, phase, log),
  );
  const windows = settledWindows(phase, clock, calendar);
  const byDay = completeByDay(defrosts, calendar);
  const probes = circuit.probes.map((probe, position) =>
    probeDays(probe.record, windows, byDay, position, grid, calendar),
  );
  const days = circuitDays(air.mean, circuit.setPoint, circuit.valve, phase, grid, calendar);
  return {
    circuit,
    log,
    facts,
    usable,
    air: air.median,
    phase,
    defrosts,
    defrostSource: source,
    slots: defrostSlots(
      circuit.defrost,
      defrosts,
      air.median,
      phase,
      grid,
      calendar,
      source === 'status' ? null : restsIn(circuit),
    ),
    probes,
    ...days,
    setPointSteps: stepsOf(circuit, usable, air, phase, probes, days.duty, log),
    valveSpells: circuit.valve?.quantity === 'status' ? valveSpells : noSpells,
    offSpells: off,
  };
}

/**
 * Whether the valve stood shut through nearly all of a stretch: an off-cycle defrost is nothing else, however little it
 * lifts air that is warm already. Null where heat belongs to the defrost, or nobody says that none does.
 */
function restsIn({ valve, defrost }: Circuit): ((from: number, to: number) => boolean) | null {
  if (valve === null || defrost.kind !== 'off-cycle') return null;
  const threshold = runThreshold(valve);
  return (from, to) => {
    let shut = 0;
    for (let i = from; i < to; i++) if (valve.values[i]! <= threshold) shut++;
    return shut >= restShare * (to - from);
  };
}

/** Where the air usually stands: the set point, else the lower fifth of all samples. */
function usualAir(circuit: Circuit, air: CircuitAir): Celsius {
  if (typeof circuit.setPoint === 'number') return circuit.setPoint;
  const logged = circuit.setPoint === null ? Number.NaN : quantile(circuit.setPoint.values, 0.5);
  return Number.isNaN(logged) ? quantile(air.median, 0.2) : logged;
}

function measured(
  circuit: Circuit,
  { from, to, source }: FoundDefrost,
  until: number,
  usual: readonly Kelvin[],
  phase: Uint8Array,
  log: Log,
): DefrostWindow {
  const differential = circuit.differential ?? usualDifferential;
  const target = circuit.setPoint === null ? 0 : targetAt(circuit.setPoint, from);
  const probes = circuit.probes.map((probe, i) =>
    measureProbe(probe.record.values, phase, { from, to }, until, target + usual[i]!, differential, log.grid),
  );
  return { from, to, source, complete: from > 0 && to < log.grid.count && isKnown(phase, from, to), probes };
}

function isKnown(phase: Uint8Array, from: number, to: number): boolean {
  for (let i = from - 1; i <= to; i++) if (phase[i] === 0) return false;
  return true;
}

function stepsOf(
  circuit: Circuit,
  usable: readonly boolean[],
  air: CircuitAir,
  phase: Uint8Array,
  probes: CircuitSignals['probes'],
  duty: Float64Array,
  log: Log,
): SetPointStep[] {
  const setPoint = circuit.setPoint;
  if (setPoint !== null && typeof setPoint !== 'number') return columnSteps(setPoint, log.grid);
  const chosen = probes.filter((_, i) => usable[i]);
  return levelSteps(chosen, duty, air.mean, phase, log.calendar);
}
