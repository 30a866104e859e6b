import { writeAddress } from '../address.ts';
import { h, visible } from '../dom.ts';
import type { MeasureDocument, RepairDocument } from '../json.ts';
import { plainTable } from './plain-table.ts';

interface Look {
  readonly sign: string;
  readonly kind: string;
}

/** What each verdict looks like beside its word: colour alone tells nobody. */
const verdictSigns: Readonly<Record<RepairDocument['verdict'], Look>> = {
  recovered: { sign: '✓', kind: 'held' },
  partly: { sign: '◐', kind: 'watch' },
  unchanged: { sign: '▲', kind: 'act' },
  'too-early': { sign: '…', kind: 'note' },
};

/** Where nothing was wrong before the service, what is unchanged is no alarm. */
const nothingToJudge: Look = { sign: '○', kind: 'note' };

function lookOf({ verdict, measures }: RepairDocument): Look {
  const isTrouble = measures.some(({ judged, state }) => judged || state === 'new');
  return verdict === 'unchanged' && !isTrouble ? nothingToJudge : verdictSigns[verdict];
}

function measureTable(label: string, measures: readonly MeasureDocument[]): HTMLElement {
  return plainTable(
    label,
    [
      { title: 'Measure' },
      { title: 'Usual', number: true },
      { title: 'Before', number: true },
      { title: 'After', number: true },
      { title: 'Change (95 %)', number: true },
      { title: 'It is' },
    ],
    measures.map(({ title, words: { usual, before, after, change, state } }) => [
      ...[title, usual, before, after, change, state],
    ]),
  );
}

/** The stretch that was compared, on the circuit's own plot. */
function plotLink(exportId: string, { circuit, windows }: RepairDocument): HTMLElement {
  const range = { from: Date.parse(windows.before.start), to: Date.parse(windows.after.end) };
  const href = writeAddress({ page: 'circuit', id: exportId, name: circuit, range, view: 'auto' });
  return h('p', {}, h('a', { href }, 'These days on the plot of the circuit'));
}

/** The verdict of a repair, what it rests on, and what was left open. */
export function repairAnswer(exportId: string, repair: RepairDocument): HTMLElement {
  const shown = repair.measures.filter((measure) => measure.shown);
  const others = repair.measures.filter((measure) => !measure.shown);
  const { sign, kind } = lookOf(repair);
  return h(
    'section',
    { 'aria-labelledby': 'verdict' },
    h('h2', { id: 'verdict' }, 'Before and after'),
    h(
      'p',
      { class: `lead verdict ${kind}`, role: 'status' },
      h('span', { 'aria-hidden': 'true' }, `${sign} `),
      visible(repair.summary),
    ),
    h('p', {}, visible(repair.windows.summary)),
    plotLink(exportId, repair),
    shown.length > 0 && measureTable('Before and after, measure by measure', shown),
    others.length > 0 &&
      h(
        'details',
        {},
        h('summary', {}, 'The other probes'),
        measureTable('Before and after, the other probes', others),
      ),
    h('h2', {}, 'Everything back on?'),
    h(
      'ul',
      { class: 'bare' },
      repair.backOn.map((line) => h('li', {}, visible(line))),
    ),
  );
}
