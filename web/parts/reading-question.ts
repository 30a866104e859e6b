import { h, visible } from '../dom.ts';
import type { CircuitBackground, UsualPoint, UsualRange } from '../json.ts';

const readingPattern = /^[-−+]?\d+([.,]\d+)?$/;

function standing(
  value: number,
  { low, p10, p90, high }: UsualRange,
): [keyof CircuitBackground['words'], string] {
  if (value >= p10 && value <= p90) return ['usual', ''];
  const side = value > p90 ? ', above its range' : ', below its range';
  return [value > high || value < low ? 'unusual' : 'edge', side];
}

/** Whether a reading is normal here, in one line with the days it rests on and what the peers do. */
export function readingAnswer(
  text: string,
  { point, unit, beside }: UsualPoint,
  range: UsualRange | undefined,
  words: CircuitBackground['words'],
): string {
  const typed = text.trim();
  if (typed === '') return '';
  if (!readingPattern.test(typed)) return 'Type the reading as a number.';
  if (range === undefined) return `Nothing is known yet of ${point} at these hours.`;
  const value = Number(typed.replace('−', '-').replace(',', '.'));
  const [position, side] = standing(value, range);
  return `${typed} ${unit} at ${point} is ${words[position]}${side}: ${range.rests}. ${beside}`.trim();
}

/** Asks for a point, a reading and when it was taken, and answers while one types. */
export function readingQuestion({ normal, words }: CircuitBackground): HTMLElement | null {
  const [first] = normal.points;
  if (first === undefined) return null;
  const option = (value: string, text = value): HTMLElement => h('option', { value }, text);
  const point = h(
    'select',
    { id: 'reading-point' },
    normal.points.map((each, index) => option(String(index), visible(each.point))),
  );
  const hours = h(
    'select',
    { id: 'reading-hours' },
    [...new Set(first.ranges.map((range) => range.hours))].map((text) => option(text)),
  );
  const days = h(
    'select',
    { id: 'reading-days' },
    option('weekday', 'a weekday'),
    option('weekend', 'a weekend'),
  );
  const reading = h('input', {
    id: 'reading',
    type: 'text',
    inputmode: 'decimal',
    size: 6,
    autocomplete: 'off',
  });
  const unit = h('span', { class: 'quiet' }, first.unit);
  const answer = h('p', { class: 'answer', role: 'status' });
  const refresh = (): void => {
    const asked = normal.points[Number(point.value)]!;
    const range = asked.ranges.find((each) => each.days === days.value && each.hours === hours.value);
    unit.textContent = asked.unit;
    answer.textContent = visible(readingAnswer(reading.value, asked, range, words));
  };
  for (const control of [point, hours, days]) control.addEventListener('change', refresh);
  reading.addEventListener('input', refresh);
  const field = (name: string, control: HTMLElement, ...more: Node[]): HTMLElement =>
    h('span', { class: 'field' }, h('label', { for: control.id }, name), control, ...more);
  return h(
    'form',
    {
      class: 'reading',
      'aria-label': 'Is this reading normal?',
      onsubmit: (event) => event.preventDefault(),
    },
    h('h3', {}, 'Is this reading normal?'),
    h(
      'div',
      { class: 'fields' },
      field('Point', point),
      field('Reading', reading, unit),
      field('Hours', hours),
      field('On', days),
    ),
    answer,
  );
}
