import { writeFileSync } from 'node:fs';
import { causesPage } from './causes-page.ts';
import { drawn, pictures } from './pictures/every-picture.ts';
import { readmeWithExample } from './readme-example.ts';
import { settingsPage } from './settings-page.ts';
import { tablesPage } from './tables-page.ts';

/** `npm run docs`: writes the pages, the pictures and the README's example, which follow from the code. */
const root = new URL('../../', import.meta.url);
const write = (path: string, text: string): void => {
  writeFileSync(new URL(path, root), text);
  process.stdout.write(`Written: ${path}\n`);
};
write('docs/reference/settings.md', settingsPage());
write('docs/reference/causes.md', causesPage());
write('docs/reference/tables.md', tablesPage());
for (const picture of pictures) write(`docs/methods/pictures/${picture.id}.svg`, drawn(picture));
write('README.md', await readmeWithExample());
