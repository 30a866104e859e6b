import type { RoundDocument, RoundRefusal, RoundStop, RoundStore } from './round-document.ts';

/** What is known of a stop beside its summary, a line each. */
export function stopFacts(stop: RoundStop): { readonly label: string; readonly text: string }[] {
  const { since, pace, confidence, toLimit, now, cause, bring, others } = stop;
  const lines: readonly (readonly [string, string | null])[] = [
    ['since', [since, ...(pace === null ? [] : [pace]), `confidence ${confidence}`].join(' · ')],
    ['to limit', toLimit],
    ['now', now],
    ['probably', cause],
    ['bring', bring.length === 0 ? null : bring.join(', ')],
    ['also', others === 0 ? null : `${others} more in the report of the store`],
  ];
  return lines.flatMap(([label, text]) => (text === null ? [] : [{ label, text }]));
}

const spanOf = ({ store, span }: RoundStore): string => `${store}: ${span}`;

/** The spans that the stops rest on: an old export is old news. */
export function newsOf({ stores }: RoundDocument): string[] {
  return stores.filter(({ stops }) => stops > 0).map(spanOf);
}

export function quietStores({ stores }: RoundDocument): string[] {
  return stores
    .filter(({ stops, notJudged }) => stops === 0 && notJudged === null)
    .map((store) => `${spanOf(store)}, ${circuitsText(store)}${reserves(store)}`);
}

function circuitsText({ circuits }: RoundStore): string {
  return `${circuits} ${circuits === 1 ? 'circuit' : 'circuits'}`;
}

function reserves({ notes, open }: RoundStore): string {
  const parts = [
    ...(notes === 0 ? [] : [`${notes} ${notes === 1 ? 'note' : 'notes'}`]),
    ...(open === 0 ? [] : [`${open} open ${open === 1 ? 'question' : 'questions'}`]),
  ];
  return parts.length === 0 ? '' : ` (${parts.join(', ')})`;
}

/** Stores without a circuit, and inputs that cannot be used: no all-clear. */
export function unknownStores({ stores, unreadable }: RoundDocument): string[] {
  return [
    ...stores.flatMap((store) =>
      store.notJudged === null ? [] : [`${spanOf(store)} (${store.source}). ${store.notJudged}`],
    ),
    ...unreadable.map(refusalText),
  ];
}

/** Most refusals begin with the name of the file. */
function refusalText({ source, message }: RoundRefusal): string {
  const name = source.split(/[\\/]/u).at(-1)!;
  if (message.startsWith(source)) return message;
  return message.startsWith(`${name}:`) ? `${source}${message.slice(name.length)}` : `${source}: ${message}`;
}
