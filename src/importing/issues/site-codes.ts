import type { IssueMeaning } from './issue-meaning.ts';

/** What naming, the site file and assembly have to say, beside what the reading of files says. */
export const siteIssues = {
  'circuits-guessed': {
    what: 'circuits and probes were guessed from names, units and behaviour',
    meaning: 'No site file names them. What was guessed, and why, stands in the draft of a site file.',
    remedy: 'Look the draft over (rimelog draft-site), correct it and give it as --site.',
    effect: 'note',
  },
  'nothing-recognised': {
    what: 'no column looks like the air of a case or a part of a rack',
    meaning: 'Neither names nor values say what the columns are, so nothing is judged.',
    remedy: 'Name the points in a site file.',
    effect: 'note',
  },
  'guess-unsure': {
    what: 'part of the guess is unsure',
    meaning: 'The message asks what would settle it.',
    remedy: 'Answer it in the site file.',
    effect: 'note',
  },
  'unit-guessed': {
    what: 'columns without a unit were read in a guessed one',
    meaning: 'The unit was told from where the values stand and from the other columns.',
    remedy: 'Say it under units in the site file, or with --temperature-unit or --pressure-unit.',
    effect: 'note',
  },
  'unit-open': {
    what: 'columns without a unit were written without one',
    meaning: 'Values and other columns suggest a unit, but not surely enough for normalize to write it.',
    remedy: 'Say it under units in the site file, or with --temperature-unit or --pressure-unit.',
    effect: 'note',
  },
  'unit-doubtful': {
    what: 'a column without a unit stands in the other temperature scale than its neighbours',
    meaning: 'Only in the other scale do its values lie where case air stands.',
    remedy: 'Name the unit in the header, or correct units in the site file.',
    effect: 'note',
  },
  'unit-unexpected': {
    what: 'the unit of a column does not fit its place in the site file',
    meaning: 'A pressure is named as a probe, or the like.',
    remedy: 'Check which column the site file means.',
    effect: 'note',
  },
  'gauge-assumed': {
    what: 'pressures labelled bar or kPa were read as above the atmosphere',
    meaning: 'As absolute pressures they would be a vacuum, which a running rack does not hold.',
    remedy: 'Label the column barg or bara.',
    effect: 'note',
  },
  'pressure-reference': {
    what: 'pressures labelled bar or kPa were read as absolute',
    meaning: 'The label does not say whether the atmosphere is included. Saturation temperatures rest on it.',
    remedy: 'Label the column barg or bara.',
    effect: 'note',
  },
  'state-from-amount': {
    what: 'on and off were told from an amount (power, speed, per cent, a mode number)',
    meaning:
      'The site file uses the column as a state. Values above the threshold in the message count as on.',
    remedy: 'Nothing to do if the threshold is right; else export the state itself.',
    effect: 'note',
  },
  'files-joined': {
    what: 'points that stand in several files were joined by time',
    meaning: 'The files continue or repeat each other.',
    remedy: 'If they are different points, name them FILE-STEM:HEADER in a site file.',
    effect: 'note',
  },
  'files-shifted': {
    what: 'one file repeats another at times moved by hours',
    meaning:
      'The same log was exported in two time zones, or by a clock that was not put forward. The files were taken for different points.',
    remedy: 'Leave one of them out, or export both with UTC offsets.',
    effect: 'note',
  },
  'files-conflict': {
    what: 'two files give different readings of one point for the same time; the later file was believed',
    meaning: 'Overlapping exports differ.',
    remedy: 'Leave one of the files out to believe the other.',
    effect: 'note',
  },
  'point-missing': {
    what: 'the site file names a point that the export does not hold',
    meaning: 'What rests on that point is not judged.',
    remedy: 'Correct the name, or export that column too.',
    effect: 'note',
  },
  'point-ambiguous': {
    what: 'the site file names a header that several files carry for different points',
    meaning: 'One file a circuit repeats the same headers.',
    remedy: 'Write FILE-STEM:HEADER.',
    effect: 'note',
  },
  'point-renamed': {
    what: 'one point ends where another begins, at the same level; perhaps it was renamed',
    meaning: 'They are kept apart: joining the wrong two would hide a change of probe.',
    remedy: 'If it is one point, give both columns the same name in the export.',
    effect: 'note',
  },
  'circuit-without-probes': {
    what: 'a circuit of the site file is left out, because the export holds none of its probes',
    meaning: 'Another rack’s export, or renamed columns.',
    remedy: 'Correct the names, or export those columns too.',
    effect: 'note',
  },
  'site-file-empty': {
    what: 'the site file is empty',
    meaning: 'It says nothing.',
    remedy: 'Leave --site out to have the columns guessed.',
    effect: 'refusal',
  },
  'site-file-too-large': {
    what: 'the site file is larger than two million characters',
    meaning: 'It is probably an export.',
    remedy: 'Give the site file as --site, and exports without it.',
    effect: 'refusal',
  },
  'site-file-syntax': {
    what: 'the site file is neither YAML nor JSON',
    meaning: 'The message names the line and column where reading stopped.',
    remedy: 'Correct that line.',
    effect: 'refusal',
  },
  'site-file-invalid': {
    what: 'the site file says something that a site file cannot say',
    meaning: 'An unknown key, a value of the wrong kind, an id used twice or a reference that leads nowhere.',
    remedy: 'Correct the line; the message names the nearest known key.',
    effect: 'refusal',
  },
  'site-file-matches-nothing': {
    what: 'the site file and the export have no point in common',
    meaning: 'They belong to different stores, or the columns were renamed.',
    remedy: 'Give the site file of this store, or draft a new one.',
    effect: 'refusal',
  },
  'span-empty': {
    what: '--from and --to leave nothing of the export',
    meaning: 'The export covers another time.',
    remedy: 'Choose times inside the span that the message names.',
    effect: 'refusal',
  },
  'time-not-understood': {
    what: 'a time given on the command line is not understood',
    meaning: 'A date, or date and time, is expected.',
    remedy: 'Write 2026-09-01, 2026-09-01T06:00 or 2026-09-01T06:00-06:00.',
    effect: 'refusal',
  },
} as const satisfies { readonly [code: string]: IssueMeaning };
