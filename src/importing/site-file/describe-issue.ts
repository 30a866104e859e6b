import type { z } from 'zod';
import { keysAt } from './known-keys.ts';
import type { Mistake } from './mistake.ts';
import { nearestName } from './nearest-name.ts';

/** Says in a sentence what the schema found wrong, one an unknown key. */
export function describeIssue(issue: z.core.$ZodIssue): Mistake[] {
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => unknownKey(issue.path, key));
  }
  if (issue.code === 'invalid_union') return [fromUnion(issue)];
  const place = issue.path.length === 0 ? 'the file' : `\`${pathText(issue.path)}\``;
  return [{ path: issue.path, sentence: `${place}: ${plainReason(issue)}.` }];
}

function unknownKey(parent: readonly PropertyKey[], key: string): Mistake {
  const known = keysAt(parent);
  const near = nearestName(key, known);
  const hint = near === null ? `known here: ${known.join(', ')}` : `did you mean \`${near}\`?`;
  const path = [...parent, key];
  return {
    path,
    sentence: `\`${pathText(path)}\` is not a key of a site file; ${hint}${near === null ? '.' : ''}`,
  };
}

/** A set point may be a number or `{ point }`: the branch that fits the value best explains it best. */
function fromUnion(issue: z.core.$ZodIssueInvalidUnion): Mistake {
  for (const branch of issue.errors) {
    for (const inner of branch) {
      if (inner.code === 'unrecognized_keys') {
        return unknownKey([...issue.path, ...inner.path], inner.keys[0]!);
      }
    }
  }
  const sentence = `\`${pathText(issue.path)}\`: a number, or { point: "column header" }, is expected here.`;
  return { path: issue.path, sentence };
}

function plainReason(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return `${expectedWord[issue.expected] ?? issue.expected} is expected here`;
    case 'invalid_value':
      return `one of ${issue.values.map(String).join(', ')} is expected here`;
    case 'too_small':
      return issue.origin === 'string'
        ? 'it is empty'
        : `it must be ${issue.inclusive ? 'at least' : 'more than'} ${issue.minimum}`;
    case 'too_big':
      return `it must be at most ${issue.maximum}`;
    case 'invalid_format':
      return 'a local time HH:MM in quotes is expected here';
    default:
      return issue.message;
  }
}

const expectedWord: Readonly<{ [type: string]: string }> = {
  string: 'text',
  number: 'a number',
  array: 'a list',
  object: 'a block of keys',
  record: 'a block of names with points',
};

/** `circuits[2].defrost.perDay` */
export function pathText(path: readonly PropertyKey[]): string {
  return path
    .map((part, index) =>
      typeof part === 'number' ? `[${part}]` : `${index === 0 ? '' : '.'}${String(part)}`,
    )
    .join('');
}
