/** Month, zone and clock words in time stamps, by their letters a to z in lower case without accents. */

const monthNames: readonly (readonly string[])[] = [
  ['jan', 'january', 'januar', 'janvier', 'janv', 'enero', 'ene', 'gennaio', 'gen', 'januari', 'sty'],
  ['feb', 'february', 'februar', 'fevrier', 'fev', 'fevr', 'febrero', 'febbraio', 'februari', 'lut'],
  ['mar', 'march', 'marz', 'maerz', 'mrz', 'mars', 'marzo', 'maart', 'mrt'],
  ['apr', 'april', 'avril', 'avr', 'abril', 'abr', 'aprile', 'kwi'],
  ['may', 'mai', 'mayo', 'maggio', 'mag', 'mei', 'maj'],
  ['jun', 'june', 'juni', 'juin', 'junio', 'giugno', 'giu', 'cze'],
  ['jul', 'july', 'juli', 'juillet', 'juil', 'julio', 'luglio', 'lug', 'lip'],
  ['aug', 'august', 'aout', 'aou', 'agosto', 'ago', 'augustus', 'augusti', 'sie'],
  ['sep', 'sept', 'september', 'septembre', 'septiembre', 'settembre', 'set', 'setembro', 'wrz'],
  ['oct', 'october', 'okt', 'oktober', 'octobre', 'octubre', 'ottobre', 'ott', 'outubro', 'out', 'paz'],
  ['nov', 'november', 'novembre', 'noviembre', 'novembro', 'lis'],
  [
    'dec',
    'december',
    'dez',
    'dezember',
    'decembre',
    'diciembre',
    'dic',
    'dicembre',
    'dezembro',
    'des',
    'desember',
    'gru',
  ],
];

const months = new Map<string, number>();
for (const [index, names] of monthNames.entries()) for (const name of names) months.set(name, index + 1);

/** 1 to 12, or 0 for a word that is no month. */
export function monthOf(word: string): number {
  return months.get(word) ?? 0;
}

/** Offset of a zone abbreviation from UTC in minutes. Only those with one meaning in the trade's countries. */
const zoneOffsets = new Map<string, number>(
  Object.entries({
    utc: 0,
    gmt: 0,
    z: 0,
    wet: 0,
    bst: 60,
    cet: 60,
    mez: 60,
    west: 60,
    cest: 120,
    mesz: 120,
    eet: 120,
    eest: 180,
    nst: -210,
    ndt: -150,
    ast: -240,
    adt: -180,
    est: -300,
    edt: -240,
    cst: -360,
    cdt: -300,
    mst: -420,
    mdt: -360,
    pst: -480,
    pdt: -420,
    akst: -540,
    akdt: -480,
    hst: -600,
    aest: 600,
    aedt: 660,
    nzst: 720,
    nzdt: 780,
  }),
);

export function zoneOffsetOf(word: string): number | undefined {
  return zoneOffsets.get(word);
}

const ignored = new Set(
  (
    'mon tue tues wed thu thur thurs fri sat sun monday tuesday wednesday thursday friday saturday sunday ' +
    'mo di mi do fr sa so montag dienstag mittwoch donnerstag freitag samstag sonntag uhr st nd rd th de of at ' +
    'lun mer jeu ven sam dim lundi mardi mercredi jeudi vendredi samedi dimanche le um kl klo del ore alle om'
  ).split(' '),
);

/** Weekdays and fillers, which say nothing that the numbers do not. */
export function isFiller(word: string): boolean {
  return ignored.has(word);
}
