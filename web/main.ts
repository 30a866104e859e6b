import 'virtual:theme.css';
import './styles/page.css';
import './styles/findings.css';
import './styles/plot-page.css';
import './styles/worded.css';
import './styles/background.css';
import './styles/answers.css';
import './styles/narrow.css';
import './styles/print.css';
import { type Address, readAddress } from './address.ts';
import { h } from './dom.ts';
import { circuitPage } from './pages/circuit.ts';
import { comparePage } from './pages/compare.ts';
import { groupPage } from './pages/group.ts';
import { homePage } from './pages/home.ts';
import { monthPage } from './pages/month.ts';
import type { Page } from './pages/page.ts';
import { repairPage } from './pages/repair.ts';
import { sitePage } from './pages/site.ts';
import { trouble } from './parts/trouble.ts';

const main = document.getElementById('main')!;
const where = document.getElementById('where')!;
let current: Page | null = null;
let turn = 0;

function pageFor(address: Address): Promise<Page> {
  if (address.page === 'home') return homePage();
  if (address.page === 'site') return sitePage(address.id);
  if (address.page === 'month') return monthPage(address.id, address.month);
  if (address.page === 'repair') return repairPage(address);
  if (address.page === 'compare') return comparePage(address);
  return address.page === 'group' ? groupPage(address) : circuitPage(address);
}

function put(page: Page): void {
  current?.dispose?.();
  current = page;
  document.title = page.title;
  where.textContent = page.where;
  main.replaceChildren(page.content);
  window.scrollTo(0, 0);
  page.shown?.();
}

/** Shows what the address says. A page that comes too late, after the user has gone on, is dropped. */
async function show(moveFocus: boolean): Promise<void> {
  const mine = ++turn;
  main.setAttribute('aria-busy', 'true');
  const page = await pageFor(readAddress(location.hash)).catch(
    (error: unknown): Page => ({
      title: 'Not shown · rimelog',
      where: '',
      content: h(
        'div',
        {},
        trouble(error),
        h('p', {}, h('a', { href: '#/' }, 'Back to the list of exports')),
      ),
    }),
  );
  if (mine !== turn) return page.dispose?.();
  put(page);
  main.removeAttribute('aria-busy');
  if (moveFocus) main.focus({ preventScroll: true });
}

document.querySelector('.skip')!.addEventListener('click', (event) => {
  event.preventDefault();
  main.focus();
});
/** On paper the cautions are read out, folded or not. */
let opened: HTMLDetailsElement[] = [];
addEventListener('beforeprint', () => {
  opened = [...document.querySelectorAll<HTMLDetailsElement>('details.care:not([open])')];
  for (const caution of opened) caution.open = true;
});
addEventListener('afterprint', () => {
  for (const caution of opened) caution.open = false;
});
addEventListener('hashchange', () => void show(true));
void show(false);
