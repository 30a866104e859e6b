import { endedByProbeLetter } from '../header/probe-letters.ts';
import type { Point } from '../points/point.ts';
import { type ColumnFacts, factsOf } from './column-facts.ts';
import { withFurniture } from './furniture.ts';
import { withoutGoods } from './goods.ts';
import { intervalStatistics } from './interval-statistics.ts';
import { type Kind, kindOf, wordsIn } from './kind.ts';
import { withLettersOfNames } from './letters-of-names.ts';
import { namesToRead } from './name-to-read.ts';
import { type Role, roleOf } from './role-rules.ts';
import { withRoomsOfCircuits } from './rooms.ts';
import { withShortForms } from './short-forms.ts';
import { type Token, textOf, tokensOf } from './tokens.ts';
import type { Meaning } from './vocabulary.ts';

export type { Kind } from './kind.ts';
export type { Role } from './role-rules.ts';

/** A column with everything the guess knows of it. */
export interface NamedColumn {
  readonly point: Point;
  /** What its words were read from: the header, or the name of the file and the header. */
  readonly name: string;
  readonly tokens: readonly Token[];
  readonly facts: ColumnFacts;
  readonly kind: Kind;
  readonly role: Role;
  /** 0 to 1: how sure the role is. */
  readonly confidence: number;
  readonly because: string;
}

/** All columns of a site; words at the front that every column shares (`Store 12/Rack A/`) say nothing of a role. */
export function nameColumns(points: readonly Point[]): NamedColumn[] {
  const names = namesToRead(points);
  const { tokens: named, extremes } = intervalStatistics(withFurniture(names.map(tokensOf)));
  const tokens = withLettersOfNames(
    withWeather(withoutUnitLetters(withoutGoods(withRoomsOfCircuits(withShortForms(named))))),
  );
  const shared = sharedFront(tokens);
  const underStore = storeFolder(tokens);
  return points.map((point, index) => {
    const column = nameColumn(
      point,
      names[index]!,
      tokens[index]!,
      Math.max(shared, underStore.has(tokens[index]!) ? 1 : 0),
    );
    return extremes.has(index) ? { ...column, role: 'other', confidence: 0.95, because: ofInterval } : column;
  });
}

const ofInterval = 'the least or greatest within each interval, whose mean stands beside it';

/** `M01_Air1_F`: a last F or C in many names is the unit, unless other names end in A or B or it tells probes apart. */
function withoutUnitLetters(all: readonly (readonly Token[])[]): readonly (readonly Token[])[] {
  const names = all.map(textOf);
  const probeLetters = endedByProbeLetter(names);
  const lasts = all.map((tokens, index) =>
    probeLetters.has(names[index]!) ? '' : (tokens.at(-1)?.text ?? ''),
  );
  const letters = new Set(lasts.filter((last) => last.length === 1));
  const unit = ['f', 'c'].find((letter) => letters.has(letter) && !letters.has('a') && !letters.has('b'));
  if (unit === undefined || lasts.filter((last) => last === unit).length < 3) return all;
  return all.map((tokens, index) => (lasts[index] === unit ? tokens.slice(0, -1) : tokens));
}

const bareOutlet: ReadonlySet<Meaning | null> = new Set<Meaning | null>(['outlet', 'temperature', 'probe']);
const fewestNamed = 4;

/** `OutTmp` alone among names of circuits is the weather: an outlet would say of what. */
function withWeather(all: readonly (readonly Token[])[]): readonly (readonly Token[])[] {
  const isBare = (tokens: readonly Token[]): boolean =>
    wordsIn(tokens)('outlet') && tokens.every(({ meaning }) => bareOutlet.has(meaning));
  const named = all.filter((tokens) => tokens.some(({ meaning }) => meaning === null)).length;
  if (named < fewestNamed || all.filter(isBare).length !== 1) return all;
  return all.map((tokens) =>
    isBare(tokens)
      ? tokens.map((token) =>
          token.meaning === 'outlet' ? { ...token, meaning: 'outdoor' as const } : token,
        )
      : tokens,
  );
}

/**
 * The names under `Store/`, a folder of the whole shop where defrosts or valves stand in it too: the first word
 * of these says nothing. `Store temp` alone is the room.
 */
function storeFolder(all: readonly (readonly Token[])[]): ReadonlySet<readonly Token[]> {
  const folder = all.filter(([first]) => first?.meaning === 'indoor');
  const holdsCircuits = folder.some((tokens) =>
    tokens.some(({ meaning }) => meaning === 'defrost' || meaning === 'valve'),
  );
  return new Set(holdsCircuits ? folder : []);
}

const rolelessInFront: ReadonlySet<Meaning | null> = new Set<Meaning | null>([
  'indoor',
  'outdoor',
  'low',
  'medium',
  'control',
]);

function sharedFront(all: readonly (readonly Token[])[]): number {
  const [first, ...rest] = all;
  if (first === undefined || rest.length < 3) return 0;
  let shared = 0;
  while (first[shared] !== undefined && rest.every((tokens) => tokens[shared]?.text === first[shared]!.text))
    shared++;
  return shared;
}

function nameColumn(point: Point, name: string, written: readonly Token[], shared: number): NamedColumn {
  const tokens = written.map((token, index) =>
    index < shared && rolelessInFront.has(token.meaning) ? { ...token, meaning: null } : token,
  );
  const facts = factsOf(point);
  const has = wordsIn(tokens);
  const kind = kindOf(point, facts, tokens, has);
  const { role, confidence, because } = roleOf(kind, has, facts);
  return { point, name, tokens, facts, kind, role, confidence, because };
}
