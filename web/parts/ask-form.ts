import { h } from '../dom.ts';

interface Question {
  /** What the form asks for. */
  readonly title: string;
  /** Of the one field. */
  readonly label: string;
  /** With an id. */
  readonly field: HTMLInputElement | HTMLSelectElement;
  readonly button: string;
  /** Text under the field, with the id that the field is described by. */
  readonly help?: HTMLElement;
}

/** One field and a button; `ask` is called with the value of the field. */
export function askForm({ title, label, field, button, help }: Question, ask: (value: string) => void) {
  return h(
    'form',
    {
      class: 'ask',
      'aria-label': title,
      onsubmit: (event) => {
        event.preventDefault();
        ask(field.value);
      },
    },
    h(
      'div',
      { class: 'fields' },
      h('span', { class: 'field' }, h('label', { for: field.id }, label), field),
      h('button', { type: 'submit' }, button),
    ),
    help ?? [],
  );
}
