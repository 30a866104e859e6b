import type { FaultName } from '../fault-catalogue.ts';
import type { Random } from '../random.ts';
import type { CircuitHabits, GroupHabits } from './parameters.ts';
import type { CircuitSymptom, GroupSymptom } from './symptoms.ts';

/** Times in minutes, size in kelvin. */
export interface Strike {
  readonly random: Random;
  readonly circuit: CircuitHabits;
  readonly group: GroupHabits;
  readonly strength: 'full' | 'mild';
  readonly place: number;
  readonly onset: number;
  readonly over: number;
  readonly kelvin: number;
}

export interface Signs {
  readonly circuit?: CircuitSymptom;
  /** What every circuit of the group shows. */
  readonly everyCircuit?: CircuitSymptom;
  /** What each circuit of the group shows, by its habits. */
  readonly eachCircuit?: (habits: CircuitHabits) => CircuitSymptom;
  readonly group?: GroupSymptom;
  readonly size?: number;
  readonly sizeUnit?: string;
}

/** Grows from 0 to 1: slowly at first where ice feeds on itself, evenly, or at once. */
function growth(minute: number, { onset, over }: Strike, how: 'even' | 'gathering' | 'once'): number {
  if (minute < onset) return 0;
  if (how === 'once') return 1;
  const share = Math.min(1, (minute - onset) / over);
  return how === 'even' ? share : share ** 1.3;
}

const byDay = (clock: number): number => (clock > 480 && clock < 1260 ? 1 : -1);

/** Real warming of one place: worse by day, and not the same in defrost. */
function localWarmth(
  strike: Strike,
  how: 'even' | 'gathering' | 'once',
  look: { dayNight: number; inDefrost: number; swing: number; defrostRise: number; recovery: number },
): CircuitSymptom {
  return (symptoms, minute, clock) => {
    const share = growth(minute, strike, how);
    if (share === 0) return;
    const { place } = strike;
    symptoms.rise[place] = strike.kelvin * share * (1 + look.dayNight * byDay(clock));
    symptoms.riseInDefrost[place] = look.inDefrost;
    symptoms.swing[place] = 1 - (1 - look.swing) * share;
    symptoms.defrostRise[place] = 1 - (1 - look.defrostRise) * share;
    symptoms.recovery[place] = 1 + (look.recovery - 1) * share;
  };
}

/** A false rise: the same by day, by night and in defrost; the place itself behaves as before. */
function falseRise(strike: Strike, how: 'even' | 'once'): CircuitSymptom {
  return (symptoms, minute) => {
    symptoms.rise[strike.place] = strike.kelvin * growth(minute, strike, how);
  };
}

/** `returnGap`: how far the air then warms on its way to the return, against before. */
function wholeWarmth(strike: Strike, superheat: number, returnGap: number): CircuitSymptom {
  return (symptoms, minute) => {
    const share = growth(minute, strike, 'even');
    symptoms.dutyAdded = Math.min(1, 3 * share) * 0.5;
    symptoms.unreachable = strike.kelvin * Math.max(0, (share - 0.25) / 0.75);
    symptoms.superheatAdded = superheat * share;
    symptoms.returnGap = 1 + (returnGap - 1) * share;
    symptoms.recovery.fill(1 + 1.5 * share);
  };
}

/** Its valve feeds longer by up to `most`; what it cannot make good the air shows, most by day. */
function starvedByAll(strike: Strike, habits: CircuitHabits, most: number): CircuitSymptom {
  return (symptoms, minute, clock) => {
    const share = growth(minute, strike, 'even');
    const isOpen = clock >= habits.openMinute && clock < habits.closeMinute;
    const need = (isOpen ? habits.dutyByDay : habits.dutyByNight) + most * share;
    symptoms.dutyAdded = most * share;
    symptoms.unreachable = 9 * Math.max(0, need - 1);
    symptoms.superheatAdded = 8 * share;
    symptoms.recovery.fill(1 + 3 * share * Math.max(0.2, need - 0.6));
  };
}

const after =
  (strike: Strike, act: CircuitSymptom): CircuitSymptom =>
  (symptoms, minute, clock) => {
    if (minute >= strike.onset) act(symptoms, minute, clock);
  };
const groupAfter =
  (strike: Strike, act: GroupSymptom): GroupSymptom =>
  (symptoms, minute) => {
    if (minute >= strike.onset) act(symptoms, minute);
  };

