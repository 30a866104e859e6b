import { type Token, textOf } from './tokens.ts';
import type { Meaning } from './vocabulary.ts';

type Tokens = readonly Token[];

/** What two letters say behind the name of a circuit; alone or in front they are names, articles, goods. */
const ofCircuit: ReadonlyMap<string, Meaning> = new Map<string, Meaning>([
  ['da', 'discharge'],
  ['sa', 'supply'],
  ['ra', 'return'],
  ['df', 'defrost'],
  ['ls', 'valve'],
  ['lv', 'valve'],
  ['sv', 'valve'],
  ['fn', 'fan'],
  ['al', 'alarm'],
]);
const logged: ReadonlySet<Meaning | null> = new Set<Meaning | null>(['defrost', 'valve', 'set']);
/** Signs of the two sides of a rack that say so beside each other: evaporating and condensing, suction and discharge. */
const signs: readonly { readonly [sign: string]: Meaning }[] = [
  { po: 'suction', pc: 'highSide', to: 'saturated', tc: 'saturated' },
  { ps: 'suction', pd: 'highSide' },
];

/**
 * `M01.DA1` and `M01.RA` beside `M01.DFR`: discharge, supply and return air in two letters. They say so only as the
 * last word, behind the name of something that defrosts, feeds or has a set point: in Portuguese `da` is an article.
 * `po` and `pc` say so beside each other, and `RH` is the right hand where `LH` stands in its place.
 */
export function withShortForms(all: readonly Tokens[]): readonly Tokens[] {
  return withHands(withSigns(withCircuitForms(all)));
}

function withCircuitForms(all: readonly Tokens[]): readonly Tokens[] {
  const fronts = new Set(
    all.flatMap((tokens) => {
      const at = tokens.findIndex(({ meaning }) => logged.has(meaning));
      return at > 0 ? [textOf(tokens.slice(0, at))] : [];
    }),
  );
  return all.map((tokens) => {
    const at = tokens.findLastIndex(({ kind }) => kind === 'word');
    const meaning = ofCircuit.get(tokens[at]?.text ?? '');
    if (meaning === undefined || tokens[at]!.meaning !== null) return tokens;
    return fronts.has(textOf(tokens.slice(0, at))) ? withMeaning(tokens, at, meaning) : tokens;
  });
}

function withSigns(all: readonly Tokens[]): readonly Tokens[] {
  const ends = new Set(all.map((tokens) => tokens.at(-1)?.text ?? ''));
  const used = signs.filter((pair) => {
    const [low, high] = Object.keys(pair);
    return ends.has(low!) && ends.has(high!);
  });
  if (used.length === 0) return all;
  return all.map((tokens) => {
    const last = tokens.at(-1);
    const meaning = used.map((pair) => pair[last?.text ?? '']).find((one) => one !== undefined);
    return last === undefined || (last.meaning !== null && last.meaning !== 'probe') || meaning === undefined
      ? tokens
      : withMeaning(tokens, tokens.length - 1, meaning);
  });
}

function withHands(all: readonly Tokens[]): readonly Tokens[] {
  const left = new Set(all.filter((tokens) => tokens.some(({ text }) => text === 'lh')).map(textOf));
  if (left.size === 0) return all;
  return all.map((tokens) => {
    const at = tokens.findIndex(({ text }) => text === 'rh');
    if (at < 0 || !left.has(textOf(tokens.with(at, { ...tokens[at]!, text: 'lh' })))) return tokens;
    return withMeaning(tokens, at, 'position');
  });
}

function withMeaning(tokens: Tokens, at: number, meaning: Meaning): Tokens {
  return tokens.with(at, { ...tokens[at]!, meaning });
}
