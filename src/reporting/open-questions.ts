import type { Diagnosis } from '../model/finding.ts';
import type { Log } from '../model/log.ts';
import { pointsOf } from './points-of.ts';

/** One thing that cannot be judged, with every place that it concerns. */
export interface OpenQuestion {
  readonly reason: string;
  readonly needs: string | null;
  readonly places: readonly string[];
}

interface Gathering {
  readonly before: string;
  readonly after: string;
  readonly needs: string | null;
  readonly points: Set<string>;
  readonly places: Set<string>;
}

/** Abstentions that differ only in the point they name are said once, the widest first. */
export function openQuestions(diagnosis: Diagnosis, log: Log): readonly OpenQuestion[] {
  const known = pointsOf(log).sort((a, b) => b.length - a.length);
  const gatherings = new Map<string, Gathering>();
  for (const { reason, needs, circuit, suctionGroup } of diagnosis.abstentions) {
    const point = known.find((each) => reason.startsWith(each)) ?? null;
    const [before, after] = point === null ? [reason, ''] : ['', reason.slice(point.length)];
    const key = JSON.stringify([before, after, needs]);
    const gathering = gatherings.get(key) ?? { before, after, needs, points: new Set(), places: new Set() };
    if (point !== null) gathering.points.add(point);
    const place = circuit ?? suctionGroup;
    if (place !== null) gathering.places.add(place);
    gatherings.set(key, gathering);
  }
  return [...gatherings.values()].map(questionOf).sort((a, b) => b.places.length - a.places.length);
}

function questionOf({ before, after, needs, points, places }: Gathering): OpenQuestion {
  const verb =
    points.size > 1 ? after.replace(/^ (is|has) /, (_, word) => (word === 'is' ? ' are ' : ' have ')) : after;
  const reason = points.size === 0 ? before : `${placesText([...points], 3)}${verb}`;
  return {
    reason: sentence(reason, points.size === 0),
    needs: needs === null ? null : sentence(needs, true),
    places: [...places],
  };
}

/** `M01, M02 and 11 more`. */
export function placesText(places: readonly string[], shown = 6): string {
  if (places.length <= 1) return places.join('');
  if (places.length <= shown) return `${places.slice(0, -1).join(', ')} and ${places.at(-1)}`;
  return `${places.slice(0, shown - 1).join(', ')} and ${places.length - shown + 1} more`;
}

function sentence(text: string, capital: boolean): string {
  const start = capital ? text.charAt(0).toUpperCase() + text.slice(1) : text;
  return /[.!?]$/.test(start) ? start : `${start}.`;
}
