import { visibleText } from '../../values/clean-text.ts';
import { qualitySaysGood, wordMeaning } from '../../values/words.ts';
import type { TablePlan } from '../table-plan.ts';
import type { Reshaping, Sample } from './reshaping.ts';

const qualityEnd =
  /(?:^|[\s_.:-])(?:quality|qual|q|status|state|flags?|valid(?:ity)?|qualität|qualité|qc)(?: \(\d+\))?$/iu;
/** Words that tell of quality alone; `true` and `normal` may be states. */
const qualityOnly = /^(?!(?:true|false|normal|a|-?\d+)$)/iu;
const fewestColumns = 2;

/**
 * A wide table in which the quality of each value stands in the column behind it (`Air,Status,Coil,Status`): a value of
 * bad quality becomes the word for it.
 */
export function findQualityBeside({ rows }: Sample, plan: TablePlan): Reshaping | null {
  const { header, headerRow, columns, long, width } = plan;
  if (long !== null || header === null || headerRow === null) return null;
  const data = rows.slice(plan.firstDataRow).filter(({ cells }) => cells.length >= width - 1);
  const holdsQuality = (at: number): boolean => {
    const texts = data.map(({ cells }) => visibleText(cells[at] ?? '')).filter((text) => text !== '');
    return (
      texts.length > 0 && texts.every((text) => qualityOnly.test(text) && qualitySaysGood(text) !== null)
    );
  };
  const pairs = new Map<number, number>();
  for (const [index, { at, name }] of columns.entries()) {
    const before = columns[index - 1];
    if (before === undefined || before.at !== at - 1 || pairs.has(before.at)) continue;
    const whose = name.replace(qualityEnd, '').trim();
    const isOfBefore = whose === '' || before.name.toLowerCase().startsWith(whose.toLowerCase());
    if (qualityEnd.test(name) && isOfBefore && holdsQuality(at)) pairs.set(at, before.at);
  }
  if (pairs.size < fewestColumns || pairs.size * 3 < columns.length) return null;
  const kept = header.map((_, at) => at).filter((at) => !pairs.has(at));
  const qualityOf = new Map([...pairs].map(([quality, value]) => [value, quality]));
  return {
    kind: 'quality-beside',
    headerRow,
    header: kept.map((at) => header[at]!),
    choice: {
      about: `columns such as “${header[[...pairs.keys()][0]!]}”`,
      chosen: 'the quality of the value before',
      because: 'each stands behind a value and holds nothing but words for good and bad',
      override: null,
    },
    begin: () => (cells) => [
      [
        ...kept.map((at) => {
          const quality = visibleText(cells[qualityOf.get(at) ?? -1] ?? '');
          const value = cells[at] ?? '';
          if (quality === '' || qualitySaysGood(quality) !== false || visibleText(value) === '') return value;
          return wordMeaning(quality) === 'fault' ? quality : 'bad';
        }),
        ...cells.slice(header.length),
      ].slice(0, cells.length < header.length ? kept.filter((at) => at < cells.length).length : undefined),
    ],
  };
}
