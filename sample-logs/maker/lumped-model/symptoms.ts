/** What a fault or event does to the curves of one circuit at one minute: signatures, not causes. */
export interface Symptoms {
  /** Rise of each place before the control reacts to it, K. */
  readonly rise: Float64Array;
  /** Share of that rise which is still there during defrost. */
  readonly riseInDefrost: Float64Array;
  /** How the ripple, the defrost rise and the recovery time of each place are scaled. */
  readonly swing: Float64Array;
  readonly defrostRise: Float64Array;
  readonly recovery: Float64Array;
  readonly scatter: Float64Array;
  /** 0 sound, 1 stuck, 2 reads −60 °C, 3 reads 140 °C. */
  readonly channel: Uint8Array;
  /** Rise of the whole line-up that the valve cannot make good, K. */
  unreachable: number;
  dutyAdded: number;
  superheatAdded: number;
  /** How the distance of the return air from the discharge air is scaled. */
  returnGap: number;
  setPointShift: number;
  /** Valve period in minutes where the control is not its own; 0 for its own. */
  period: number;
  /** Whether that period is kept by one clock for all circuits. */
  inStep: boolean;
  /** Minutes by which the control's clock is ahead of the time of day. */
  clockAhead: number;
  forced: 'none' | 'off' | 'on';
  skipDefrost: boolean;
  /** True when a defrost runs to its longest time. */
  defrostToTime: boolean;
}

export interface GroupSymptoms {
  /** Kelvin of saturated suction temperature. */
  suction: number;
  suctionWithSetPoint: number;
  /** Kelvin of float at which the target stands where it is switched off; null while it works. */
  floatFixed: number | null;
  floatAtLowest: boolean;
  allMachinesOn: boolean;
  /** Minutes of run and rest of the last machine; 0 for its own. */
  trimMinutes: number;
  trimRest: number;
  pulledDown: boolean;
  condensing: number;
  /** Share of its usual level at which the liquid stands in the receiver. */
  liquidShare: number;
}

/** `clock` is the minute of the day, for what is worse by day. */
export type CircuitSymptom = (symptoms: Symptoms, minute: number, clock: number) => void;
export type GroupSymptom = (symptoms: GroupSymptoms, minute: number) => void;

export function createSymptoms(places: number): Symptoms {
  const symptoms: Symptoms = {
    rise: new Float64Array(places),
    riseInDefrost: new Float64Array(places),
    swing: new Float64Array(places),
    defrostRise: new Float64Array(places),
    recovery: new Float64Array(places),
    scatter: new Float64Array(places),
    channel: new Uint8Array(places),
    unreachable: 0,
    dutyAdded: 0,
    superheatAdded: 0,
    returnGap: 1,
    setPointShift: 0,
    period: 0,
    inStep: false,
    clockAhead: 0,
    forced: 'none',
    skipDefrost: false,
    defrostToTime: false,
  };
  clearSymptoms(symptoms);
  return symptoms;
}

export function clearSymptoms(symptoms: Symptoms): void {
  symptoms.rise.fill(0);
  symptoms.riseInDefrost.fill(1);
  symptoms.swing.fill(1);
  symptoms.defrostRise.fill(1);
  symptoms.recovery.fill(1);
  symptoms.scatter.fill(0);
  symptoms.channel.fill(0);
  Object.assign(symptoms, {
    unreachable: 0,
    dutyAdded: 0,
    superheatAdded: 0,
    returnGap: 1,
    setPointShift: 0,
    period: 0,
    inStep: false,
    clockAhead: 0,
    forced: 'none',
    skipDefrost: false,
    defrostToTime: false,
  });
}

export function createGroupSymptoms(): GroupSymptoms {
  return {
    suction: 0,
    suctionWithSetPoint: 0,
    floatFixed: null,
    floatAtLowest: false,
    allMachinesOn: false,
    trimMinutes: 0,
    trimRest: 0,
    pulledDown: false,
    condensing: 0,
    liquidShare: 1,
  };
}
