// biome-ignore lint/suspicious/noControlCharactersInRegex: those are what must not reach a terminal
const controls = /[\u0000-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;

/** A name from an export, safe to print: control characters and direction marks stand as `�`. */
export function visibleText(text: string): string {
  return text.replace(controls, '\ufffd');
}
