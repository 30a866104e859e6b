import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { openApiDocument } from './document.ts';

/** `npx tsx server/openapi/write.ts` writes docs/reference/openapi.json anew, formatted as the rest. */
const target = fileURLToPath(new URL('../../docs/reference/openapi.json', import.meta.url));
const input = JSON.stringify(openApiDocument());
writeFileSync(target, execFileSync('npx', ['biome', 'format', '--stdin-file-path=openapi.json'], { input }));
