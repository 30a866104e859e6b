import { groupedBy } from '../points/grouped-by.ts';
import { wordsIn } from './kind.ts';
import type { Token } from './tokens.ts';

type Tokens = readonly Token[];

/**
 * `T1 Air` and `T1 Defrost`: a letter and number in front of columns of several kinds are a name, so that the letter says
 * nothing of what is measured, as it does in `T1` beside `D1` and `V1`.
 */
export function withLettersOfNames(all: readonly Tokens[]): readonly Tokens[] {
  const named = new Set<Tokens>();
  for (const together of groupedBy(all.filter(isLettered), frontOf).values()) {
    const has = together.map((tokens) => wordsIn(tokens.slice(2)));
    const kinds = [
      has.some((one) => one('defrost')),
      has.some((one) => one('valve', 'feed', 'fan', 'compressor')),
      has.some((one) =>
        one('air', 'set', 'discharge', 'return', 'supply', 'suction', 'temperature', 'probe'),
      ),
    ];
    if (kinds.filter(Boolean).length > 1) for (const tokens of together) named.add(tokens);
  }
  return all.map((tokens) => (named.has(tokens) ? tokens.with(0, { ...tokens[0]!, ofName: true }) : tokens));
}

function isLettered([letter, number]: Tokens): boolean {
  return letter?.text.length === 1 && number?.kind === 'number' && number.from === letter.to;
}

function frontOf([letter, number]: Tokens): string {
  return `${letter!.text} ${number!.text}`;
}
