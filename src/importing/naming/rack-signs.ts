import { wordsIn } from './kind.ts';
import type { NamedColumn } from './role.ts';
import { type Token, textOf } from './tokens.ts';
import type { Meaning } from './vocabulary.ts';

/** C1, CP1 and K1 of a compressor, V1 of a Verdichter. */
const machineLetters: ReadonlySet<string> = new Set(['c', 'cp', 'k', 'v']);
const sides: ReadonlySet<Meaning | null> = new Set<Meaning | null>([
  'suction',
  'discharge',
  'highSide',
  'condenser',
  'pressure',
  'set',
]);
/** A set point that takes as many values is none. */
const fewestOfAReading = 12;
/** Role guesses below this rest on behaviour alone. */
const sureByName = 0.7;
const confidence = 0.8;

/**
 * What one or two letters say under the name of a pressure: `R1-C1` beside `R1-SucP` is a compressor; `MT RACK SP` that
 * moves, beside `MT RACK DP`, is the suction pressure and no set point; `RACKA.DISP` beside `RACKA.SUCP` the other side.
 */
export function withRackSigns(columns: readonly NamedColumn[]): NamedColumn[] {
  const pressures = columns.filter(({ kind }) => kind === 'pressure');
  const named = new Set(pressures.map(nameBeforeSide).filter((name) => name !== ''));
  const ofCircuits = new Set(columns.filter(saysCircuit).map(({ tokens }) => textOf(tokens.slice(0, -1))));
  const signed = (sign: string) =>
    new Set(pressures.filter(({ tokens }) => tokens.at(-1)?.text === sign).map(nameBeforeSide));
  const both = new Set([...signed('sp')].filter((name) => signed('dp').has(name)));
  return columns.map((column) => machine(column, named, ofCircuits) ?? side(column, named, both) ?? column);
}

const air: readonly Meaning[] = ['air', 'temperature', 'probe', 'supply'];

/** A defrost or air by its words: `R1 discharge` may be a pressure. */
function saysCircuit({ role, confidence: sure, tokens }: NamedColumn): boolean {
  if (role === 'defrost') return sure >= sureByName;
  return role === 'air' && wordsIn(tokens)(...air);
}

function machine(
  column: NamedColumn,
  named: ReadonlySet<string>,
  ofCircuits: ReadonlySet<string>,
): NamedColumn | null {
  const { tokens } = column;
  if (column.kind !== 'status' || column.confidence >= sureByName) return null;
  const at = tokens.findLastIndex(({ kind }) => kind === 'number') - 1;
  const letter = tokens[at];
  const isCounted =
    letter !== undefined && machineLetters.has(letter.text) && tokens[at + 1]!.from === letter.to;
  const onlyState = tokens.slice(at + 2).every(({ meaning }) => meaning === 'status');
  const name = textOf(tokens.slice(0, Math.max(0, at)));
  if (!isCounted || !onlyState || !named.has(name) || ofCircuits.has(name)) return null;
  const because = 'it is counted under the name of a pressure';
  return { ...column, tokens: meant(tokens, at, 'compressor'), role: 'compressor', confidence, because };
}

function side(
  column: NamedColumn,
  named: ReadonlySet<string>,
  both: ReadonlySet<string>,
): NamedColumn | null {
  const { tokens, kind, facts } = column;
  const last = tokens.at(-1)?.text;
  const name = textOf(tokens.slice(0, -1));
  if (last === 'disp' && kind === 'number' && named.has(name))
    return ofSide(column, 'highSide', 'DISP stands under the name of a suction pressure');
  if (kind !== 'pressure' || !both.has(name)) return null;
  if (last === 'dp') return ofSide(column, 'highSide', 'DP stands beside the SP of the suction pressure');
  const moves = last === 'sp' && facts.distinct >= fewestOfAReading;
  return moves
    ? ofSide(column, 'suction', 'SP stands beside a DP and moves, so that it is no set point')
    : null;
}

function ofSide(column: NamedColumn, meaning: 'suction' | 'highSide', because: string): NamedColumn {
  const role = meaning === 'suction' ? 'suction-pressure' : 'discharge-pressure';
  return {
    ...column,
    kind: 'pressure',
    tokens: meant(column.tokens, -1, meaning),
    role,
    confidence,
    because,
  };
}

function meant(tokens: readonly Token[], at: number, meaning: Meaning): readonly Token[] {
  return tokens.with(at, { ...tokens.at(at)!, meaning });
}

/** `R1` of `R1-SucP`; the whole but its last word where none says a side. */
function nameBeforeSide({ tokens }: NamedColumn): string {
  const at = tokens.findIndex(({ meaning }) => sides.has(meaning));
  return textOf(tokens.slice(0, at < 0 ? -1 : at));
}
