import { groupedBy } from '../points/grouped-by.ts';
import { namesOnly, type ResidualToken, residualOf } from './residual.ts';
import type { NamedColumn, Role } from './role.ts';
import { textOf } from './tokens.ts';

/** One of each stands at a circuit, so what is left of its name is the circuit's. */
const oneAtACircuit: ReadonlySet<Role> = new Set<Role>(['set-point', 'defrost', 'valve', 'superheat']);
/** Past this many names no store is meant, and the search would take long. */
const mostNames = 400;

/** The names of circuits as their set points, defrosts and valves carry them; two of these must agree on one. */
export class NamesOfOthers {
  readonly #names: readonly (readonly string[])[];

  constructor(others: readonly NamedColumn[]) {
    const carried = others
      .filter(({ role }) => oneAtACircuit.has(role))
      .map((column) => ({ role: column.role, name: namesOnly(residualOf(column)) }))
      .filter(({ name }) => name.length > 0);
    const agreed = [...groupedBy(carried, ({ name }) => textOf(name)).values()]
      .filter((same) => new Set(same.map(({ role }) => role)).size > 1)
      .map(([first]) => first!.name.map(({ text }) => text));
    this.#names = agreed.length > mostNames ? [] : agreed;
  }

  /** The tokens that spell the longest such name, the earliest where several do; null where none stands there. */
  within(residual: readonly ResidualToken[]): readonly ResidualToken[] | null {
    let best: readonly ResidualToken[] | null = null;
    for (const name of this.#names) {
      const spelt = spelling(residual, name);
      if (spelt === null || (best !== null && spelt.length < best.length)) continue;
      if (best === null || spelt.length > best.length || isEarlier(spelt, best)) best = spelt;
    }
    return best;
  }
}

/** The tokens that spell the name in order, words between them or not; another number in place of one of its own ends it. */
function spelling(
  residual: readonly ResidualToken[],
  name: readonly string[],
): readonly ResidualToken[] | null {
  const found: ResidualToken[] = [];
  for (const token of residual) {
    const wanted = name[found.length];
    if (wanted === undefined) break;
    if (token.mark === 'probe' && isNumber(token.text)) continue;
    if (token.text === wanted) found.push(token);
    else if (isNumber(wanted) && isNumber(token.text)) return null;
  }
  return found.length === name.length ? found : null;
}

const isNumber = (text: string): boolean => /^\d+$/.test(text);

function isEarlier(a: readonly ResidualToken[], b: readonly ResidualToken[]): boolean {
  for (const [index, token] of a.entries()) {
    if (token.from !== b[index]!.from) return token.from < b[index]!.from;
  }
  return false;
}
