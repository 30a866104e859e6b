import { groupedBy } from '../points/grouped-by.ts';
import { wordsIn } from './kind.ts';
import type { Token } from './tokens.ts';
import type { Meaning } from './vocabulary.ts';

/** What a word of goods or furniture can be taken for: a fish counter, light yogurt, frozen food, energy drinks, glass doors. */
const ofCases: ReadonlySet<Meaning> = new Set<Meaning>(['instrument', 'light', 'product', 'power', 'door']);
/** The same of words that other plant is called by, too: bottled water and a water loop, a store room and the store. */
const ofPlantToo: ReadonlySet<Meaning> = new Set<Meaning>(['oil', 'indoor']);
/** Letters that a circuit may be called by as well as a role: SH, HP, RA, DEF, PROD. What they count or place is no name. */
const longestCode = 4;
const neverACode: ReadonlySet<Meaning> = new Set<Meaning>([
  'temperature',
  'air',
  'probe',
  'position',
  'number',
  'circuit',
  'case',
  'rack',
  'group',
  'low',
  'medium',
]);
const besideThem: ReadonlySet<Meaning> = new Set<Meaning>(['circuit', 'rack', 'low', 'medium']);

/**
 * Names without the meanings of words that only name the circuit. A word that stands in front of a defrost and of
 * air, a set point or a valve alike says nothing of any of them: `04 Fish counter defrost`, `04 Fish counter air 1`.
 */
export function withoutGoods(all: readonly (readonly Token[])[]): readonly (readonly Token[])[] {
  const places = all.flatMap((tokens, name) =>
    tokens.flatMap((token, at) => {
      if (!isGoods(token) && !isCode(token)) return [];
      return phrasesAround(tokens, at).map((phrase) => ({ name, at, key: `${token.meaning} ${phrase}` }));
    }),
  );
  const ofCircuits = new Map<number, Set<number>>();
  for (const together of groupedBy(places, ({ key }) => key).values()) {
    const meaning = all[together[0]!.name]![together[0]!.at]!.meaning!;
    const others = together.map(({ name, at }) => all[name]!.filter((_, index) => index !== at));
    const { text } = all[together[0]!.name]![together[0]!.at]!;
    const goods = ofCases.has(meaning) || ofPlantToo.has(meaning);
    const named = goods && nameACircuit(others, ofPlantToo.has(meaning));
    if (!named && !(text.length <= longestCode && !neverACode.has(meaning) && standBeforeAll(others)))
      continue;
    for (const { name, at } of together) ofCircuits.set(name, (ofCircuits.get(name) ?? new Set()).add(at));
  }
  for (const [name, tokens] of all.entries()) {
    const at = counterOfGoods(tokens);
    if (at !== null) ofCircuits.set(name, (ofCircuits.get(name) ?? new Set()).add(at));
  }
  return all.map((tokens, name) => {
    const goods = ofCircuits.get(name);
    return goods === undefined
      ? tokens
      : tokens.map((token, at) => (goods.has(at) ? { ...token, meaning: null } : token));
  });
}

/** `Deli counter left`: what counts has no ends. Null where no such counter stands in the name. */
function counterOfGoods(tokens: readonly Token[]): number | null {
  const at = tokens.findIndex(({ text }) => text === 'counter');
  const ends = tokens.at(-1)?.meaning === 'position';
  const roleless = tokens.every(
    ({ meaning }, index) => index === at || meaning === null || meaning === 'position',
  );
  return at > 0 && ends && roleless ? at : null;
}

/** Whether what else stands in these names is what a circuit logs: water loops have valves and set points but no defrost. */
function nameACircuit(names: readonly (readonly Token[])[], onlyByDefrost: boolean): boolean {
  const has = names.map((tokens) => wordsIn(tokens));
  const some = (...meanings: readonly Meaning[]): boolean => has.some((one) => one(...meanings));
  const air = some('air', 'discharge', 'supply', 'return');
  const controlled = some('set', 'valve', 'feed');
  return some('defrost') ? air || controlled : !onlyByDefrost && air && controlled;
}

/**
 * The same of a code that says a role elsewhere: each of the three that a circuit logs must stand behind it, or several
 * temperatures and a set point (`Prod-1:Temp:2`, `Prod-1:Setpoint`).
 */
function standBeforeAll(names: readonly (readonly Token[])[]): boolean {
  const has = names.map((tokens) => wordsIn(tokens));
  const count = (...meanings: readonly Meaning[]): number => has.filter((one) => one(...meanings)).length;
  if (count('set') > 0 && count('temperature', 'air') - count('set') > 1) return true;
  const air = count('air', 'probe', 'discharge', 'supply', 'temperature');
  return count('defrost') > 0 && count('set', 'valve', 'feed') > 0 && air > 0;
}

function isGoods({ meaning }: Token): boolean {
  return meaning !== null && (ofCases.has(meaning) || ofPlantToo.has(meaning));
}

function isCode({ meaning, text }: Token): boolean {
  return meaning !== null && text.length <= longestCode && !neverACode.has(meaning);
}

/**
 * The name that the word at `at` is part of, up to words that say a role; of a code also what ends with it (`01 PROD`
 * of `01 PROD T1`). None where it stands there alone, behind such a word.
 */
function phrasesAround(tokens: readonly Token[], at: number): string[] {
  let from = at;
  while (from > 0 && belongs(tokens, from - 1)) from--;
  let to = at + 1;
  while (to < tokens.length && tokens[to]!.kind === 'word' && belongs(tokens, to)) to++;
  if (to - from === 1 && from > 0) return [];
  const words = tokens.slice(from, to).map(({ text }) => text);
  const phrases = isGoods(tokens[at]!) ? [words.join(' ')] : [];
  if (isCode(tokens[at]!)) phrases.push(words.slice(0, at + 1 - from).join(' '));
  return phrases;
}

/** Words without a role, and numbers other than those of a probe (`air 1`). */
function belongs(tokens: readonly Token[], index: number): boolean {
  const token = tokens[index]!;
  if (token.meaning !== null) return isGoods(token) || besideThem.has(token.meaning);
  const before = tokens[index - 1];
  return (
    token.kind === 'word' || before === undefined || before.meaning === null || belongs(tokens, index - 1)
  );
}
