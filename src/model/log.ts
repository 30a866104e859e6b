import type { DisplayUnits } from '../units/display-units.ts';
import type { Celsius, Kelvin, Kilopascal, Minutes } from '../units/quantities.ts';
import type { Calendar, Grid } from './grid.ts';
import type { Record, Target } from './record.ts';

/** One air probe of a circuit. */
export interface Probe {
  /** The point name; also the id of the probe everywhere. */
  readonly point: string;
  readonly record: Record;
  /** Place along the line-up, from 0; follows the order of the site file. */
  readonly position: number;
}

export type DefrostKind = 'off-cycle' | 'electric' | 'hot-gas';

export interface DefrostPlan {
  readonly kind: DefrostKind | null;
  /** 1 while defrosting, where the export logs it. */
  readonly status: Record | null;
  readonly perDay: number | null;
  readonly minutes: Minutes | null;
  /** Scheduled starts in local minutes of the day, where the site file gives them. */
  readonly starts: readonly Minutes[] | null;
}

export interface AlarmLimits {
  readonly high: Celsius;
  /** How long the value must stay above `high` before the alarm trips. */
  readonly minutes: Minutes;
}

/** One line-up: one control loop, one to six cases, usually one air probe a case. */
export interface Circuit {
  readonly id: string;
  readonly name: string;
  readonly suctionGroup: string | null;
  readonly setPoint: Target | null;
  /** The dead band of the control. */
  readonly differential: Kelvin | null;
  /** What the controller steers on: the average, the warmest, the coldest, or the point of one probe. */
  readonly controls: 'average' | 'warmest' | 'coldest' | { readonly probe: string };
  readonly probes: readonly Probe[];
  readonly returnAir: readonly Record[];
  readonly coilOut: readonly Record[];
  readonly product: readonly Record[];
  readonly defrostTermination: readonly Record[];
  /** On/off (0, 1) or a fraction open. */
  readonly valve: Record | null;
  readonly superheat: Record | null;
  readonly defrost: DefrostPlan;
  readonly limits: AlarmLimits | null;
}

export interface SuctionGroup {
  readonly id: string;
  readonly rack: string;
  /** As in the site file, `R-448A`; null when nobody said. */
  readonly refrigerant: string | null;
  readonly class: 'medium' | 'low' | null;
  readonly pressure: Record | null;
  readonly pressureSetPoint: Target | null;
  readonly compressors: readonly Record[];
  readonly discharge: Record | null;
  readonly liquidLevel: Record | null;
  /** Any further rack point by its name in the site file. */
  readonly others: Readonly<{ [name: string]: Record }>;
}

export type { DisplayUnits } from '../units/display-units.ts';

/** A store's history, aligned and in inside units: what every analysis reads. */
export interface Log {
  readonly site: string;
  readonly units: DisplayUnits;
  /** Local atmospheric pressure, by which gauge readings were raised. */
  readonly atmosphere: Kilopascal;
  readonly grid: Grid;
  readonly calendar: Calendar;
  readonly suctionGroups: readonly SuctionGroup[];
  readonly circuits: readonly Circuit[];
  /** Points of the export that no circuit or suction group uses. */
  readonly unassigned: readonly Record[];
}
