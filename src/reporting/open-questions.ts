import type { Diagnosis } from '../model/finding.ts';

/** One thing that cannot be judged, with every place that it concerns. */
export interface OpenQuestion {
  readonly reason: string;
  readonly needs: string | null;
  readonly places: readonly string[];
}

/** Abstentions with the same reason and remedy said once, the widest first. */
export function openQuestions(diagnosis: Diagnosis): readonly OpenQuestion[] {
  const questions = new Map<string, { reason: string; needs: string | null; places: Set<string> }>();
  for (const { reason, needs, circuit, suctionGroup } of diagnosis.abstentions) {
    const key = JSON.stringify([reason, needs]);
    const question = questions.get(key) ?? {
      reason: sentence(reason),
      needs: needs === null ? null : sentence(needs),
      places: new Set<string>(),
    };
    const place = circuit ?? suctionGroup;
    if (place !== null) question.places.add(place);
    questions.set(key, question);
  }
  return [...questions.values()]
    .map((question) => ({ ...question, places: [...question.places] }))
    .sort((a, b) => b.places.length - a.places.length);
}

/** `M01, M02 and 11 more`. */
export function placesText(places: readonly string[], shown = 6): string {
  if (places.length <= shown) return places.join(', ');
  return `${places.slice(0, shown - 1).join(', ')} and ${places.length - shown + 1} more`;
}

function sentence(text: string): string {
  const start = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?]$/.test(start) ? start : `${start}.`;
}
