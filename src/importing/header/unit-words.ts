import type { ExportUnit } from '../readings.ts';

/** Ways to write each unit, after `plainUnit`: lower case, without blanks, dots, brackets and degree signs' variants. */
const spellings: { readonly [unit in ExportUnit]: string } = {
  degF: '°f f degf degreef degreesf degreefahrenheit degreesfahrenheit fahrenheit [degf] gradf grdf',
  degC: '°c c degc degreec degreesc degreecelsius degreescelsius celsius centigrade cel gradc grdc gradcelsius',
  K: 'k kelvin degk °k',
  deltaF: 'Δ°f δ°f Δf δf deltaf deltadegf f° ddegf °fdiff fdiff degfdiff r degr',
  deltaC: 'Δ°c δ°c Δc δc deltac deltadegc ddegc °cdiff cdiff degcdiff Δk δk deltak',
  psig: 'psig psi psi(g) psi-g psigauge lb/in² lb/in2 [psi] lbf/in2',
  psia: 'psia psi(a) psi-a psiabs psiabsolute',
  bar: 'bar bars',
  barg: 'barg bar(g) bar-g bargauge barü barue baru barrel(g) barr',
  bara: 'bara bar(a) bar-a barabs barabsolute',
  kPa: 'kpa kpa(a) kpaabs kpaa kilopascal kpa-a',
  kPag: 'kpag kpa(g) kpa-g kpagauge',
  MPa: 'mpa mpa(a) mpa-a mpaa mpaabs megapascal',
  MPag: 'mpag mpa(g) mpa-g mpagauge',
  mbar: 'mbar mbar(a) mbara mbarabs hpa millibar',
  mbarg: 'mbarg mbar(g) mbargauge',
  kgfcm2: 'kgf/cm2 kgf/cm² kg/cm2 kg/cm² kgf/cm^2 kg/cm^2 kgf/cm2a kg/cm2a',
  kgfcm2g: 'kgf/cm2g kgf/cm²g kg/cm2g kg/cm²g kgf/cm2(g) kg/cm2(g)',
  percent: '% pct percent %open %rh %rf rh% prozent pourcent per100 percentopen vol%',
  kW: 'kw kilowatt kilowatts',
  W: 'w watt watts',
  A: 'a amp amps ampere amperes',
  V: 'v volt volts vdc vac',
  Hz: 'hz hertz',
  min: 'min mins minute minutes minuten mn',
  s: 's sec secs second seconds sek sekunden',
  h: 'h hr hrs hour hours std stunden heures',
  count: 'count counts cnt starts',
};

const units = new Map<string, ExportUnit>();
for (const [unit, words] of Object.entries(spellings)) {
  for (const word of words.split(' ')) units.set(word, unit as ExportUnit);
}

function plainUnit(text: string): string {
  return (
    text
      .replace(/\u00ba|\u02da|\u030a|\ufffd|^\?(?=[CF]$)/gu, '°')
      // A degree sign that went through UTF-8 twice or three times.
      .replace(/[ÃÂ‚]+(?=°)/gu, '')
      .replace(/\u2103/gu, '°c')
      .replace(/\u2109/gu, '°f')
      .toLowerCase()
      .replace(/[\s.]/gu, '')
      .replace(/^deg(?:rees?)?°/u, '°')
      // A degree sign whose eighth bit was cut off by mail.
      .replace(/^0(?=[cf]$)/u, '°')
  );
}

/** The unit that `text` names and nothing else (`°F`, `deg F`, `psi(g)`), or null. */
export function unitNamed(text: string): ExportUnit | null {
  if (text.length === 0 || text.length > 24) return null;
  const plain = plainUnit(text);
  return units.get(plain) ?? units.get(plain.replace(/^[([{]|[)\]}]$/gu, '')) ?? null;
}

/** Cells of a units row that are no unit but belong there: blanks, dashes, formats of the time column. */
export function isUnitFiller(text: string): boolean {
  if (/^[-–—/.*]*$/u.test(text)) return true;
  return /^(?:\[\]|1|none|na|n\/a|bool(?:ean)?|on\/off|open\/closed|state|status|enum|text|0\/1|-|unit|units|einheit|einheiten|unit[eé]s?|(?:date|time|datum|zeit)|[ymdhsyt:/\-. ]{2,24}|utc|local|numeric|number|float|double|real|int(?:eger)?|string|analog|digital|datetime|timestamp|ts|rn|inst|avg|smp|sample|average|wert|mittelwert)$/iu.test(
    text,
  );
}

