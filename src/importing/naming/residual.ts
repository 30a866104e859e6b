import type { NamedColumn } from './role.ts';
import type { Token } from './tokens.ts';
import type { Meaning } from './vocabulary.ts';

/** What is left of a name when the words that say its role are taken out: which circuit, and which probe of it. */
export interface ResidualToken {
  readonly text: string;
  /** Belongs to the circuit, to the place of a probe within it, or it cannot be told from the name alone. */
  readonly mark: 'circuit' | 'probe' | 'case' | null;
  readonly from: number;
  readonly to: number;
}

const roleWords: ReadonlySet<Meaning> = new Set<Meaning>([
  'temperature',
  'pressure',
  'air',
  'probe',
  'discharge',
  'supply',
  'return',
  'set',
  'differential',
  'defrost',
  'termination',
  'valve',
  'liquid',
  'suction',
  'superheat',
  'coil',
  'outlet',
  'inlet',
  'product',
  'average',
  'control',
  'extreme',
  'status',
  'number',
  'level',
  'receiver',
  'compressor',
  'saturated',
  'highSide',
  'condenser',
]);
const probeWords: ReadonlySet<Meaning> = new Set<Meaning>([
  'probe',
  'air',
  'temperature',
  'discharge',
  'supply',
  'return',
  'coil',
  'product',
  'outlet',
  'termination',
]);
const containers: ReadonlySet<Meaning> = new Set<Meaning>(['circuit', 'case', 'rack', 'group']);

/** Container words (`circuit`, `case`) are left out too: they mark what follows them. */
export function residualOf(column: NamedColumn): ResidualToken[] {
  const residual: ResidualToken[] = [];
  for (const [index, token] of column.tokens.entries()) {
    if (isRoleWord(token, column)) continue;
    if (token.meaning !== null && containers.has(token.meaning) && isFollowedById(column.tokens, index))
      continue;
    residual.push({
      text: withoutZeros(token),
      mark: markOf(column.tokens, index),
      from: token.from,
      to: token.to,
    });
  }
  return residual;
}

function isRoleWord(token: Token, column: NamedColumn): boolean {
  if (token.meaning === null) return isKindLetter(token, column);
  if (token.meaning === 'feed') return column.role === 'valve';
  if (token.meaning === 'gas') return column.role === 'defrost';
  return roleWords.has(token.meaning);
}

/** The single letter at the front of `T-MT-1` or glued to a number in `t1`. */
function isKindLetter(token: Token, column: NamedColumn): boolean {
  const next = column.tokens[1];
  const letter = column.kind === 'temperature' ? 't' : column.kind === 'pressure' ? 'p' : null;
  return token.text === letter && token === column.tokens[0] && next !== undefined;
}

function isFollowedById(tokens: readonly Token[], index: number): boolean {
  const next = tokens[index + 1];
  return next !== undefined && isId(next);
}

/** A number or a single letter. */
function isId(token: Token): boolean {
  return token.kind === 'number' || token.text.length === 1;
}

function markOf(tokens: readonly Token[], index: number): ResidualToken['mark'] {
  const token = tokens[index]!;
  if (token.meaning === 'position') return 'probe';
  if (!isId(token)) return null;
  const before = tokens[index - 1];
  if (before === undefined) return null;
  if (before.meaning === 'circuit') return 'circuit';
  if (before.meaning === 'case') return 'case';
  if (before.meaning !== null && probeWords.has(before.meaning)) return 'probe';
  return before.text === 't' && index === 1 ? 'probe' : null;
}

function withoutZeros(token: Token): string {
  return token.kind === 'number' ? token.text.replace(/^0+(?=\d)/, '') : token.text;
}

export function keyText(tokens: readonly ResidualToken[]): string {
  return tokens.map((token) => token.text).join(' ');
}
