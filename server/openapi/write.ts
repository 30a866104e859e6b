import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { openApiDocument } from './document.ts';

/** `npx tsx server/openapi/write.ts` writes docs/reference/openapi.json anew, formatted as the rest. */
const target = fileURLToPath(new URL('../../docs/reference/openapi.json', import.meta.url));
writeFileSync(target, JSON.stringify(openApiDocument()));
execFileSync('npx', ['biome', 'format', '--write', target], { stdio: 'inherit' });
