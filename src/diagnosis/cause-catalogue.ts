import type { CauseId } from '../model/finding.ts';

/** What to look at first for a cause (free checks before tools), and what to have in the van. */
export interface CauseAdvice {
  readonly checkFirst: readonly string[];
  readonly bring: readonly string[];
}

const iceKit = ['wet vacuum', 'hot water or steamer', 'drain auger', 'hand-held thermometer'];

export const causeAdvice: Readonly<{ [cause in CauseId]: CauseAdvice }> = {
  'airflow-or-ice': {
    checkFirst: [
      'look at coil, drain pan and honeycomb at the warm end for ice or dirt',
      'feel the discharge air along the line-up and see that every fan turns',
      'look for product or paper on the return grille',
    ],
    bring: [...iceKit, 'coil cleaner'],
  },
  'evaporator-fan': {
    checkFirst: [
      'see whether every fan at that place turns',
      'look for ice on the blade and a loose plug or harness',
      'measure the fan current and check its breaker',
    ],
    bring: ['fan motor', 'blade', 'bracket and plug'],
  },
  underfeeding: {
    checkFirst: [
      'read superheat at the coil outlet while the valve feeds',
      'look at the sight glass and measure subcooling at the case',
      'feel for a temperature drop across the liquid-line strainer and drier; check the bulb contact',
    ],
    bring: ['gauges and clamp thermometer', 'strainer', 'drier', 'valve or cage'],
  },
  overfeeding: {
    checkFirst: [
      'read superheat at the coil outlet while the valve feeds',
      'check bulb contact and insulation, or the pressure and temperature sensors of an electronic valve',
      'look for frost on the suction line towards the rack',
    ],
    bring: ['gauges and clamp thermometer', 'bulb strap and insulation', 'valve or cage'],
  },
  'door-or-load': {
    checkFirst: [
      'ask the store about stocking, promotions, doors and night curtains since that day',
      'look at the load line and the return grille',
      'check door gaskets, closers and hinges',
    ],
    bring: ['gasket', 'door closer', 'camera'],
  },
  'probe-offset': {
    checkFirst: [
      'hold a reference thermometer beside the probe for ten minutes',
      'put the probe into an ice bath: it must read 32 °F (0 °C)',
      'swap its channel with a neighbour: the fault goes with the probe or stays with the channel',
    ],
    bring: ['probe of the same type', 'splices', 'ice and reference thermometer'],
  },
  'probe-drift': {
    checkFirst: [
      'put the probe into an ice bath: it must read 32 °F (0 °C)',
      'open the splices and look for moisture and corrosion',
      'hold a reference thermometer beside the probe for ten minutes',
    ],
    bring: ['probe of the same type', 'splices', 'ice and reference thermometer'],
  },
  'probe-noise': {
    checkFirst: [
      'move the lead and watch the reading',
      'open the splices and look for moisture',
      'look whether the lead runs along power or heater cables',
    ],
    bring: ['splices', 'shielded cable', 'probe of the same type'],
  },
  'probe-stuck': {
    checkFirst: [
      'warm the probe by hand: the reading must move',
      'see whether the channel is overridden or held at its last value',
      'swap its channel with a neighbour',
    ],
    bring: ['probe of the same type', 'splices'],
  },
  'probe-open-or-short': {
    checkFirst: [
      'look for a cut, pinched or pulled lead',
      'unplug the probe and measure its resistance against the table of its type',
      'see whether the control has dropped the probe from its average',
    ],
    bring: ['probe of the same type', 'splices', 'multimeter'],
  },
  'probe-moved': {
    checkFirst: [
      'see where the probe hangs: in the discharge air, or fallen into return air or product',
      'ask who worked at the case that day',
      'hold a reference thermometer at its proper place',
    ],
    bring: ['probe clip', 'reference thermometer', 'probe of the same type'],
  },
  'probe-swapped': {
    checkFirst: [
      'warm one probe by hand and see which channel moves',
      'compare labels and the channel map',
      'ask who worked at the panel that day',
    ],
    bring: ['labels'],
  },
  'defrost-schedule': {
    checkFirst: [
      'read the schedule and the list of overrides',
      'force a defrost and see whether it starts and ends',
      'compare the clock of the control with the time of day',
    ],
    bring: ['the defrost schedule of the site'],
  },
  'defrost-heat': {
    checkFirst: [
      'force a defrost and measure the heater current on each leg',
      'check contactor, fuses and limit thermostat',
      'with hot gas: see whether its valve opens and the line gets warm',
    ],
    bring: ['heater', 'contactor', 'limit thermostat', 'clamp meter'],
  },
  'defrost-termination': {
    checkFirst: [
      'read the termination probe in a defrost: it must pass 32 °F (0 °C) after the melt',
      'see where the termination probe or thermostat sits on the coil',
      'compare the termination setting with the data sheet of the case',
    ],
    bring: ['termination probe or bimetal thermostat', 'ice and reference thermometer'],
  },
  drain: {
    checkFirst: [
      'pour water into the pan: it must run off at once',
      'look at trap, slope and drain heater',
      'look for water on the floor and ice at the pan',
    ],
    bring: iceKit,
  },
  'tight-differential': {
    checkFirst: [
      'read cut-in, cut-out and delays',
      'compare them with those of the sister circuits',
      'watch one cycle at the case or rack',
    ],
    bring: ['gauges', 'the set-point sheet of the site'],
  },
  'circuits-in-step': {
    checkFirst: [
      'watch the valves of the group: do they open at the same moment',
      'read differentials, delays and periods of the circuits: alike, they fall into step',
      'see how long the machines run at least: long runs are harmless',
    ],
    bring: ['the set-point sheet of the site'],
  },
  'compressor-control': {
    checkFirst: [
      'compare cut-in and cut-out with the suction pressure at each start and stop',
      'check unloaders, lead-lag order and minimum run times',
      'see whether a liquid valve leaks by after pump-down',
    ],
    bring: ['gauges', 'pressure control', 'solenoid kit'],
  },
  'low-charge': {
    checkFirst: [
      'read the liquid level against its usual range',
      'look at the sight glass and measure subcooling',
      'check for leaks where oil shows',
    ],
    bring: ['leak detector', 'gauges', 'recovery and charging equipment (licensed work)'],
  },
  'capacity-shortfall': {
    checkFirst: [
      'see which compressors really run, and which are tripped or locked out',
      'check unloaders and the current of each machine',
      'read target and float values',
    ],
    bring: ['gauges', 'clamp meter', 'unloader coil'],
  },
  condensing: {
    checkFirst: [
      'see whether every condenser fan turns',
      'look at the condenser face for dirt',
      'compare condensing with outdoor temperature',
    ],
    bring: ['coil cleaner', 'fan motor', 'gauges'],
  },
  'set-point': {
    checkFirst: [
      'read the set point and its history: it costs nothing',
      'ask who changed it and why',
      'compare with the set-point sheet of the site',
    ],
    bring: [],
  },
  'left-off': {
    checkFirst: [
      'read the override list and the schedule: it costs nothing',
      'see whether valve, fans and breaker are on',
      'ask who worked on it that day',
    ],
    bring: [],
  },
  'service-visit': {
    checkFirst: ['ask who was on site that day', 'see that every circuit and set point is back'],
    bring: [],
  },
  weather: { checkFirst: ['nothing to check: the whole store felt it'], bring: [] },
  'normal-variation': { checkFirst: ['nothing to check: it has always been so'], bring: [] },
  logging: {
    checkFirst: [
      'check the channel map and the name of the point',
      'check clock, network and logger',
      'export again before anybody drives out',
    ],
    bring: [],
  },
};
