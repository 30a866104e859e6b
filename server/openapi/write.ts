import { writeFileSync } from 'node:fs';
import { openApiDocument } from './document.ts';

/** `npx tsx server/openapi/write.ts` writes docs/reference/openapi.json anew. */
const target = new URL('../../docs/reference/openapi.json', import.meta.url);
writeFileSync(target, `${JSON.stringify(openApiDocument(), null, 2)}\n`);
