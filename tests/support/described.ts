import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect } from 'vitest';
import type { openApiDocument } from '../../server/openapi/document.ts';

type Operation = { responses: Record<string, { content?: Record<string, { schema: object }> }> };

const file = new URL('../../docs/reference/openapi.json', import.meta.url);

/** The document as it lies in docs/reference. */
export const written = JSON.parse(readFileSync(file, 'utf8')) as ReturnType<typeof openApiDocument>;

const ajv = new Ajv2020({ strict: false, allErrors: true, validateFormats: false });
ajv.addSchema(written, 'rimelog');

function operation(path: string, method: string): Operation {
  const found = (written.paths as Record<string, Record<string, unknown>>)[path]?.[method];
  if (found === undefined) throw new Error(`${method} ${path} is not described`);
  return found as Operation;
}

/** The answer holds to what the written document says of this path, method and status; gives its JSON, if it is any. */
export async function expectDescribed(response: Response, path: string, method = 'get'): Promise<unknown> {
  const described = operation(path, method).responses[String(response.status)];
  expect(described, `${method} ${path} answered ${response.status}, which is not described`).toBeDefined();
  const [type, media] = Object.entries(described!.content ?? {})[0] ?? [];
  if (type === undefined) {
    expect(await response.text()).toBe('');
    return null;
  }
  expect(response.headers.get('content-type')).toMatch(new RegExp(`^${type}\\b.*charset=utf-8`));
  if (type !== 'application/json') return null;
  const { $ref } = media!.schema as { $ref?: string };
  const schema = $ref === undefined ? media!.schema : { $ref: `rimelog${$ref}` };
  const validate = ajv.compile(schema);
  const body: unknown = await response.json();
  expect(validate(body), JSON.stringify(validate.errors?.slice(0, 3))).toBe(true);
  return body;
}
