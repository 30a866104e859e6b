import type { Circuit, DefrostPlan, SuctionGroup } from '../../model/log.ts';
import type { Record, Target } from '../../model/record.ts';
import { celsiusFrom, kelvinDifferenceFrom, kilopascalFrom } from '../../units/convert.ts';
import type { Kilopascal } from '../../units/quantities.ts';
import type { SiteCircuit, SiteRack, SiteSuctionGroup, SiteTarget } from '../site-file/site-file.ts';
import { meaningOf, type Place, type UnitsInForce } from './meaning.ts';
import type { PlacedPoints } from './place-points.ts';
import type { RecordShelf } from './record-shelf.ts';

/** Minutes above the limit before the alarm trips, where the site file gives only the limit. Common practice. */
const usualAlarmMinutes = 60;

/** The units in which the numbers of the site file itself are written. */
export interface SiteFileUnits {
  readonly temperature: 'degF' | 'degC' | 'K';
  readonly pressure: 'psig' | 'psia' | 'bar' | 'barg' | 'kPa';
}

/** Turns the site file's words into circuits and suction groups of records. */
export class SiteBuilder {
  readonly #placed: PlacedPoints;
  readonly #shelf: RecordShelf;
  readonly #unitsInForce: UnitsInForce;
  readonly #units: SiteFileUnits;
  readonly #atmosphere: Kilopascal;

  constructor(
    placed: PlacedPoints,
    shelf: RecordShelf,
    unitsInForce: UnitsInForce,
    units: SiteFileUnits,
    atmosphere: Kilopascal,
  ) {
    this.#placed = placed;
    this.#shelf = shelf;
    this.#unitsInForce = unitsInForce;
    this.#units = units;
    this.#atmosphere = atmosphere;
  }

  circuit(circuit: SiteCircuit): Circuit {
    const probes = this.#records(circuit.probes, 'temperature');
    return {
      id: circuit.id,
      name: circuit.name ?? circuit.id,
      suctionGroup: circuit.suctionGroup ?? null,
      setPoint: this.#target(circuit.setPoint, 'temperature', (value) =>
        celsiusFrom(value, this.#units.temperature),
      ),
      differential:
        circuit.differential === undefined
          ? null
          : kelvinDifferenceFrom(circuit.differential, this.#units.temperature),
      controls: this.#controls(circuit.controls),
      probes: probes.map((record, position) => ({ point: record.point, record, position })),
      returnAir: this.#records(circuit.returnAir, 'temperature'),
      coilOut: this.#records(circuit.coilOut, 'temperature'),
      product: this.#records(circuit.product, 'temperature'),
      defrostTermination: this.#records(circuit.defrostTermination, 'temperature'),
      valve: this.#record(circuit.valve, 'valve'),
      superheat: this.#record(circuit.superheat, 'temperature-difference'),
      defrost: this.#defrost(circuit.defrost),
      limits:
        circuit.limits === undefined
          ? null
          : {
              high: celsiusFrom(circuit.limits.high, this.#units.temperature),
              minutes: circuit.limits.minutes ?? usualAlarmMinutes,
            },
    };
  }

  suctionGroup(group: SiteSuctionGroup, rack: SiteRack): SuctionGroup {
    const others = Object.entries(group.others ?? {}).flatMap(([name, point]) => {
      const record = this.#record(point, 'any');
      return record === null ? [] : [[name, record] as const];
    });
    return {
      id: group.id,
      rack: rack.id,
      refrigerant: rack.refrigerant ?? null,
      class: group.class ?? null,
      pressure: this.#record(group.pressure, 'pressure'),
      pressureSetPoint: this.#target(group.pressureSetPoint, 'pressure', (value) =>
        kilopascalFrom(value, this.#pressureUnit(group), this.#atmosphere),
      ),
      compressors: this.#records(group.compressors, 'status'),
      discharge: this.#record(group.discharge, 'pressure'),
      liquidLevel: this.#record(group.liquidLevel, 'level'),
      others: Object.fromEntries(others),
    };
  }

  /** A set point is written as the gauge at the rack reads: in the unit of the suction pressure point. */
  #pressureUnit(group: SiteSuctionGroup) {
    const point = group.pressure === undefined ? null : this.#placed.find(group.pressure);
    return (point === null ? null : (this.#unitsInForce.get(point) ?? point.unit)) ?? this.#units.pressure;
  }

  #record(name: string | undefined, place: Place): Record | null {
    const point = name === undefined ? null : this.#placed.find(name);
    return point === null ? null : this.#shelf.recordOf(point, meaningOf(point, place, this.#unitsInForce));
  }

  #records(names: readonly string[] | undefined, place: Place): Record[] {
    return (names ?? []).flatMap((name) => this.#record(name, place) ?? []);
  }

  #target(target: SiteTarget | undefined, place: Place, inside: (value: number) => number): Target | null {
    if (target === undefined) return null;
    return typeof target === 'number' ? inside(target) : this.#record(target.point, place);
  }

  #controls(controls: string | undefined): Circuit['controls'] {
    if (controls === undefined) return 'average';
    if (controls === 'average' || controls === 'warmest' || controls === 'coldest') return controls;
    return { probe: this.#placed.find(controls)?.name ?? controls };
  }

  #defrost(defrost: SiteCircuit['defrost']): DefrostPlan {
    return {
      kind: defrost?.kind ?? null,
      status: this.#record(defrost?.status, 'status'),
      perDay: defrost?.perDay ?? null,
      minutes: defrost?.minutes ?? null,
      starts: defrost?.starts?.map(minuteOfDay) ?? null,
    };
  }
}

function minuteOfDay(clockTime: string): number {
  const [hour, minute] = clockTime.split(':').map(Number);
  return hour! * 60 + minute!;
}
