import { writeFileSync } from 'node:fs';
import { causesPage } from './causes-page.ts';
import { settingsPage } from './settings-page.ts';
import { tablesPage } from './tables-page.ts';

/** `npm run docs`: writes the reference pages that follow from the code. */
const folder = new URL('../../docs/reference/', import.meta.url);
writeFileSync(new URL('settings.md', folder), settingsPage());
writeFileSync(new URL('causes.md', folder), causesPage());
writeFileSync(new URL('tables.md', folder), tablesPage());
process.stdout.write('Written: docs/reference/settings.md, causes.md, tables.md\n');
