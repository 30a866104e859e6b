import { z } from 'zod';
import { siteFileSchema } from './schema.ts';

/** The published JSON Schema of the site file, as it stands in docs/reference/site.schema.json. */
export function siteFileJsonSchema(): object {
  return {
    ...z.toJSONSchema(siteFileSchema, { target: 'draft-2020-12', io: 'input' }),
    title: 'rimelog site file',
  };
}
