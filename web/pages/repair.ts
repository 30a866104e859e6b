import { type Address, circuitAddress, goTo, writeAddress } from '../address.ts';
import { h, visible } from '../dom.ts';
import type { RepairDocument } from '../json.ts';
import { askForm } from '../parts/ask-form.ts';
import { repairAnswer } from '../parts/repair-answer.ts';
import { WorkRegion } from '../parts/work-region.ts';
import { Refusal, readResult, repairAddress } from '../server.ts';
import type { Page } from './page.ts';

export type RepairAddress = Extract<Address, { page: 'repair' }>;

/** The minute on the site's clock, as the field for a time has it: `2026-09-12T10:30`. */
const minuteOf = (timestamp: string): string => timestamp.slice(0, 16);

function serviceForm(address: RepairAddress, span: { start: string; end: string }): HTMLElement {
  const time = h('input', {
    type: 'datetime-local',
    id: 'serviced',
    required: true,
    min: minuteOf(span.start),
    max: minuteOf(span.end),
    value: address.serviced === null ? null : minuteOf(address.serviced),
    'aria-describedby': 'serviced-help',
  });
  const [from, to] = [span.start, span.end].map((end) => minuteOf(end).replace('T', ' '));
  const help = h(
    'p',
    { class: 'quiet', id: 'serviced-help' },
    `On the store's clock, within the export (${from} to ${to}). A verdict takes a day before the service, and a day with three defrosts after it.`,
  );
  return askForm(
    {
      title: 'When it was serviced',
      label: 'Serviced',
      field: time,
      button: 'Compare before and after',
      help,
    },
    (serviced) => goTo({ ...address, serviced }),
  );
}

/** One circuit before and after its service: did the repair hold, and is everything switched back on. */
export async function repairPage(address: RepairAddress): Promise<Page> {
  const { document: found, report } = await readResult(address.id);
  const own = found.circuits.find(({ id }) => id === address.name);
  if (own === undefined) {
    throw new Refusal({
      code: 'unknown-circuit',
      message: 'This site has no such circuit.',
      remedy: 'Choose one from the list of the site.',
    });
  }
  const site = visible(report.title);
  const title = visible(own.name === own.id || own.name === '' ? own.id : `${own.id} ${own.name}`);
  const region = new WorkRegion();
  const { id, name, serviced } = address;
  return {
    title: `Did the repair hold? ${title} · ${site} · rimelog`,
    where: site,
    content: h(
      'div',
      { class: 'answered' },
      h(
        'nav',
        { class: 'turn', 'aria-label': 'Back' },
        h('a', { href: writeAddress({ page: 'site', id }) }, site),
        h('a', { href: circuitAddress(id, name) }, title),
      ),
      h('h1', {}, 'Did the repair hold?'),
      h('p', { class: 'lead' }, title),
      serviceForm(address, found.span),
      region.element,
      h('p', { class: 'air' }, found.notice),
    ),
    shown: () => {
      if (serviced === null) return;
      const show = (repair: RepairDocument): HTMLElement => repairAnswer(id, repair);
      void region.ask(repairAddress(id, name, serviced), 'Before and after', show);
    },
    dispose: () => region.dispose(),
  };
}
