import { qualitySaysGood } from '../values/words.ts';
import type { ColumnStats } from './plan-table.ts';
import type { LongColumns } from './table-plan.ts';

const pointWords =
  /^(?:point|tag|name|sensor|probe|channel|variable|parameter|item|signal|object|device|circuit|case|controller|series|metric|measure(?:ment)?|kanal|messstelle|messpunkt|punkt|datenpunkt|bezeichnung|fühler|capteur|sonde|voie|point de mesure|nom|punto|sensore|canale|nombre|sensor id|log)(?:[ _-]?(?:name|id|tag|no|nr|key|path|label))?$/iu;
export const valueWords =
  /^(?:value|val|reading|data|present[ _-]?value|pv|result|y|wert|messwert|valeur|mesure|valore|valor|waarde|state|status|measurement)(?:[\s_([].*)?$/iu;
/** Of the figures of a stretch of time, the one that is taken for its reading, and those beside it. */
const centralWords =
  /^(?:avg|average|mean|last|current|actual|mittel(?:wert)?|moyenne|moy|media|promedio|gemiddelde?)(?:[\s_([].*)?$/iu;
const beside =
  /^(?:min|max|minimum|maximum|low(?:est)?|high(?:est)?|std(?:[ _-]?dev)?|stdev|sd|count|samples?)(?:[\s_([].*)?$/iu;
const unitWords = /^(?:unit|units|uom|einheit|unité|unites?|unità|unidad|eenheid|engineering[ _-]?units?)$/iu;
const qualityWords = /^(?:quality|qual|q|status|state|flag|flags|valid|validity|qualität|qualité|qc|stat)$/iu;
/** Text beside the point's name that narrows it down. */
const ownerWords =
  /^(?:device|circuit|case|controller|rack|line-?up|equipment|unit name|gerät|regler|kreis|kühlstelle|meuble|circuit)(?:[ _-]?(?:name|id))?$/iu;

/** The columns of a long table (one reading a row) among `rest`, or null for a wide one. */
export function findLongColumns(
  rest: readonly number[],
  nameOf: (at: number) => string,
  stats: readonly ColumnStats[],
  timeStats: ColumnStats,
): LongColumns | null {
  const unit = rest.find((at) => isUnitColumn(nameOf(at), stats[at]!)) ?? null;
  const others = rest.filter((at) => at !== unit);
  const hinted = others.filter((at) => pointWords.test(nameOf(at)) && holdsNames(stats[at]!, true));
  const hintedPoint = hinted.find((at) => !ownerWords.test(nameOf(at))) ?? hinted[0];
  const valueNamed = (words: RegExp): number | undefined =>
    others.find(
      (at) =>
        at !== hintedPoint &&
        /^(?!.*(?:status|state|quality))/iu.test(nameOf(at)) &&
        words.test(nameOf(at)) &&
        holdsValues(stats[at]!),
    );
  const hasFigures = others.some((at) => beside.test(nameOf(at)));
  const hintedValue = valueNamed(valueWords) ?? (hasFigures ? valueNamed(centralWords) : undefined);
  const quality =
    others.find(
      (at) => at !== hintedPoint && at !== hintedValue && isQualityColumn(nameOf(at), stats[at]!),
    ) ?? null;
  const counted = quality !== null && stats[quality]!.texts.has('192');
  const texts = others.filter((at) => at !== quality && at !== hintedValue && holdsNames(stats[at]!, false));
  const values = others.filter(
    (at) => at !== quality && at !== hintedPoint && !texts.includes(at) && holdsValues(stats[at]!),
  );
  if (hintedPoint !== undefined && hintedValue !== undefined) {
    return {
      point: pointColumns(hintedPoint, texts, nameOf, stats),
      value: hintedValue,
      unit,
      quality,
      qualityCounted: counted,
    };
  }
  if (values.length === 0 && hintedPoint !== undefined)
    return withWordValues(hintedPoint, others, texts, stats, unit, quality);
  if (values.length !== 1) return null;
  const value = values[0]!;
  const point = hintedPoint ?? texts.find((at) => at < value && namesPoints(stats[at]!, timeStats));
  if (point === undefined || point === value) return null;
  return { point: pointColumns(point, texts, nameOf, stats), value, unit, quality, qualityCounted: counted };
}

/** Names come again, or stand at times that come again; remarks do neither. */
function namesPoints({ texts, filled }: ColumnStats, times: ColumnStats): boolean {
  return texts.size > 1 && (texts.size * 2 <= filled || times.texts.size <= 0.7 * times.filled);
}

/** A log of states alone: the value column holds words. */
function withWordValues(
  point: number,
  others: readonly number[],
  texts: readonly number[],
  stats: readonly ColumnStats[],
  unit: number | null,
  quality: number | null,
): LongColumns | null {
  const value = others.find(
    (at) => at > point && stats[at]!.counts.word * 2 > stats[at]!.filled && !texts.includes(at),
  );
  return value === undefined ? null : { point: [point], value, unit, quality, qualityCounted: false };
}

function pointColumns(
  point: number,
  texts: readonly number[],
  nameOf: (at: number) => string,
  stats: readonly ColumnStats[],
): readonly number[] {
  const owners = texts.filter((at) => at !== point && ownerWords.test(nameOf(at)) && stats[at]!.filled > 0);
  return [...owners, point].sort((a, b) => a - b);
}

function holdsNames({ counts, filled }: ColumnStats, hinted: boolean): boolean {
  if (filled === 0) return false;
  return hinted ? true : (counts.text + counts.unit) * 10 >= filled * 6;
}

function holdsValues({ counts, filled }: ColumnStats): boolean {
  return filled > 0 && (counts.number + counts.word) * 2 >= filled;
}

function isUnitColumn(name: string, { counts, filled }: ColumnStats): boolean {
  if (unitWords.test(name)) return true;
  return filled > 0 && counts.unit >= 0.9 * filled && counts.unit > 1 && !pointWords.test(name);
}

function isQualityColumn(name: string, { counts, filled, texts }: ColumnStats): boolean {
  if (filled === 0) return qualityWords.test(name) && !/^(?:status|state)$/iu.test(name);
  const known = [...texts].every((text) => qualitySaysGood(text) !== null);
  return (
    known &&
    (qualityWords.test(name) ||
      (counts.text + counts.word === filled && [...texts].every((text) => /good|ok|valid|bad/iu.test(text))))
  );
}
