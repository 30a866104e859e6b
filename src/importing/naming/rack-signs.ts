import type { NamedColumn } from './role.ts';
import type { Token } from './tokens.ts';
import type { Meaning } from './vocabulary.ts';

/** C1 and K1 of a compressor, V1 of a Verdichter. */
const machineLetters: ReadonlySet<string> = new Set(['c', 'k', 'v']);
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
 * moves, beside `MT RACK DP`, is the suction pressure and no set point.
 */
export function withRackSigns(columns: readonly NamedColumn[]): NamedColumn[] {
  const pressures = columns.filter(({ kind }) => kind === 'pressure');
  const names = new Set(pressures.map(nameBeforeSide).filter((name) => name !== ''));
  const ofCircuits = new Set(
    columns
      .filter(({ role }) => role === 'air' || role === 'defrost')
      .map(({ tokens }) => textOf(tokens.slice(0, -1))),
  );
  const signed = (last: string) =>
    new Set(pressures.filter(({ tokens }) => tokens.at(-1)?.text === last).map(nameBeforeSide));
  const both = { sp: signed('sp'), dp: signed('dp') };
  return columns.map((column) => {
    const { tokens, kind, role } = column;
    const last = tokens.at(-1)?.text;
    if (kind === 'status' && column.confidence < sureByName && isCountedMachine(tokens)) {
      const name = textOf(tokens.slice(0, -2));
      if (!names.has(name) || ofCircuits.has(name)) return column;
      const because = 'it is counted under the name of a pressure';
      return { ...column, tokens: meant(tokens, -2, 'compressor'), role: 'compressor', confidence, because };
    }
    if (last === 'disp' && kind === 'number' && names.has(textOf(tokens.slice(0, -1)))) {
      const because = 'DISP under the name of a suction pressure is the discharge pressure';
      return {
        ...column,
        kind: 'pressure',
        tokens: meant(tokens, -1, 'highSide'),
        role: 'discharge-pressure',
        confidence,
        because,
      };
    }
    if (kind !== 'pressure' || (last !== 'sp' && last !== 'dp')) return column;
    const name = nameBeforeSide(column);
    if (!both.sp.has(name) || !both.dp.has(name)) return column;
    const because = 'SP and DP under one name are suction and discharge pressure, and it moves';
    if (last === 'dp')
      return {
        ...column,
        tokens: meant(tokens, -1, 'highSide'),
        role: 'discharge-pressure',
        confidence,
        because,
      };
    const moves = role === 'suction-set-point' && column.facts.distinct >= fewestOfAReading;
    return moves
      ? { ...column, tokens: meant(tokens, -1, 'suction'), role: 'suction-pressure', confidence, because }
      : column;
  });
}

function meant(tokens: readonly Token[], at: number, meaning: Meaning): readonly Token[] {
  return tokens.with(at, { ...tokens.at(at)!, meaning });
}

function isCountedMachine(tokens: readonly Token[]): boolean {
  const [letter, number] = tokens.slice(-2);
  return (
    letter !== undefined &&
    machineLetters.has(letter.text) &&
    number?.kind === 'number' &&
    number.from === letter.to
  );
}

/** `R1` of `R1-SucP`; the whole but its last word where none says a side. */
function nameBeforeSide({ tokens }: NamedColumn): string {
  const at = tokens.findIndex(({ meaning }) => sides.has(meaning));
  return textOf(tokens.slice(0, at < 0 ? -1 : at));
}

function textOf(tokens: readonly Token[]): string {
  return tokens.map(({ text }) => text).join(' ');
}
