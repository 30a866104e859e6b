import { circuits, type Dialect, type StorePart } from './invented-store.ts';

/** Ways to name columns, all invented for these tests: words in many orders, terse, glued, in other languages. */

export const pad = (number: number): string => String(number + 1).padStart(2, '0');
const letter = (number: number): string => 'ABCDEF'[number]!;
const hasProbe = (part: StorePart): part is StorePart & { probe: number } => part.what === 'air';

/** A dialect from words: `circuit` and `group` name their thing, the rest says what of it. */
export function worded(
  circuit: (index: number) => string,
  group: (index: number) => string,
  words: { readonly [what in StorePart['what']]?: string | ((place: number) => string) },
  join: (owner: string, word: string) => string,
) {
  return (part: StorePart): string | null => {
    const word = words[part.what];
    if (word === undefined) return null;
    const place = hasProbe(part) ? part.probe : part.what === 'compressor' ? part.number : 0;
    const text = typeof word === 'string' ? word : word(place);
    if ('circuit' in part) return join(circuit(part.circuit), text);
    if ('group' in part) return join(group(part.group), text);
    return text;
  };
}

const departments = ['Meat', 'Dairy', 'Deli', 'Produce', 'Ice Cream', 'Frozen Veg'];

const ends: { readonly [probes: number]: string } = { 2: 'LR', 3: 'LCR', 4: 'LCMR' };
const besideLetters = worded(
  (c) => `${pad(c)} ${departments[c]}`,
  (g) => `Rack ${letter(g)}`,
  {
    set: 'Setpoint',
    defrost: 'Defrost',
    valve: 'Liquid Valve',
    suction: 'Suction Pressure',
    compressor: (n) => `Compressor ${n + 1} Run`,
  },
  (owner, word) => `${owner} ${word}`,
);

/** Goods and furniture, each with a word that also says what a point is. */
const soundLikePoints = [
  'Fish counter',
  'Light yogurt',
  'Water reach-in',
  'Frozen food',
  'Pizza doors',
  'Store room',
];

