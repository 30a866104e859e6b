import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll } from 'vitest';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Writes one page to a folder that is gone after the tests; gives its address. */
export function pageFile(markup: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'rimelog-page-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const file = join(folder, 'page.html');
  writeFileSync(file, markup);
  return pathToFileURL(file).href;
}

/** What axe finds wrong, with everything that can be opened open. */
export async function axeViolations(page: Page): Promise<string[]> {
  for (const details of await page.$$('details'))
    await details.evaluate((each) => each.setAttribute('open', ''));
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
    };
    const found = await axe.run();
    return found.violations.map(
      ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`,
    );
  });
}

/** Pages of paper that a PDF holds. */
export function sheetsOf(pdf: Buffer): number {
  return pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g)?.length ?? 0;
}
