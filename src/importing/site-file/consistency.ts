import { knownZone } from '../time/zone.ts';
import type { Mistake } from './mistake.ts';
import { nearestName } from './nearest-name.ts';
import type { SiteFile } from './schema.ts';

/** What the schema cannot say: ids used once, references that exist, a time zone that the machine knows. */
export function inconsistencies(site: SiteFile): Mistake[] {
  const groups = (site.racks ?? []).flatMap((rack, rackIndex) =>
    (rack.suctionGroups ?? []).map((group, index) => ({
      id: group.id,
      path: ['racks', rackIndex, 'suctionGroups', index, 'id'],
    })),
  );
  const circuits = (site.circuits ?? []).map((circuit, index) => ({
    id: circuit.id,
    path: ['circuits', index, 'id'],
  }));
  const racks = (site.racks ?? []).map((rack, index) => ({ id: rack.id, path: ['racks', index, 'id'] }));
  return [
    ...timeZoneMistakes(site),
    ...repeated('rack', racks),
    ...repeated('suction group', groups),
    ...repeated('circuit', circuits),
    ...(site.circuits ?? []).flatMap((circuit, index) => [
      ...groupMistakes(
        circuit.suctionGroup,
        index,
        groups.map(({ id }) => id),
      ),
      ...controlMistakes(circuit.controls, circuit.probes, index),
    ]),
  ];
}

type Named = { readonly id: string; readonly path: readonly PropertyKey[] };

function timeZoneMistakes({ timeZone }: SiteFile): Mistake[] {
  if (timeZone === undefined || knownZone(timeZone)) return [];
  const near = nearestName(timeZone, Intl.supportedValuesOf('timeZone'));
  const hint = near === null ? 'An IANA name such as America/Denver is expected' : `Did you mean ${near}`;
  return [
    {
      path: ['timeZone'],
      sentence: `\`timeZone\`: ${timeZone} is not a known time zone. ${hint}${near === null ? '.' : '?'}`,
    },
  ];
}

function repeated(what: string, named: readonly Named[]): Mistake[] {
  const seen = new Set<string>();
  const mistakes: Mistake[] = [];
  for (const { id, path } of named) {
    if (seen.has(id))
      mistakes.push({ path, sentence: `the ${what} id ${id} is used twice; give each its own.` });
    seen.add(id);
  }
  return mistakes;
}

function groupMistakes(id: string | undefined, index: number, known: readonly string[]): Mistake[] {
  if (id === undefined || known.includes(id)) return [];
  const near = nearestName(id, known);
  const hint = known.length === 0 ? 'the file names no suction group' : `known: ${known.join(', ')}`;
  return [
    {
      path: ['circuits', index, 'suctionGroup'],
      sentence: `there is no suction group ${id}; ${near === null ? `${hint}.` : `did you mean ${near}?`}`,
    },
  ];
}

function controlMistakes(controls: string | undefined, probes: readonly string[], index: number): Mistake[] {
  const words = ['average', 'warmest', 'coldest'];
  if (controls === undefined || words.includes(controls) || probes.includes(controls)) return [];
  const near = nearestName(controls, [...words, ...probes]);
  return [
    {
      path: ['circuits', index, 'controls'],
      sentence: `\`controls\`: ${controls} is neither average, warmest, coldest nor one of the circuit's probes${near === null ? '.' : `; did you mean ${near}?`}`,
    },
  ];
}
