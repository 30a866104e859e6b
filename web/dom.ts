type Child = Node | string | number | null | false | readonly Child[];

type Attributes = Readonly<{ [name: string]: string | number | boolean | null | EventListener }>;

function append(parent: Element, children: readonly Child[]): void {
  for (const child of children) {
    if (child === null || child === false) continue;
    if (Array.isArray(child)) append(parent, child as readonly Child[]);
    else parent.append(child instanceof Node ? child : String(child));
  }
}

function describe<E extends Element>(element: E, attributes: Attributes, children: readonly Child[]): E {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === null || value === false) continue;
    if (typeof value === 'function') element.addEventListener(name.replace(/^on/, ''), value);
    else element.setAttribute(name, value === true ? '' : String(value));
  }
  append(element, children);
  return element;
}

/**
 * An element with attributes, listeners (`onclick`) and children. Strings become text, never markup, so that a name
 * from an export can do nothing.
 */
export function h<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes: Attributes = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[Tag] {
  return describe(document.createElement(tag), attributes, children);
}

/** The same for SVG. */
export function svg<Tag extends keyof SVGElementTagNameMap>(
  tag: Tag,
  attributes: Attributes = {},
  ...children: readonly Child[]
): SVGElementTagNameMap[Tag] {
  return describe(document.createElementNS('http://www.w3.org/2000/svg', tag), attributes, children);
}

const controls = /[\p{Cc}\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;

/** A name from an export, for people: control characters and direction marks stand as `�`. */
export function visible(text: string): string {
  return text.replace(controls, '\ufffd');
}