export const signsOf: { readonly [name in FaultName]: (strike: Strike) => Signs } = {
  'iced-end': (s) => ({
    circuit: localWarmth(s, 'gathering', {
      dayNight: 0.25,
      inDefrost: 0.2,
      swing: 0.5,
      defrostRise: 0.3,
      recovery: 1.8,
    }),
  }),
  'fan-failed': (s) => ({
    circuit: localWarmth(s, 'once', {
      dayNight: 0.14,
      inDefrost: 0.65,
      swing: 0.7,
      defrostRise: 0.92,
      recovery: 1.5,
    }),
  }),
  'airflow-blocked': (s) => ({
    circuit: localWarmth(s, 'even', {
      dayNight: 0.18,
      inDefrost: 0.6,
      swing: 0.7,
      defrostRise: 0.88,
      recovery: 1.5,
    }),
  }),
  'probe-moved': (s) => ({
    circuit: localWarmth(s, 'once', {
      dayNight: 0.22,
      inDefrost: 0.5,
      swing: 0.85,
      defrostRise: 0.95,
      recovery: 1.1,
    }),
  }),
  'probe-step': (s) => ({ circuit: falseRise(s, 'once') }),
  'probe-creep': (s) => ({ circuit: falseRise(s, 'even') }),
  'probe-flutter': (s) => {
    const size = s.strength === 'full' ? 2 : 0.8;
    return {
      circuit: after(s, (symptoms) => {
        symptoms.scatter[s.place] = size;
      }),
      size,
    };
  },
  'probe-stuck': (s) => ({
    circuit: after(s, (symptoms) => {
      symptoms.channel[s.place] = 1;
    }),
    size: 0,
  }),
  'probe-open': (s) => {
    const rail = s.random.chance(0.5) ? 2 : 3;
    return {
      circuit: after(s, (symptoms) => {
        symptoms.channel[s.place] = rail;
      }),
      size: 60,
    };
  },
  'probes-swapped': () => ({ size: 0 }),
  underfeed: (s) => ({ circuit: wholeWarmth(s, 9, 0.93) }),
  'circuit-drift': (s) => ({ circuit: wholeWarmth(s, 0.5, 1.5) }),
  'recovery-lengthening': (s) => {
    const times = s.strength === 'full' ? 3 : 2;
    const circuit: CircuitSymptom = (symptoms, minute) => {
      const share = growth(minute, s, 'even');
      symptoms.recovery.fill(1 + (times - 1) * share);
      symptoms.dutyAdded = 0.12 * share;
    };
    return { circuit, size: times, sizeUnit: '1' };
  },
  'defrost-missed': (s) => {
    const { starts } = s.circuit.defrost;
    const keep = s.strength === 'full' ? Math.floor(starts.length / 3) : Math.max(1, starts.length - 1);
    const skipped = new Set(starts.slice(keep));
    return {
      circuit: after(s, (symptoms, _, clock) => {
        symptoms.skipDefrost = skipped.has(clock);
      }),
      size: 1 - keep / starts.length,
      sizeUnit: '1',
    };
  },
  'heater-failed': (s) => {
    const left = s.strength === 'full' ? 0.35 : 0.55;
    const circuit: CircuitSymptom = (symptoms, minute) => {
      symptoms.defrostRise.fill(left);
      symptoms.defrostToTime = true;
      symptoms.dutyAdded = Math.min(0.25, (minute - s.onset) / 20_000);
      symptoms.recovery.fill(1 + Math.min(1.2, (minute - s.onset) / 7200));
    };
    return { circuit: after(s, circuit), size: 1 - left, sizeUnit: '1' };
  },
  'termination-failed': (s) => ({
    circuit: after(s, (symptoms) => {
      symptoms.defrostToTime = true;
    }),
    size: 1,
    sizeUnit: '1',
  }),
  'valve-short-cycle': (s) => {
    const size = s.strength === 'full' ? 3 : 5;
    return {
      circuit: after(s, (symptoms) => {
        symptoms.period = size;
      }),
      size,
      sizeUnit: 'min',
    };
  },
  'set-point-left': (s) => {
    const size = s.strength === 'full' ? s.random.between(1.7, 2.5) : s.random.between(0.9, 1.4);
    const kelvin = size * s.random.pick([-1, 1]);
    const end = s.onset + s.random.whole(90, 160);
    const circuit: CircuitSymptom = (symptoms, minute) => {
      if (minute < end) symptoms.forced = 'off';
      symptoms.setPointShift = kelvin;
    };
    return { circuit: after(s, circuit), size };
  },
  'clock-reset': (s) => {
    const size = s.strength === 'full' ? s.random.whole(100, 180) : s.random.whole(60, 95);
    const minutes = size * s.random.pick([-1, 1]);
    return {
      everyCircuit: after(s, (symptoms) => {
        symptoms.clockAhead = minutes;
      }),
      size,
      sizeUnit: 'min',
    };
  },
  'circuits-in-step': (s) => {
    const size = s.strength === 'full' ? 6 : 8;
    return {
      everyCircuit: after(s, (symptoms) => {
        symptoms.period = size;
        symptoms.inStep = true;
      }),
      group: groupAfter(s, (symptoms) => {
        symptoms.trimMinutes = size / 2;
        symptoms.trimRest = size / 2;
      }),
      size,
      sizeUnit: 'min',
    };
  },
  'float-frozen': (s) => {
    if (s.group.float === 0)
      throw new Error(`The target of ${s.group.id} does not float: ask for a floating store.`);
    const share = s.random.between(0.35, 0.65);
    const group = groupAfter(s, (symptoms) => {
      symptoms.floatFixed = share * s.group.float;
    });
    return { group, size: s.group.float };
  },
  'suction-target-left': (s) => {
    const size = s.strength === 'full' ? s.random.between(3, 4.5) : s.random.between(1.8, 2.5);
    const kelvin = size * s.random.pick([-1, 1]);
    const end = s.onset + s.random.whole(90, 180);
    return {
      everyCircuit: after(s, (symptoms, minute) => {
        if (minute < end) symptoms.forced = 'off';
      }),
      group: groupAfter(s, (symptoms, minute) => {
        if (minute < end) symptoms.pulledDown = true;
        symptoms.suctionWithSetPoint = kelvin;
      }),
      size,
    };
  },
  'left-off': (s) => ({
    circuit: after(s, (symptoms) => {
      symptoms.forced = 'off';
    }),
    size: 15,
  }),
  'override-on': (s) => ({
    circuit: after(s, (symptoms) => {
      symptoms.forced = 'on';
    }),
    size: 3,
  }),
  'door-ajar': (s) => {
    const returnGap = s.random.between(1.6, 3.2);
    return {
      circuit: after(s, (symptoms, _, clock) => {
        symptoms.dutyAdded = 0.5;
        symptoms.unreachable = s.kelvin * (1 + 0.12 * byDay(clock));
        symptoms.recovery.fill(1.6);
        symptoms.defrostRise.fill(1.25);
        symptoms.returnGap = returnGap;
      }),
    };
  },
  'local-leak': (s) => ({
    circuit: localWarmth(s, 'once', {
      dayNight: s.random.between(0, 0.2),
      inDefrost: s.random.between(0.75, 1.15),
      swing: s.random.between(0.9, 1.1),
      defrostRise: s.random.between(1, 1.25),
      recovery: s.random.between(1.3, 2.2),
    }),
  }),
  'compressor-short-cycle': (s) => {
    const size = s.strength === 'full' ? 2 : 3;
    const group: GroupSymptom = (symptoms) => {
      symptoms.trimMinutes = size;
      symptoms.trimRest = size;
    };
    return { group: groupAfter(s, group), size, sizeUnit: 'min' };
  },
  'low-pressure-trips': (s) => {
    const group: GroupSymptom = (symptoms) => {
      symptoms.trimMinutes = 1;
      symptoms.trimRest = 3;
    };
    return { group: groupAfter(s, group), size: 1, sizeUnit: '1' };
  },
  'suction-rise': (s) => {
    const size = s.strength === 'full' ? s.random.between(4, 6) : s.random.between(2.2, 3.2);
    return {
      group: (symptoms, minute) => {
        symptoms.suction = size * growth(minute, { ...s, over: s.over / 3 }, 'even');
      },
      size,
    };
  },
  'capacity-shortfall': (s) => {
    const size = s.strength === 'full' ? 4.5 : 3;
    const group: GroupSymptom = (symptoms, minute) => {
      symptoms.suction = size * (1 + 0.25 * byDay(minute % 1440));
      symptoms.allMachinesOn = true;
    };
    return { group: groupAfter(s, group), size };
  },
  'low-charge': (s) => {
    const most = s.strength === 'full' ? 0.44 : 0.34;
    return {
      eachCircuit: (habits) => starvedByAll(s, habits, most * s.random.between(0.85, 1.15)),
      group: (symptoms, minute) => {
        symptoms.liquidShare = 1 - 0.9 * growth(minute, { ...s, onset: s.onset - s.over }, 'even');
      },
      size: most,
      sizeUnit: '1',
    };
  },
  'condensing-high': (s) => {
    const size = s.strength === 'full' ? 9 : 5.5;
    return {
      group: groupAfter(s, (symptoms) => {
        symptoms.condensing = size;
      }),
      size,
    };
  },
};
