import { pad, worded } from './dialects.ts';
import type { Dialect } from './invented-store.ts';

/** More words of the trade in more languages, put together for these tests. */

const spaced = (owner: string, word: string): string => `${owner} ${word}`;
const ofTwo =
  (medium: string, low: string) =>
  (group: number): string =>
    group === 0 ? medium : low;

export const tradeWords: readonly Dialect[] = [
  {
    title: 'short English: MT01_DAT1',
    temperature: 'degF',
    unitsStated: false,
    name: worded(
      (c) => `${c < 4 ? 'MT' : 'LT'}${pad(c)}`,
      ofTwo('MT', 'LT'),
      {
        air: (p) => `DAT${p + 1}`,
        set: 'SP',
        defrost: 'DFST',
        valve: 'SOL',
        return: 'RAT',
        suction: 'SUCTP',
        suctionSet: 'SUCTP_SP',
        compressor: (n) => `CMP${n + 1}`,
      },
      (owner, word) => `${owner}_${word}`,
    ),
  },
  {
    title: 'German signs: KR03 Zuluft 1, NK p0',
    temperature: 'degC',
    unitsStated: false,
    name: worded(
      (c) => `KR${pad(c)}`,
      ofTwo('NK', 'TK'),
      {
        air: (p) => `Zuluft ${p + 1}`,
        return: 'Rückluft',
        set: 'Soll',
        defrost: 'Abt',
        valve: 'MV',
        suction: 'p0',
        compressor: (n) => `VD${n + 1}`,
      },
      spaced,
    ),
  },
  {
    title: 'German in full: Verbund Plus Verdampfungsdruck',
    temperature: 'degC',
    unitsStated: false,
    name: worded(
      (c) => `${c < 4 ? 'Regal' : 'Truhe'} ${c + 1}`,
      ofTwo('Verbund Plus', 'Verbund Minus'),
      {
        air: (p) => `Fühler ${p + 1}`,
        set: 'Solltemperatur',
        defrost: 'Abtauen',
        valve: 'Kälteventil',
        suction: 'Verdampfungsdruck',
        discharge: 'Verflüssigungsdruck',
        compressor: (n) => `Verdichter ${n + 1} läuft`,
      },
      spaced,
    ),
  },
  {
    title: 'Italian: Gruppo TN | P aspirazione',
    temperature: 'degC',
    unitsStated: true,
    name: worded(
      (c) => `Murale ${c + 1}`,
      ofTwo('Gruppo TN', 'Gruppo BT'),
      {
        air: (p) => `sonda mandata ${p + 1}`,
        return: 'sonda ripresa',
        set: 'setpoint',
        defrost: 'stato sbrinamento',
        valve: 'solenoide',
        suction: 'P aspirazione',
        compressor: (n) => `compressore ${n + 1}`,
      },
      (owner, word) => `${owner} | ${word}`,
    ),
  },
  {
    title: 'Portuguese: Ilha 3 sonda 1',
    temperature: 'degC',
    unitsStated: true,
    name: worded(
      (c) => `Ilha ${c + 1}`,
      ofTwo('Central positiva', 'Central negativa'),
      {
        air: (p) => `sonda ${p + 1}`,
        set: 'setpoint',
        defrost: 'degelo',
        valve: 'válvula',
        return: 'retorno',
        suction: 'pressão sucção',
        compressor: (n) => `compressor ${n + 1}`,
      },
      spaced,
    ),
  },
  {
    title: 'French in short: MT3_T_souf1, POS_BP',
    temperature: 'degC',
    unitsStated: false,
    name: worded(
      (c) => `${c < 4 ? 'MT' : 'BT'}${c + 1}`,
      ofTwo('POS', 'NEG'),
      {
        air: (p) => `T_souf${p + 1}`,
        set: 'Cons',
        defrost: 'Deg',
        valve: 'EV',
        return: 'T_rep',
        suction: 'BP',
        discharge: 'HP',
        compressor: (n) => `Comp${n + 1}`,
      },
      (owner, word) => `${owner}_${word}`,
    ),
  },
  {
    title: 'Spanish: Cámara 2 punto de ajuste',
    temperature: 'degC',
    unitsStated: true,
    name: worded(
      (c) => `${c < 4 ? 'Cámara' : 'Congelador'} ${c + 1}`,
      ofTwo('Rack media', 'Rack baja'),
      {
        air: (p) => `temperatura ${p + 1}`,
        set: 'punto de ajuste',
        defrost: 'deshielo',
        valve: 'válvula líquido',
        suction: 'presión succión',
        compressor: (n) => `compresor ${n + 1}`,
      },
      spaced,
    ),
  },
  {
    title: 'Dutch: Vriescel 5 inblaastemperatuur 1',
    temperature: 'degC',
    unitsStated: true,
    name: worded(
      (c) => `${c < 4 ? 'Koelcel' : 'Vriescel'} ${c + 1}`,
      ofTwo('Koelmachine', 'Vriesmachine'),
      {
        air: (p) => `inblaastemperatuur ${p + 1}`,
        return: 'aanzuigtemperatuur',
        set: 'gewenste temperatuur',
        defrost: 'ontdooien',
        valve: 'vloeistofklep',
        suction: 'zuigdruk',
        compressor: (n) => `compressor ${n + 1}`,
      },
      spaced,
    ),
  },
];
