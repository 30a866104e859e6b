import { ImportRefusal } from '../importing/readings.ts';
import type { Log } from '../model/log.ts';

const mostNamed = 12;

/** The id of a circuit as the user wrote it, in whatever case. Throws ImportRefusal that names those there are. */
export function requireCircuit({ circuits }: Log, asked: string): string {
  const found =
    circuits.find(({ id }) => id === asked) ??
    circuits.find(({ id, name }) => [id, name].some((text) => text.toLowerCase() === asked.toLowerCase()));
  if (found !== undefined) return found.id;
  const ids = circuits.map(({ id }) => id);
  const more = ids.length > mostNamed ? ` and ${ids.length - mostNamed} more` : '';
  throw new ImportRefusal(
    'circuit-unknown',
    ids.length === 0
      ? 'The export has no circuits; a site file says which columns belong to one.'
      : `There is no circuit ${asked}; the circuits are ${ids.slice(0, mostNamed).join(', ')}${more}.`,
  );
}