export const dialects: readonly Dialect[] = [
  {
    title: 'terse: C01 probe 1',
    temperature: 'degC',
    unitsStated: false,
    name: worded(
      (c) => `C${pad(c)}`,
      (g) => `R${g + 1}`,
      {
        air: (p) => `probe ${p + 1}`,
        defrost: 'defrost',
        valve: 'valve',
        suction: 'suction',
        discharge: 'discharge',
        compressor: (n) => `comp ${n + 1}`,
      },
      (owner, word) => `${owner} ${word}`,
    ),
  },
  {
    title: 'sentences: Meat 3 - Air Temp B',
    temperature: 'degF',
    unitsStated: true,
    name: worded(
      (c) => `${departments[c]} ${c + 3}`,
      (g) => `Rack A Group ${g + 1}`,
      {
        air: (p) => `Air Temp ${letter(p)}`,
        set: 'Setpoint',
        defrost: 'Defrost Status',
        valve: 'Liquid Solenoid',
        return: 'Return Air',
        superheat: 'Superheat',
        average: 'Average Temp',
        suction: 'Suction Pressure',
        suctionSet: 'Suction Setpoint',
        compressor: (n) => `Compressor ${n + 1} Run`,
        discharge: 'Head Pressure',
        level: 'Receiver Level',
        outdoor: 'Outdoor Air Temp',
        indoor: 'Store Temp',
        humidity: 'Store Humidity',
      },
      (owner, word) => `${owner} - ${word}`,
    ),
  },
  {
    title: 'dotted: M01.air.a',
    temperature: 'degF',
    unitsStated: false,
    name: worded(
      (c) => (c < 4 ? `M${pad(c)}` : `L${pad(c)}`),
      (g) => `S${g + 1}`,
      {
        air: (p) => `air.${letter(p).toLowerCase()}`,
        set: 'sp',
        defrost: 'dfr',
        valve: 'liq',
        suction: 'suct',
        compressor: (n) => `comp.${n + 1}`,
        discharge: 'disch',
        level: 'liqlvl',
        outdoor: 'oat',
      },
      (owner, word) => `${owner}.${word}`,
    ),
  },
  {
    title: 'probe first: temp_1_circuit_4',
    temperature: 'degF',
    unitsStated: false,
    name: worded(
      (c) => `circuit_${c + 1}`,
      (g) => `group_${g + 1}`,
      {
        air: (p) => `temp_${p + 1}`,
        set: 'setpoint',
        defrost: 'defrost_status',
        valve: 'solenoid',
        suction: 'suction_pressure',
        compressor: (n) => `compressor_${n + 1}_status`,
        discharge: 'discharge_pressure',
        level: 'liquid_level',
        humidity: 'store_rh',
      },
      (owner, word) => `${word}_${owner}`,
    ),
  },
  {
    title: 'one file a circuit: Probe 1',
    temperature: 'degC',
    unitsStated: true,
    name: worded(
      () => '',
      (g) => `S${g + 1}`,
      {
        air: (p) => `Probe ${p + 1}`,
        set: 'Set',
        defrost: 'Defrost',
        valve: 'Valve',
        suction: 'Suction',
        compressor: (n) => `Compressor ${n + 1}`,
        level: 'Receiver',
      },
      (owner, word) => `${owner} ${word}`.trim(),
    ),
    file: (part) => ('circuit' in part ? `K${pad(part.circuit)}` : 'rack'),
  },
  {
    title: 'German: Kühlstelle 3 Fühler 1',
    temperature: 'degC',
    unitsStated: true,
    name: worded(
      (c) => `Kühlstelle ${c + 1}`,
      (g) => ['NK', 'TK'][g]!,
      {
        air: (p) => `Fühler ${p + 1} [°C]`,
        set: 'Sollwert [°C]',
        defrost: 'Abtauung',
        valve: 'Magnetventil',
        average: 'Mittelwert [°C]',
        suction: 'Saugdruck [bar]',
        suctionSet: 'Saugdruck Sollwert [bar]',
        compressor: (n) => `Verdichter ${n + 1}`,
        discharge: 'Hochdruck [bar]',
        level: 'Füllstand Sammler [%]',
        outdoor: 'Außentemperatur [°C]',
      },
      (owner, word) => `${owner} ${word}`,
    ),
  },
  {
    title: 'French: Vitrine 3 sonde 1',
    temperature: 'degC',
    unitsStated: false,
    name: worded(
      (c) => `Vitrine ${c + 1}`,
      (g) => ['positif', 'négatif'][g]!,
      {
        air: (p) => `sonde ${p + 1}`,
        set: 'consigne',
        defrost: 'dégivrage',
        valve: 'électrovanne',
        suction: 'pression aspiration',
        compressor: (n) => `compresseur ${n + 1}`,
        discharge: 'pression refoulement',
        outdoor: 'température extérieure',
      },
      (owner, word) => `${owner} ${word}`,
    ),
  },
  {
    title: 'Spanish: Circuito 3 - Sonda aire 1',
    temperature: 'degC',
    unitsStated: true,
    name: worded(
      (c) => `Circuito ${c + 1}`,
      (g) => `Grupo ${g + 1}`,
      {
        air: (p) => `Sonda aire ${p + 1}`,
        set: 'Consigna',
        defrost: 'Desescarche',
        valve: 'Válvula',
        return: 'Retorno aire',
        suction: 'Presión aspiración',
        compressor: (n) => `Compresor ${n + 1}`,
        discharge: 'Presión condensación',
      },
      (owner, word) => `${owner} - ${word}`,
    ),
  },
  {
    title: 'tags of an open vocabulary: circuit-4 discharge air temp sensor 2',
    temperature: 'degF',
    unitsStated: true,
    name: worded(
      (c) => `circuit-${c + 1}`,
      (g) => `suction-group-${g + 1}`,
      {
        air: (p) => `discharge air temp sensor ${p + 1}`,
        set: 'discharge air temp sp',
        defrost: 'x-defrost enable sensor',
        valve: 'valve cmd',
        return: 'return air temp sensor',
        suction: 'refrig pressure sensor suction',
        compressor: (n) => `compressor ${n + 1} run sensor`,
        discharge: 'condenser refrig pressure sensor',
        level: 'refrig level sensor',
        outdoor: 'outside air temp sensor',
      },
      (owner, word) => `${owner} ${word}`,
    ),
  },
  {
    title: 'classes of an open vocabulary: Circuit_4.Supply_Air_Temperature_Sensor_2',
    temperature: 'degC',
    unitsStated: false,
    name: worded(
      (c) => `Circuit_${c + 1}`,
      (g) => `Group_${g + 1}`,
      {
        air: (p) => `Supply_Air_Temperature_Sensor_${p + 1}`,
        set: 'Supply_Air_Temperature_Setpoint',
        defrost: 'Defrost_Status',
        valve: 'Valve_Position_Command',
        return: 'Return_Air_Temperature_Sensor',
        suction: 'Suction_Pressure_Sensor',
        compressor: (n) => `Compressor_${n + 1}_Run_Status`,
        discharge: 'Discharge_Pressure_Sensor',
        outdoor: 'Outside_Air_Temperature_Sensor',
      },
      (owner, word) => `${owner}.${word}`,
    ),
  },
  {
    title: 'glued: dairyAirTemp2',
    temperature: 'degF',
    unitsStated: false,
    name: worded(
      (c) => ['meat', 'dairy', 'deli', 'produce', 'iceCream', 'veg'][c]!,
      (g) => ['mt', 'lt'][g]!,
      {
        air: (p) => `AirTemp${p + 1}`,
        set: 'SetPt',
        defrost: 'DefrostOn',
        valve: 'LiqValve',
        suction: 'SuctPress',
        compressor: (n) => `Comp${n + 1}On`,
        discharge: 'DischPress',
      },
      (owner, word) => owner + word,
    ),
  },
  {
    title: 'places in words: Aisle 4 left',
    temperature: 'degF',
    unitsStated: true,
    name: worded(
      (c) => `Aisle ${c + 2}`,
      (g) => `Pack ${letter(g)}`,
      {
        air: (p) => ['left', 'center left', 'center right', 'right'][p]!,
        set: 'target',
        defrost: 'defrosting',
        valve: 'feeding',
        suction: 'suction',
        compressor: (n) => `compressor ${n + 1}`,
      },
      (owner, word) => `${owner} ${word}`,
    ),
  },
  {
    title: 'what it is first: Air Temp 1 @ B12',
    temperature: 'degF',
    unitsStated: false,
    name: worded(
      (c) => `B${c + 10}`,
      (g) => `SG${g + 1}`,
      {
        air: (p) => `Air Temp ${p + 1}`,
        set: 'Cut-in',
        defrost: 'Defrost',
        valve: 'Refrigeration',
        suction: 'Suction psig',
        compressor: (n) => `Cmp ${n + 1}`,
      },
      (owner, word) => `${word} @ ${owner}`,
    ),
  },
  {
    title: 'paths: Rack B/Ckt 07/Case 2/DAT',
    temperature: 'degF',
    unitsStated: true,
    name: worded(
      (c) => `Store 12/Rack ${c < 4 ? 'A' : 'B'}/Ckt ${pad(c)}`,
      (g) => `Store 12/Rack ${letter(g)}`,
      {
        air: (p) => `Case ${p + 1}/DAT`,
        return: 'RAT',
        set: 'SP',
        defrost: 'DEF',
        valve: 'EEV',
        coil: 'Coil Out',
        suction: 'SUCT PRESS',
        suctionSet: 'SUCT SP',
        compressor: (n) => `COMP ${n + 1}`,
        discharge: 'DISCH PRESS',
      },
      (owner, word) => `${owner}/${word}`,
    ),
  },
  {
    title: 'digits run together: T0401',
    temperature: 'degF',
    unitsStated: false,
    name: (part) => {
      if (part.what === 'air') return `T${pad(part.circuit)}${pad(part.probe)}`;
      if (part.what === 'defrost') return `D${pad(part.circuit)}`;
      if (part.what === 'valve') return `V${pad(part.circuit)}`;
      if (part.what === 'set') return `SP${pad(part.circuit)}`;
      return part.what === 'suction' ? `Psuc${part.group + 1}` : null;
    },
  },
  {
    title: 'class first: MT-03-DAT-1',
    temperature: 'degF',
    unitsStated: false,
    name: worded(
      (c) => `${c < 4 ? 'MT' : 'LT'}-${pad(c)}`,
      (g) => ['MT', 'LT'][g]!,
      {
        air: (p) => `DAT-${p + 1}`,
        set: 'SP',
        defrost: 'DFR',
        valve: 'LLSV',
        suction: 'SUCT',
        suctionSet: 'SUCT-SP',
        compressor: (n) => `CMP-${n + 1}`,
      },
      (owner, word) => `${owner}-${word}`,
    ),
  },
  {
    title: 'rack letter in the circuit: A07 Discharge Air #2',
    temperature: 'degC',
    unitsStated: true,
    name: worded(
      (c) => `${c < 4 ? 'A' : 'B'}${pad(c)}`,
      (g) => `Rack ${letter(g)}`,
      {
        air: (p) => `Discharge Air #${p + 1}`,
        return: 'Return Air',
        defrost: 'Defrost',
        valve: 'Liquid Line',
        suction: 'Suction',
        compressor: (n) => `Compressor ${n + 1}`,
        discharge: 'Head',
      },
      (owner, word) => `${owner} ${word}`,
    ),
  },
  {
    title: 'long paths: Fern Lane Grocer : Rack A : Circuit 3 : …',
    temperature: 'degF',
    unitsStated: true,
    name: worded(
      (c) => `Fern Lane Grocer : Rack A : Circuit ${c + 1}`,
      (g) => `Fern Lane Grocer : Rack A : Suction Group ${g + 1}`,
      {
        air: (p) => `Discharge Air Temperature Sensor #${p + 1}`,
        set: 'Temperature Set Point',
        defrost: 'Defrost',
        valve: 'Refrigeration Solenoid',
        suction: 'Suction Pressure',
        compressor: (n) => `Compressor ${n + 1}`,
      },
      (owner, word) => `${owner} : ${word}`,
    ),
  },
  {
    title: 'a unit letter at the end: M01_Air1_F',
    temperature: 'degF',
    unitsStated: false,
    name: worded(
      (c) => `M${pad(c)}`,
      (g) => `S${g + 1}`,
      {
        air: (p) => `Air${p + 1}_F`,
        set: 'SP_F',
        defrost: 'Dfr',
        valve: 'Liq',
        return: 'Ret_F',
        suction: 'Suct_psi',
        compressor: (n) => `Comp${n + 1}`,
      },
      (owner, word) => `${owner}_${word}`,
    ),
  },
  {
    title: 'air on and air off: Controller 3 Air Off Temp',
    temperature: 'degC',
    unitsStated: true,
    name: worded(
      (c) => `Controller ${c + 1}`,
      (g) => `Pack ${g + 1}`,
      {
        air: (p) => `Air Off Temp ${p + 1}`,
        return: 'Air On Temp',
        set: 'Setpoint',
        defrost: 'Defrost State',
        valve: 'LLV',
        suction: 'Suction Pressure',
        compressor: (n) => `Compressor ${n + 1} Run`,
      },
      (owner, word) => `${owner} ${word}`,
    ),
  },
  {
    title: 'Italian: Vetrina 3 sonda 1',
    temperature: 'degC',
    unitsStated: false,
    name: worded(
      (c) => `Vetrina ${c + 1}`,
      (g) => ['TN', 'BT'][g]!,
      {
        air: (p) => `sonda ${p + 1}`,
        set: 'set point',
        defrost: 'sbrinamento',
        valve: 'elettrovalvola',
        suction: 'pressione aspirazione',
        compressor: (n) => `compressore ${n + 1}`,
      },
      (owner, word) => `${owner} ${word}`,
    ),
  },
  {
    title: 'tags of plant drawings: TT-101A',
    temperature: 'degF',
    unitsStated: false,
    name: (part) => {
      if (part.what === 'air') return `TT-${101 + part.circuit}${letter(part.probe)}`;
      if (part.what === 'defrost') return `XD-${101 + part.circuit}`;
      return part.what === 'valve' ? `XV-${101 + part.circuit}` : null;
    },
  },
  {
    title: 'a folder of the whole shop: Store/Dairy/Air Temp 2',
    temperature: 'degC',
    unitsStated: true,
    name: worded(
      (c) => `Store/${departments[c]}`,
      (g) => `Plant/Rack ${letter(g)}`,
      {
        air: (p) => `Air Temp ${p + 1}`,
        defrost: 'Defrost State',
        valve: 'Refrigeration Solenoid',
        suction: 'Suction Press',
        compressor: (n) => `Comp ${n + 1} Status`,
      },
      (owner, word) => `${owner}/${word}`,
    ),
  },
  {
    title: 'ends by letter: 03 Deli Supply Air R',
    temperature: 'degF',
    unitsStated: false,
    name: (part) =>
      part.what === 'air'
        ? `${pad(part.circuit)} ${departments[part.circuit]} Supply Air ${ends[circuits[part.circuit]!.probes]![part.probe]}`
        : besideLetters(part),
  },
  {
    title: 'outer ends by doubled letters: 03 Deli Supply Air RR',
    temperature: 'degF',
    unitsStated: false,
    name: (part) =>
      part.what === 'air'
        ? `${pad(part.circuit)} ${departments[part.circuit]} Supply Air ${['L', 'M', 'R', 'RR'][part.probe]}`
        : besideLetters(part),
  },
  {
    title: 'outer ends in words: 03 Deli Discharge Far right',
    temperature: 'degF',
    unitsStated: false,
    name: (part) =>
      part.what === 'air'
        ? `${pad(part.circuit)} ${departments[part.circuit]} Discharge ${['Left', 'Centre', 'Right', 'Far right'][part.probe]}`
        : besideLetters(part),
  },
  {
    title: 'two letters for air: M01.DA1, M01.RA, MT.SUCP',
    temperature: 'degF',
    unitsStated: false,
    name: worded(
      (c) => `${c < 4 ? 'M' : 'L'}${pad(c)}`,
      (g) => ['MT', 'LT'][g]!,
      {
        air: (p) => `DA${p + 1}`,
        return: 'RA',
        set: 'SP',
        defrost: 'DFR',
        valve: 'LLS',
        suction: 'SUCP',
        suctionSet: 'SUCSP',
        discharge: 'HDP',
        compressor: (n) => `CMP${n + 1}`,
        outdoor: 'OAT',
      },
      (owner, word) => `${owner}.${word}`,
    ),
  },
  {
    title: 'units glued in camel case: dairySupplyAir1DegC',
    temperature: 'degC',
    unitsStated: true,
    name: worded(
      (c) => ['saladBar', 'dairy', 'deli', 'produce', 'iceCream', 'veg'][c]!,
      (g) => ['mt', 'lt'][g]!,
      {
        air: (p) => `SupplyAir${p + 1}DegC`,
        return: 'ReturnAirDegC',
        set: 'SetpointDegC',
        defrost: 'DefrostActive',
        valve: 'SolenoidState',
        suction: 'SuctionPressureBar',
        suctionSet: 'SuctionSetpointBar',
        discharge: 'DischargePressureBar',
        compressor: (n) => `Compressor${n + 1}`,
      },
      (owner, word) => owner + word,
    ),
  },
  {
    title: 'goods and furniture that sound like points, before the point',
    temperature: 'degF',
    unitsStated: false,
    name: worded(
      (c) => `${pad(c)} ${soundLikePoints[c]}`,
      (g) => `Rack ${letter(g)}`,
      {
        air: (p) => `discharge air ${p + 1}`,
        return: 'return air',
        set: 'set point',
        defrost: 'defrost',
        valve: 'solenoid',
        suction: 'suction pressure',
        compressor: (n) => `compressor ${n + 1}`,
      },
      (owner, word) => `${owner} ${word}`,
    ),
  },
  {
    title: 'goods and furniture that sound like points, after the point',
    temperature: 'degC',
    unitsStated: true,
    name: worded(
      (c) => `${[...soundLikePoints.slice(0, 5), 'Cooking oil'][c]} ${pad(c)}`,
      (g) => `Rack ${letter(g)}`,
      {
        air: (p) => `Air off ${p + 1}`,
        set: 'Setpoint',
        defrost: 'Defrost',
        valve: 'Valve',
        suction: 'Suction pressure',
        compressor: (n) => `Compressor ${n + 1}`,
      },
      (owner, word) => `${word} - ${owner}`,
    ),
  },
  {
    title: 'goods and furniture that sound like points, no defrosts logged',
    temperature: 'degC',
    unitsStated: false,
    name: worded(
      (c) =>
        ['Fish counter', 'Light yogurt', 'Energy drinks', 'Frozen food', 'Pizza doors', 'Food island'][c]!,
      (g) => `Pack ${letter(g)}`,
      {
        air: (p) => `air off ${p + 1}`,
        return: 'air on',
        set: 'setpoint',
        valve: 'LLV',
        suction: 'suction pressure',
        compressor: (n) => `comp ${n + 1}`,
      },
      (owner, word) => `${owner} ${word}`,
    ),
  },
  {
    title: 'French, the pressures as BP and HP, the circuit in brackets',
    temperature: 'degC',
    unitsStated: false,
    name: worded(
      (c) => `${['Viandes', 'Crèmerie', 'Traiteur', 'Légumes', 'Glaces', 'Surgelés'][c]} (meuble ${c + 1})`,
      (g) => `Centrale ${letter(g)}`,
      {
        air: (p) => `Soufflage ${p + 1}`,
        return: 'Reprise',
        set: 'Consigne',
        defrost: 'Dégivrage',
        valve: 'Vanne',
        suction: 'BP',
        discharge: 'HP',
        compressor: (n) => `compresseur ${n + 1}`,
      },
      (owner, word) => `${owner} ${word}`,
    ),
  },
];
