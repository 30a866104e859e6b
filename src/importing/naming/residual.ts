import { isPlaceLetter } from './place-letter.ts';
import type { NamedColumn } from './role.ts';
import type { Token } from './tokens.ts';
import type { Meaning } from './vocabulary.ts';

/** What is left of a name when the words that say its role are taken out: which circuit, and which probe of it. */
export interface ResidualToken {
  /** Leading zeros of numbers left out: 01 and 1 are one circuit. */
  readonly text: string;
  /** Digits as written. */
  readonly written: string;
  /** Belongs to the circuit, its rack, the place of a probe within it, or cannot be told from the name alone. */
  readonly mark: 'circuit' | 'rack' | 'case' | 'probe' | null;
  /** The word that said so (`Circuit` of `Circuit 4`) begins here; else the token itself. */
  readonly nameFrom: number;
  readonly from: number;
  readonly to: number;
}

const roleWords = meaningSet(
  'temperature pressure air probe discharge supply return set differential defrost termination valve liquid ' +
    'suction superheat coil outlet inlet product average control extreme status number level receiver compressor ' +
    'saturated highSide condenser',
);
const probeWords = meaningSet(
  'probe air temperature discharge supply return coil product outlet termination compressor valve',
);
const containers = meaningSet('circuit case rack group');

/** `Presión de aspiración`, `pressione di aspirazione`, `pression d’aspiration`: between two words of a role they name nothing. */
const particles = new Set('de del da do di du d of von van'.split(' '));

function meaningSet(words: string): ReadonlySet<Meaning> {
  return new Set(words.split(' ') as Meaning[]);
}

/** Container words (`circuit`, `case`) are left out where an id follows, which they mark; so is the `case` of `Meat case temp`. */
export function residualOf(column: NamedColumn): ResidualToken[] {
  const residual: ResidualToken[] = [];
  const { tokens } = column;
  for (const [index, token] of tokens.entries()) {
    if (isRoleWord(token, column)) continue;
    const next = tokens[index + 1];
    if (particles.has(token.text) && saysRole(tokens[index - 1]) && saysRole(next)) continue;
    if (isContainer(token) && next !== undefined && isId(next) && !isKindLetter(next, column)) continue;
    if (index > 0 && token.text === 'case' && saysRole(next)) continue;
    const before = tokens[index - 1];
    residual.push({
      text: token.kind === 'number' ? token.text.replace(/^0+(?=\d)/, '') : token.text,
      written: token.text,
      mark: markOf(tokens, index),
      nameFrom: before !== undefined && isContainer(before) && isId(token) ? before.from : token.from,
      from: token.from,
      to: token.to,
    });
  }
  return residual;
}

function isContainer(token: Token): boolean {
  return token.meaning !== null && containers.has(token.meaning);
}

function isRoleWord(token: Token, column: NamedColumn): boolean {
  if (token.meaning === null) return isKindLetter(token, column);
  if (token.meaning === 'feed') return column.kind !== 'temperature';
  if (token.meaning === 'gas') return column.role === 'defrost';
  return roleWords.has(token.meaning);
}

/** The single letter that says only what is measured: `T-MT-1`, `t1`, `M1 T2`, `P-S1`, `D04`, `V04`. */
function isKindLetter(token: Token, column: NamedColumn): boolean {
  const { tokens } = column;
  const next = tokens[tokens.indexOf(token) + 1];
  const numbered = next?.kind === 'number' && next.from === token.to;
  if (token.ofName === true) return false;
  if (column.kind === 'temperature' && token.text === 't' && numbered) return tokens.length > 1;
  if (column.kind === 'temperature' && token.text === 't' && saysRole(next)) return true;
  if (column.kind === 'pressure' && token.text === 'p' && isSideOfRack(next)) return true;
  if (token !== tokens[0] || tokens.length < 2) return false;
  if (column.kind === 'temperature') return token.text === 't';
  if (column.kind === 'pressure') return token.text === 'p' || token.text === 'pt';
  if (column.role === 'defrost') return token.text === 'd';
  return column.role === 'valve' && token.text === 'v';
}

/** `T-Zuluft`, `Tsuc`: what is measured, before where. */
function saysRole(token: Token | undefined): boolean {
  return token !== undefined && token.meaning !== null && roleWords.has(token.meaning);
}

/** `P suction`, `P aspirazione`: what is measured, before where. */
function isSideOfRack(token: Token | undefined): boolean {
  return token?.meaning === 'suction' || token?.meaning === 'highSide' || token?.meaning === 'discharge';
}

/** A number or a letter. */
function isId(token: Token): boolean {
  return token.kind === 'number' || isPlaceLetter(token.text);
}

function markOf(tokens: readonly Token[], index: number): ResidualToken['mark'] {
  const token = tokens[index]!;
  if (token.meaning === 'position') return 'probe';
  const before = tokens[index - 1];
  if (before === undefined || !isId(token)) return null;
  if (before.meaning === 'circuit' || before.meaning === 'rack' || before.meaning === 'case')
    return before.meaning;
  const next = tokens[index + 1];
  // The M of M01 begins a name of its own.
  const beginsName = token.kind === 'word' && next?.kind === 'number' && next.from === token.to;
  if (before.text === 't' && before.ofName !== true && before.to === token.from) return 'probe';
  return before.meaning !== null && probeWords.has(before.meaning) && !beginsName ? 'probe' : null;
}

/** Without the numbers and letters that count probes (`RA1`, `Term Temp 2`); words for a place stay. */
export function namesOnly(residual: readonly ResidualToken[]): readonly ResidualToken[] {
  return residual.filter(
    ({ mark, text }) => mark !== 'probe' || !(isPlaceLetter(text) || /^\d+$/.test(text)),
  );
}
