import { h, visible } from '../dom.ts';
import type { CircuitBackground } from '../json.ts';
import { plainTable } from './plain-table.ts';
import { readingQuestion } from './reading-question.ts';

const usualText =
  'Usual: nine tenths of the readings of quiet days lie above its lower end, nine tenths below its upper, at the hours of the last reading. What is normal can have been learnt from a fault as old as the export: look at the peers too.';

function normalHere(background: CircuitBackground): HTMLElement {
  const { note, rows, points } = background.normal;
  return h(
    'section',
    { 'aria-labelledby': 'normal' },
    h('h2', { id: 'normal' }, 'Normal here'),
    h('p', {}, visible(note)),
    readingQuestion(background),
    rows.length > 0 && [
      plainTable(
        'What is normal here',
        [
          { title: 'Figure' },
          { title: 'Usual (p10 to p90)' },
          { title: 'At the end', number: true },
          { title: 'Which is' },
          { title: 'Peers' },
        ],
        rows.map((row) => [
          row.figure,
          row.usual,
          row.last,
          row.standing || (row.last === '–' ? '–' : 'usual'),
          row.peers,
        ]),
      ),
      h('p', { class: 'quiet' }, usualText),
    ],
    points.length > 0 && h('details', {}, h('summary', {}, 'By hour of the day'), byHour(background)),
  );
}

function byHour({ normal: { points } }: CircuitBackground): HTMLElement {
  const hours = [...new Set(points.flatMap(({ ranges }) => ranges.map((range) => range.hours)))];
  const rows = points.flatMap(({ point, unit, ranges }) =>
    (['weekday', 'weekend'] as const).flatMap((days) => {
      const own = ranges.filter((range) => range.days === days);
      if (own.length === 0) return [];
      const cells = hours.map((each) => {
        const range = own.find((one) => one.hours === each);
        return range === undefined ? '' : `${range.p10.toFixed(1)} to ${range.p90.toFixed(1)}`;
      });
      return [[`${point}, ${unit}, ${days}`, ...cells]];
    }),
  );
  return plainTable(
    'Usual ranges by hour of the day',
    [{ title: 'Point' }, ...hours.map((title) => ({ title, number: true as const }))],
    rows,
  );
}

function besideSisters({ sisters }: CircuitBackground): HTMLElement | null {
  if (sisters === null || sisters === undefined) return null;
  return h(
    'section',
    { 'aria-labelledby': 'sisters' },
    h('h2', { id: 'sisters' }, 'Beside its sisters'),
    h('p', {}, visible(sisters.summary)),
    sisters.figures.length > 0 &&
      plainTable(
        'Every figure beside those of the sisters',
        [
          { title: 'Figure' },
          { title: visible(sisters.circuit), number: true },
          { title: 'Sisters, lowest to highest', number: true },
          { title: 'It stands' },
        ],
        sisters.figures.map(({ title, words: { own, sisters: others }, outside }) => [
          ...[title, own, others, outside ? 'outside' : 'among them'],
        ]),
      ),
  );
}

function alarmSaid({ alarm: { note, alarms, findings, suggested } }: CircuitBackground): HTMLElement {
  return h(
    'section',
    { 'aria-labelledby': 'alarm-said' },
    h('h2', { id: 'alarm-said' }, 'What the alarm would have said'),
    findings.map(({ title, told, leads, hidden }) => [
      h('h3', {}, visible(title)),
      told && h('p', {}, visible(told)),
      hidden !== null && h('p', { class: 'hidden-why' }, visible(hidden)),
      plainTable(
        `Alarms and ${visible(title)}`,
        [{ title: 'Alarm' }, { title: 'It' }, { title: 'Against the day it could be told' }],
        leads.map(({ alarm, says, fromTold }) => [alarm, says, fromTold ?? '']),
      ),
    ]),
    findings.length > 0 && h('h3', {}, 'Over the whole export'),
    alarms.length > 0 &&
      plainTable(
        'Alarms over the whole export',
        [
          { title: 'Alarm' },
          { title: 'Times it came', number: true },
          { title: 'First' },
          { title: 'Blind a day', number: true },
        ],
        alarms.map((each) => [each.title, String(each.trips), each.firstTrip, each.blindADay]),
      ),
    suggested.length > 0 &&
      h(
        'details',
        {},
        h('summary', {}, 'A limit for each probe from its own quiet days'),
        plainTable(
          'Suggested limits',
          [{ title: 'Probe' }, { title: 'Limit', number: true }, { title: 'What it rests on' }],
          suggested.map(({ probe, limit, rests }) => [probe, limit, rests]),
        ),
      ),
    (findings.length > 0 || alarms.length === 0) && h('p', { class: 'quiet' }, visible(note)),
  );
}

type Exposure = NonNullable<CircuitBackground['exposure']>;

function airAbove({ exposure }: CircuitBackground): HTMLElement {
  const heading = h('h2', { id: 'air-above' }, 'Air above its limit');
  if (exposure === null) {
    const why = 'No set point and no limit are known that the air could be held against.';
    return h('section', { 'aria-labelledby': 'air-above' }, heading, h('p', {}, why));
  }
  return h(
    'section',
    { 'aria-labelledby': 'air-above' },
    heading,
    h('p', {}, `Held against ${visible(exposure.limit)}, over the whole export.`),
    plainTable(
      'Time above the limit, probe by probe',
      [
        { title: 'Probe' },
        { title: 'Above', number: true },
        { title: 'Of it in settled air', number: true },
        { title: 'In defrost and after', number: true },
        { title: `Degree-hours, ${exposure.degreeHoursUnit}`, number: true },
        { title: 'Longest', number: true },
        { title: 'From' },
        { title: 'Not known', number: true },
      ],
      exposure.rows.map((row) => [
        row.probe,
        row.above,
        row.settled,
        row.inDefrost,
        row.degreeHours,
        row.longest,
        row.longestFrom,
        row.unknown,
      ]),
    ),
    h('p', { class: 'quiet' }, visible(exposure.note)),
    exposure.coldHolding && coldHolding(exposure.coldHolding, exposure.degreeHoursUnit),
  );
}

/** The published limit beside the alarm limit. */
function coldHolding({ limit, note, rows }: NonNullable<Exposure['coldHolding']>, unit: string): HTMLElement {
  return h(
    'div',
    {},
    h('p', {}, `Held against ${visible(limit)}, over the whole export.`),
    plainTable(
      'Time above the published cold-holding limit, probe by probe',
      [
        { title: 'Probe' },
        { title: 'Above', number: true },
        { title: 'Of it in settled air', number: true },
        { title: `Degree-hours, ${unit}`, number: true },
        { title: 'Longest', number: true },
      ],
      rows.map((row) => [row.probe, row.above, row.settled, row.degreeHours, row.longest]),
    ),
    h('p', { class: 'quiet' }, visible(note)),
  );
}

/** What is normal on the circuit, how it stands beside its sisters, what alarms would have said, and how long its air stood above the limit. */
export function backgroundSections(background: CircuitBackground): HTMLElement {
  return h(
    'div',
    { class: 'background' },
    normalHere(background),
    besideSisters(background),
    alarmSaid(background),
    airAbove(background),
  );
}
