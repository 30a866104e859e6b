import ucumLhc from '@lhncbc/ucum-lhc';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { findingsDocument } from '../../src/reporting/findings-document.ts';
import { findingsSchema } from '../../src/reporting/findings-schema.ts';
import { exampleOf, finding, healthyExample, troubledExample } from './support/example.ts';

/** As published: fields may be added later, so unknown ones are allowed. */
const schema = z.toJSONSchema(findingsSchema, { io: 'input' });
/** What this version writes: every field is described. */
const validate = new Ajv2020({ strict: true, allErrors: true }).compile(z.toJSONSchema(findingsSchema));
const documentOf = ({ log, report, diagnosis }: ReturnType<typeof troubledExample>) =>
  findingsDocument(log, report, diagnosis);

describe('the findings document', () => {
  test('is described by the published JSON Schema (2020-12)', async () => {
    const text = `${JSON.stringify(schema, null, 2)}\n`;
    await expect(text).toMatchFileSnapshot('../../docs/reference/findings.schema.json');
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
  });

  test.each([
    ['a site in trouble', troubledExample()],
    ['a healthy site', healthyExample()],
  ])('is valid for %s', (_, example) => {
    const document = JSON.parse(JSON.stringify(documentOf(example)));
    expect(validate(document), JSON.stringify(validate.errors)).toBe(true);
    expect(new Ajv2020().validate(schema, document)).toBe(true);
  });

  test('writes times with the offset of the site, and the end of what still goes on as null', () => {
    const document = documentOf(troubledExample());
    expect(document.span.start).toMatch(/T00:00:00-0[4-7]:00$/);
    expect(document.findings[0]!.onset).toMatch(/^2026-09-10T00:00:00-0\d:00$/);
    expect(document.findings[0]!.end).toBeNull();
  });

  test('gives numbers inside in kelvin and shows them in the units of the site', () => {
    const [slope] = documentOf(troubledExample()).findings[0]!.evidence;
    expect(slope).toMatchObject({ value: 0.228, unit: 'K/d', display: '0.41 °F a day (0.32 to 0.49)' });
  });

  test('never holds a number that is none: unknown bounds are null, unknown measures are left out', () => {
    const example = exampleOf((log) => [
      finding(log, {
        measures: [
          { name: 'rise', value: Number.NaN, low: null, high: null, unit: 'K' },
          { name: 'slope', value: 0.1, low: Number.NEGATIVE_INFINITY, high: Number.NaN, unit: 'K/d' },
        ],
      }),
    ]);
    const { evidence } = documentOf(example).findings[0]!;
    expect(evidence).toEqual([
      { name: 'slope', value: 0.1, low: null, high: null, unit: 'K/d', display: '0.18 °F a day' },
    ]);
  });

  test('writes units that UCUM knows (checked with @lhncbc/ucum-lhc)', () => {
    const ucum = ucumLhc.UcumLhcUtils.getInstance();
    const units = documentOf(troubledExample()).findings.flatMap(({ evidence }) =>
      evidence.map(({ unit }) => unit),
    );
    for (const unit of units) expect(ucum.validateUnitString(unit).status, unit).toBe('valid');
  });

  test('is the same for the same input', () => {
    expect(JSON.stringify(documentOf(troubledExample()))).toBe(JSON.stringify(documentOf(troubledExample())));
  });
});
