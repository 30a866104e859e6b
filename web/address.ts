import type { Span } from './json.ts';

export type PlotView = 'auto' | 'settled' | 'all';

/** What the address after `#` says; every state that can be linked to is in it. */
export type Address =
  | { readonly page: 'home' }
  | { readonly page: 'site'; readonly id: string }
  /** The report of a month, while it is made. */
  | { readonly page: 'month'; readonly id: string; readonly month: string }
  /** Did the repair of a circuit hold; `serviced` on the site's clock. */
  | { readonly page: 'repair'; readonly id: string; readonly name: string; readonly serviced: string | null }
  /** This export against another one. */
  | { readonly page: 'compare'; readonly id: string; readonly against: string | null }
  | {
      /** A circuit's page or a suction group's. */
      readonly page: 'circuit' | 'group';
      readonly id: string;
      readonly name: string;
      readonly range: Span | null;
      readonly view: PlotView;
    };

function decoded(part: string | undefined): string {
  try {
    return decodeURIComponent(part ?? '');
  } catch {
    return '';
  }
}

function rangeIn(query: URLSearchParams): Span | null {
  const from = Date.parse(query.get('from') ?? '');
  const to = Date.parse(query.get('to') ?? '');
  return from < to ? { from, to } : null;
}

const pagesByFolder = new Map([
  ['circuits', 'circuit'],
  ['groups', 'group'],
] as const) as ReadonlyMap<string, 'circuit' | 'group'>;

export function readAddress(hash: string): Address {
  const [path = '', query = ''] = hash.replace(/^#/, '').split('?', 2);
  const parts = path.split('/').filter((part) => part !== '');
  const id = decoded(parts[1]);
  if (parts[0] !== 'exports' || id === '') return { page: 'home' };
  const name = decoded(parts[3]);
  if (parts[2] === 'compare') return { page: 'compare', id, against: name === '' ? null : name };
  if (parts[2] === 'months' && name !== '') return { page: 'month', id, month: name };
  const page = pagesByFolder.get(parts[2] ?? '');
  if (page === undefined || parts.length < 4) return { page: 'site', id };
  const state = new URLSearchParams(query);
  if (page === 'circuit' && parts[4] === 'repair') {
    return { page: 'repair', id, name, serviced: state.get('serviced') };
  }
  const view = state.get('view');
  return {
    page,
    id,
    name,
    range: rangeIn(state),
    view: view === 'settled' || view === 'all' ? view : 'auto',
  };
}

export function writeAddress(address: Address): string {
  if (address.page === 'home') return '#/';
  const site = `#/exports/${encodeURIComponent(address.id)}`;
  if (address.page === 'site') return site;
  if (address.page === 'month') return `${site}/months/${encodeURIComponent(address.month)}`;
  if (address.page === 'compare') {
    return `${site}/compare${address.against === null ? '' : `/${encodeURIComponent(address.against)}`}`;
  }
  if (address.page === 'repair') {
    const query = address.serviced === null ? '' : `?${new URLSearchParams({ serviced: address.serviced })}`;
    return `${site}/circuits/${encodeURIComponent(address.name)}/repair${query}`;
  }
  const state = new URLSearchParams();
  if (address.range !== null) {
    state.set('from', new Date(address.range.from).toISOString());
    state.set('to', new Date(address.range.to).toISOString());
  }
  if (address.view !== 'auto') state.set('view', address.view);
  const query = state.size === 0 ? '' : `?${state}`;
  return `${site}/${address.page}s/${encodeURIComponent(address.name)}${query}`;
}

export const circuitAddress = (id: string, circuit: string): string =>
  writeAddress({ page: 'circuit', id, name: circuit, range: null, view: 'auto' });

export const groupAddress = (id: string, group: string): string =>
  writeAddress({ page: 'group', id, name: group, range: null, view: 'auto' });

/** Goes to a page; where it is shown already, it is made anew. */
export function goTo(address: Address): void {
  const to = writeAddress(address);
  if (to === location.hash) dispatchEvent(new HashChangeEvent('hashchange'));
  else location.hash = to;
}
