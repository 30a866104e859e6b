/** Endings by which the importer may tell a container; everything else is told by its content. */
const knownSuffixes = ['.csv.gz', '.txt.gz', '.tsv.gz', '.gz', '.zip', '.csv', '.tsv', '.txt'];

/** The ending of the stored file, one of ours. */
export function storedSuffix(name: string): string {
  const lower = name.toLowerCase();
  return knownSuffixes.find((suffix) => lower.endsWith(suffix)) ?? '.csv';
}

/** The sender's name for people to read: its last part, without control characters, at most 120 characters. */
export function displayName(sent: string | undefined, otherwise: string): string {
  const last = (sent ?? '').split(/[/\\]/).at(-1) ?? '';
  const clean = last.replace(/[\p{Cc}\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu, '').trim();
  return [...clean].slice(0, 120).join('') || otherwise;
}
