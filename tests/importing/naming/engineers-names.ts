import { pad, worded } from './dialects.ts';
import type { Dialect } from './invented-store.ts';

/** Stores as engineers of other habits would name them: each held a word or a layout of words that was read wrongly once. */

const spaced = (owner: string, word: string): string => `${owner} ${word}`;
const dashed = (owner: string, word: string): string => `${owner}-${word}`;
const oneOf =
  (...names: readonly string[]) =>
  (index: number): string =>
    names[index]!;
const racks = (group: number): string => `Rack ${'AB'[group]}`;
const common = { suction: 'Suction Press', compressor: (n: number) => `Comp ${n + 1}` };

export const engineersNames: readonly Dialect[] = [
  {
    title: 'a unit in camel case before the number: a01DischargeAirTempDegF1',
    temperature: 'degF',
    unitsStated: true,
    name: worded(
      (c) => (c < 4 ? `a${pad(c)}` : `b${pad(c - 4)}`),
      (g) => `rack${'AB'[g]}`,
      {
        air: (p) => `DischargeAirTempDegF${p + 1}`,
        set: 'SetpointDegF',
        defrost: 'DefrostActive',
        valve: 'LiquidValveOpen',
        superheat: 'SuperheatDegF',
        suction: 'SuctionPressurePsig',
        compressor: (n) => `Compressor${n + 1}Running`,
      },
      (owner, word) => `${owner}${word}`,
    ),
  },
  {
    title: 'circuits called by letters that say a role elsewhere: SH Air 1, RA Setpoint',
    temperature: 'degF',
    unitsStated: true,
    name: worded(
      oneOf('SH', 'RA', 'DEF', 'HP', 'PROD', 'ON'),
      racks,
      { air: (p) => `Air ${p + 1}`, set: 'Setpoint', defrost: 'Defrost', valve: 'Solenoid', ...common },
      spaced,
    ),
  },
  {
    title: 'PROD is produce: CKT01 PROD T1',
    temperature: 'degF',
    unitsStated: false,
    name: worded(
      oneOf('CKT01 PROD', 'CKT02 DAIRY', 'CKT03 MEAT', 'CKT04 DELI', 'CKT05 FRZN', 'CKT06 ICE'),
      (g) => `RK ${'AB'[g]}`,
      {
        air: (p) => `T${p + 1}`,
        set: 'SET',
        defrost: 'DFR',
        valve: 'SOL',
        suction: 'SUC PR',
        suctionSet: 'SUC SP',
        compressor: (n) => `CMP ${n + 1} STS`,
      },
      spaced,
    ),
  },
  {
    title: 'ends by word: Island Air East, Air West',
    temperature: 'degF',
    unitsStated: true,
    name: worded(
      (c) => `L${c + 1} ${['Meat', 'Dairy', 'Deli', 'Island', 'Coffin 1', 'Coffin 2'][c]}`,
      racks,
      {
        air: (p) => `Air ${['East', 'North', 'South', 'West'][p]}`,
        set: 'Setpoint',
        defrost: 'Defrost On',
        valve: 'Liquid Sol',
        ...common,
      },
      spaced,
    ),
  },
  {
    title: 'the number of the probe behind that of the circuit: 01.2 Fruit Air',
    temperature: 'degC',
    unitsStated: true,
    name: (part) => {
      const goods = ['Fruit', 'Veg', 'Milk', 'Butter', 'Peas', 'Ices'];
      if (part.what === 'air') return `${pad(part.circuit)}.${part.probe + 1} ${goods[part.circuit]} Air`;
      return worded(
        (c) => `${pad(c)} ${goods[c]}`,
        racks,
        { set: 'Setpoint', defrost: 'Defrost', valve: 'Solenoid', ...common },
        spaced,
      )(part);
    },
  },
  {
    title: 'numbers behind every word: Meat 2 SP1 beside Meat 1',
    temperature: 'degF',
    unitsStated: false,
    name: worded(
      oneOf('Meat 1', 'Meat 2', 'Dairy 1', 'Dairy 2', 'Frozen 1', 'Frozen 2'),
      racks,
      {
        air: (p) => `DA${p + 1}`,
        return: 'RA1',
        set: 'SP1',
        defrost: 'DF1',
        valve: 'LV1',
        suction: 'SucP',
        compressor: (n) => `Cmp${n + 1}`,
      },
      spaced,
    ),
  },
  {
    title: 'left hand and right hand, letters for circuits, R1-C1 a compressor: C-Air-RH',
    temperature: 'degF',
    unitsStated: true,
    name: worded(
      oneOf('S1', 'S2', 'C', 'A', 'F', 'B'),
      (g) => `R${g + 1}`,
      {
        air: (p) => `Air-${['LH', 'CTR', 'RH'][p] ?? 'RR'}`,
        set: 'Setpt',
        defrost: 'Dfr',
        valve: 'Sol',
        suction: 'SucP',
        compressor: (n) => `C${n + 1}`,
      },
      dashed,
    ),
  },
  {
    title: 'air by where it meets the coil: Leaving Air Temp Case 12',
    temperature: 'degF',
    unitsStated: true,
    name: (part) => {
      const said = worded(
        (c) => `Case ${c + 12}`,
        racks,
        {
          air: (p) => `Leaving Air Temp ${'ABCD'[p]}`,
          return: 'Entering Air Temp',
          coil: 'Coil Leaving Temp',
          set: 'Temp Setpoint',
          defrost: 'Defrost Cycle',
          valve: 'Liquid Line Solenoid',
          suction: 'Suction Pressure',
          compressor: (n) => `Compressor ${n + 1}`,
        },
        (owner, word) => `${word} ${owner}`,
      );
      return said(part);
    },
  },
  {
    title: 'circuits called by a letter that says a kind elsewhere: T1 T2, D1 Dfst',
    temperature: 'degF',
    unitsStated: false,
    name: worded(
      oneOf('T1 Trout', 'T2 Tofu', 'D1 Dairy', 'V1 Veal', 'F1 Frozen', 'P1 Peas'),
      (g) => 'AB'[g]!,
      {
        air: (p) => `Disc Air Door ${2 * p + 1}`,
        set: 'Stpt',
        defrost: 'Dfst',
        valve: 'Liq Line',
        suction: 'Suct Press',
        compressor: (n) => `Compr ${n + 1}`,
      },
      spaced,
    ),
  },
  {
    title: 'what is measured in one letter before the word: TK Truhe T-Zuluft',
    temperature: 'degC',
    unitsStated: true,
    name: worded(
      oneOf('K1 Obst', 'K2 Wurst', 'K3 Regal', 'K4 Käse', 'K5 TK Truhe', 'K6 TK Insel'),
      (g) => ['NK', 'TK'][g]!,
      {
        air: (p) => `T-Zuluft ${p + 1}`,
        return: 'T-Abluft',
        set: 'T-Soll',
        defrost: 'Abtau-Status',
        valve: 'Magnetventil',
        superheat: 'Überhitzung',
        suction: 'Niederdruck',
        compressor: (n) => `Kompressor ${n + 1}`,
      },
      spaced,
    ),
  },
  {
    title: 'a room whose air is called space: Prep Space Temp',
    temperature: 'degF',
    unitsStated: true,
    name: worded(
      oneOf(
        'Zone 1 Meat Cutting',
        'Zone 2 Produce Prep',
        'Zone 3 Cheese Room',
        'Zone 4 Deli',
        'Zone 5 Freezer',
        'Zone 6 Ice',
      ),
      racks,
      {
        air: (p) => `Space Temp ${p + 1}`,
        set: 'Space Temp Setpoint',
        defrost: 'Defrost Enable',
        valve: 'Valve',
        coil: 'Coil Leaving Temp',
        ...common,
      },
      spaced,
    ),
  },
  {
    title: 'furniture of several kinds, each counted from 1: Regal 1, Truhe 1',
    temperature: 'degC',
    unitsStated: true,
    name: worded(
      oneOf('Regal 1', 'Regal 2', 'Vitrine 1', 'Vitrine 2', 'Truhe 1', 'Truhe 2'),
      (g) => `Verbund ${['NK', 'TK'][g]!}`,
      {
        air: (p) => `Zuluft ${p + 1}`,
        set: 'Sollwert',
        defrost: 'Abtauung',
        valve: 'Magnetventil',
        suction: 'Saugdruck',
        compressor: (n) => `Verdichter ${n + 1}`,
      },
      spaced,
    ),
  },
  {
    title: 'a unit in camel case behind a place: Deli1_Left_DegF',
    temperature: 'degF',
    unitsStated: true,
    name: worded(
      oneOf('Prod1', 'Prod2', 'Deli1', 'Meat1', 'Froz1', 'Froz2'),
      (g) => `Rack${'AB'[g]}`,
      {
        air: (p) => `${['Far_Left', 'Left', 'Ctr', 'Right'][p]}_DegF`,
        set: 'Set_DegF',
        defrost: 'Defrost',
        valve: 'Sol',
        suction: 'Suct_PSI',
        compressor: (n) => `CP${n + 1}_RUN`,
      },
      (owner, word) => `${owner}_${word}`,
    ),
  },
];
