import type { Log } from '../../model/log.ts';
import type { Norm } from '../../norms/norm.ts';
import type { Signals } from '../../signals/types.ts';
import { dayText } from '../local-time.ts';
import { circuitTitle } from '../report-order.ts';
import { textColumns } from '../terminal/columns.ts';
import type { Paint } from '../terminal/paint.ts';
import { indented } from '../terminal/wrap.ts';
import { visibleText } from '../visible-text.ts';
import { normRow } from './norm-row.ts';

export const normsLegend =
  'Usual: p10 to p90 on quiet days, at the hours of the last reading. Peers: the middle of the ranges of the other circuits on the same suction group, air moved to the set point of this one. A norm can learn a fault that is as old as the export: look at the peers too.';

/** What is normal here, place by place, and what each figure shows at the end. */
export function normsReport(norms: readonly Norm[], signals: Signals, paint: Paint): string {
  const { log } = signals;
  const places = new Map<string, Norm[]>();
  for (const norm of norms) {
    const place = norm.circuit ?? norm.suctionGroup ?? '';
    places.set(place, [...(places.get(place) ?? []), norm]);
  }
  if (places.size === 0) {
    return `${indented('Nothing here is known to be normal yet: three quiet days are needed, days without a finding.', 0, paint.width).join('\n')}\n`;
  }
  const sections = [...places].map(([place, own]) => [
    placeHeading(place, own, log, paint),
    ...textColumns(
      [
        { title: '', align: 'left' },
        { title: 'usual', align: 'left' },
        { title: 'last', align: 'right' },
        { title: '', align: 'left' },
        { title: 'peers', align: 'left' },
      ],
      own.map((norm) => normRow(norm, norms, signals)),
    ),
  ]);
  return `${[...sections, indented(normsLegend, 0, paint.width)].map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

function placeHeading(place: string, [norm]: readonly Norm[], log: Log, paint: Paint): string {
  const { circuit, quietDays, frozenSince } = norm!;
  const title = circuit === null ? `Suction group ${place}` : circuitTitle(log, place);
  const frozen = frozenSince === null ? '' : `, nothing learnt since ${dayText(log, frozenSince)}`;
  return `${paint.bold(visibleText(title))} ${paint.dim(`(${quietDays} quiet days${frozen})`)}`;
}