/** Units of pressure and temperature that are not converted here. */
const otherUnits =
  /(?:^|[\s([{_,])((?:in|mm|cm)\s?hg(?:\s?vac(?:uum)?)?|["″]\s?hg|torr|atm|(?:ft|m|mm|in)\s?h2o|°ra?|°ré?)[)\]}]?$/iu;

/** A unit at the end of a header that is known but not converted, as written; null for none. */
export function unconvertedUnit(header: string): string | null {
  const name = header.slice(-80).trimEnd();
  return unitPart(name)?.written ?? otherUnits.exec(name)?.[1] ?? null;
}

const unitParts =
  /(?:^|[\s([{_,])((?:0[.,](0?1)|1\/(100?))\s?([°º\p{L}]{1,8})|([°º\p{L}]{1,8})\s?[x×*·/]\s?(100?))[)\]}]?$/iu;

/** A part of a unit in which a header counts. */
export interface UnitPart {
  readonly unit: ExportUnit;
  /** So many of them are the unit. */
  readonly parts: 10 | 100;
  /** As the header says it: `0.1 °F`, `°C x10`. */
  readonly written: string;
}

/** Tenths or hundredths of a known unit at the end of a header; null for none. */
export function unitPart(header: string): UnitPart | null {
  const found = unitParts.exec(header.slice(-80).trimEnd());
  if (found === null) return null;
  const [, written, decimals, divisor, before, behind, factor] = found;
  const unit = unitNamed((before ?? behind)!);
  const isTenth = decimals === '1' || divisor === '10' || factor === '10';
  return unit === null ? null : { unit, parts: isTenth ? 10 : 100, written: written! };
}

const lettersAlone = new Set<ExportUnit>([
  'degF',
  'degC',
  'K',
  'deltaF',
  'A',
  'V',
  'W',
  's',
  'h',
  'min',
  'count',
]);

/**
 * The unit inside a column header: in brackets (`Air (°F)`, `Air [degC]`), or at the end (`Suction psig`,
 * `Air, °F`, `temp_C`, `tempF`). One bare letter at the end counts only behind a word for temperature or
 * power: `Probe A` is not in amperes, `Probe C` not in Celsius, `Air R` not in Rankine.
 */
export function unitInHeader(header: string): ExportUnit | null {
  const name = header.slice(-80).trimEnd();
  if (unitPart(name) !== null) return null;
  const opening = Math.max(name.lastIndexOf('('), name.lastIndexOf('['), name.lastIndexOf('{'));
  if (opening >= 0) {
    const closing = /[)\]}]/u.exec(name.slice(opening + 1));
    if (closing !== null) {
      const inside = name.slice(opening + 1, opening + 1 + closing.index);
      const unit = unitNamed(inside);
      if (unit !== null && (inside.trim().length > 1 || !/[\p{L}\d]$/u.test(name.slice(0, opening))))
        return unit;
    }
  }
  const last = /[\s,;_/\-|:]([^\s,;_\-|:]{1,12})$/u.exec(name)?.[1];
  if (last !== undefined) {
    const unit = unitNamed(last);
    // The A of `Suction (Rack A)` closes a bracket that says a name.
    const letters = last.replace(/[)\]}]$/u, '');
    if (unit !== null && !(lettersAlone.has(unit) && /^[a-z]{1,3}$/iu.test(letters))) return unit;
    if (unit !== null && last.length === 1 && saysQuantity(name.slice(0, -1), unit)) return unit;
  }
  const inCamelCase = gluedUnit(name);
  if (inCamelCase !== null) return unitNamed(inCamelCase);
  const glued = /^(.*temp(?:erature)?)[ _]?([cf])$/iu.exec(name);
  if (glued !== null) return glued[2]!.toLowerCase() === 'c' ? 'degC' : 'degF';
  const inner = innerUnit(name);
  if (inner !== null) return unitNamed(inner.text);
  const degree = /[°º]\s?([cf])$/iu.exec(name);
  if (degree !== null) return degree[1]!.toLowerCase() === 'c' ? 'degC' : 'degF';
  return null;
}

/** The unit that ends a name in camel case (`supplyAir1DegC`, `suctionPressureBar`), or null; a `saladBar` is none. */
export function gluedUnit(name: string): string | null {
  const unit = /(?<=[\p{Ll}\d])(?:Deg[CF]|Psi[ga]?|Bar[ga]?|Kpa|KPa|Pct)$/u.exec(name)?.[0];
  if (unit === undefined) return null;
  return unit.startsWith('Bar') && !/pres|suct|head|cond|disch/iu.test(name) ? null : unit;
}

/** `AirDegF1`, `air_degF_left`: a temperature unit inside a name, as written, and where; null for none. */
export function innerUnit(header: string): { readonly text: string; readonly from: number } | null {
  const found = /(?:(?<=[\p{Ll}\d])Deg[CF]|(?<![\p{L}])[Dd]eg[CF])(?=[\d_\p{Lu}\s.\-/])/u.exec(header);
  return found === null ? null : { text: found[0], from: found.index };
}

function saysQuantity(before: string, unit: ExportUnit): boolean {
  const lower = before.toLowerCase();
  if (unit === 'degF' || unit === 'degC')
    return /temp|temperature|température|temperatur[\s_,]*$/u.test(lower);
  if (unit === 'W') return /power|leistung|puissance/u.test(lower);
  return false;
}
