import { gluedUnit, innerUnit, unitPart } from '../header/unit-words.ts';
import { knownParts, type Meaning, meaningOfPair, meaningOfWord } from './vocabulary.ts';

/** One word or number of a column name. */
export interface Token {
  /** Lower case, accents removed; leading zeros of numbers kept. */
  readonly text: string;
  readonly kind: 'word' | 'number';
  readonly meaning: Meaning | null;
  /** Part of the name of a circuit or rack, whatever the letter says elsewhere. */
  readonly ofName?: true;
  /** Where it stands in the name as written, half open. */
  readonly from: number;
  readonly to: number;
}

const longestName = 200;
const unitWords =
  /^(?:deg|degrees?|°?[fck]|deg(?:rees?)?[ _]?[fck]|[fc]ahrenheit|celsius|kelvin|fahrenheit|psi[gad]?|bar[ga]?|kpa[ga]?|mpa|mbar|%|pct|percent|kwh?|amps?|hz|on ?\/ ?off|0 ?\/ ?1)$/i;

/** The words and numbers of a name, or of a part of one, in a line. */
export function textOf(tokens: readonly Pick<Token, 'text'>[]): string {
  return tokens.map(({ text }) => text).join(' ');
}

/** Splits a column name at punctuation, at changes of case and between letters and digits; units are left out. */
export function tokensOf(name: string): Token[] {
  const written = name.slice(0, longestName);
  const tokens: Token[] = [];
  for (const { text, from } of pieces(withoutUnits(written))) {
    const plain = plainWord(text);
    if (plain === '') continue;
    const parts = meaningOfWord(plain) === null ? (knownParts(plain) ?? letterAndWord(plain)) : null;
    const end = from + text.length;
    let at = from;
    for (const part of parts ?? []) {
      const to = Math.min(end, at + part.length);
      tokens.push(token(part, at, to));
      at = to;
    }
    if (parts === null) tokens.push(token(plain, from, end));
  }
  return withPairs(tokens);
}

/**
 * `Tset` and `Psuct`: what is measured in one letter, then a known word; pressures are those of the rack (not
 * `Prep`). `sucsp` is the set point of one.
 */
function letterAndWord(plain: string): string[] | null {
  const front = plain.endsWith('sp') ? plain.slice(0, -2) : '';
  const set = front.length >= 3 ? meaningOfWord(front) : null;
  if (set !== null && ofPressures.has(set)) return [front, 'sp'];
  const rest = plain.slice(1);
  const meaning = rest.length >= 3 ? meaningOfWord(rest) : null;
  const measured = plain[0] === 't' || (plain[0] === 'p' && meaning !== null && ofPressures.has(meaning));
  return measured && meaning !== null ? [plain[0]!, rest] : null;
}

const ofPressures: ReadonlySet<Meaning> = new Set<Meaning>([
  'suction',
  'discharge',
  'highSide',
  'condenser',
  'compressor',
  'receiver',
  'liquid',
  'oil',
  'set',
]);

function withPairs(tokens: readonly Token[]): Token[] {
  const saysSide = tokens.some(({ meaning }) => meaning !== null && sidesOfRack.has(meaning));
  const pair = (first: Token | undefined, second: Token | undefined): Meaning | null => {
    if (first === undefined || second === undefined) return null;
    const meaning = meaningOfPair(first.text, second.text);
    // `Rack baja presión succión`: the low rack, where the side is said already.
    return meaning !== null && saysSide && sidesOfRack.has(meaning) && meaning !== 'discharge'
      ? null
      : meaning;
  };
  return tokens.map((token, index) => {
    const before = tokens[index - 1];
    const meaning = pair(token, tokens[index + 1]) ?? pair(before, token);
    if (meaning !== null) return { ...token, meaning };
    return isPressureOf(token, before) ? { ...token, meaning: 'pressure' as const } : token;
  });
}

/** `SUCT PR` and `DisP`: a pressure in one or two letters, behind the side of the rack it is that of. */
function isPressureOf(token: Token, before: Token | undefined): boolean {
  const short = token.text === 'pr' || token.text === 'p';
  return short && before !== undefined && before.meaning !== null && sidesOfRack.has(before.meaning);
}

const sidesOfRack: ReadonlySet<Meaning> = new Set<Meaning>(['suction', 'discharge', 'highSide', 'condenser']);

function token(text: string, from: number, to: number): Token {
  const kind = /^\d/.test(text) ? 'number' : 'word';
  return { text, kind, meaning: kind === 'number' ? null : meaningOfWord(text), from, to };
}

/** The name with bracketed units and a unit after a degree sign blanked out, so that positions stay. */
function withoutUnits(name: string): string {
  const blank = (match: string): string => ' '.repeat(match.length);
  const part = unitPart(name);
  if (part !== null) return withoutUnits(name.replace(part.written, blank));
  const unit = gluedUnit(name);
  // `FeedPct`: per cent tells how far a valve is open.
  const glued = unit === null || unit === 'Pct' ? 0 : unit.length;
  const inner = innerUnit(name);
  const ended = `${name.slice(0, name.length - glued)}${' '.repeat(glued)}`;
  return (inner === null ? ended : blankAt(ended, inner.from, inner.text.length))
    .replace(/[([{]([^()[\]{}]{0,20})[)\]}]/g, (match, inside: string) =>
      unitWords.test(inside.trim()) ? blank(match) : match,
    )
    .replace(/[°º˚] ?[FCfc]?(?!\p{L})/gu, blank)
    .replace(/[\s_,-](?:deg|[Dd][Ee][Gg][ _]?[FCfc])$/, blank)
    .replace(/[\s_,-](?:psi[ga]?|bar[ga]?|kpa[ga]?|%)$/i, blank);
}

function blankAt(text: string, from: number, length: number): string {
  return `${text.slice(0, from)}${' '.repeat(length)}${text.slice(from + length)}`;
}

/** Runs of one kind: upper to lower, digits, letters. `AirTempB` is Air, Temp, B; `M01A` is M, 01, A. */
function pieces(name: string): { text: string; from: number }[] {
  const found: { text: string; from: number }[] = [];
  for (const { 0: run, index } of name.matchAll(/\p{Lu}+\p{Ll}*|\p{Ll}+|\p{Lo}+|\p{N}+/gu)) {
    const cut = capitalEnd(run);
    if (cut > 0) found.push({ text: run.slice(0, cut), from: index });
    found.push({ text: run.slice(cut), from: index + cut });
  }
  return found;
}

/** Where `DFRStatus` (before the S) and `MTcase` (after the T) part; 0 for a run that stays whole. */
function capitalEnd(run: string): number {
  const capitals = run.search(/\p{Ll}/u);
  if (capitals < 2) return 0;
  const capitalised = plainWord(run.slice(capitals - 1));
  const lower = plainWord(run.slice(capitals));
  if (meaningOfWord(capitalised) === null && meaningOfWord(lower) !== null) return capitals;
  return capitalised.length > 2 ? capitals - 1 : 0;
}

function plainWord(text: string): string {
  return text.toLowerCase().replace(/ß/g, 'ss').normalize('NFKD').replace(/\p{M}/gu, '');
}
