/** Characters that show nothing: NUL and other controls, soft hyphens, zero-width marks, marks of writing direction, byte order marks. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters to take out
const invisible = /[\u0000-\u0008\u000e-\u001f\u007f\u00ad\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]/gu;
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are blanks
const blanks = /\r\n|[\t\n\u000b\f\r\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000]/gu;

/** A degree sign that went through UTF-8 twice. */
const twiceEncoded = /Â([°º])/gu;

const plainAscii = /^[!-~]+(?: [!-~]+)*$/u;

/** A cell as a person sees it: without what shows nothing, blanks as blanks, trimmed. */
export function visibleText(text: string): string {
  if (plainAscii.test(text)) return text;
  return text.replace(invisible, '').replace(blanks, ' ').replace(twiceEncoded, '$1').trim();
}

/** Without one pair of quotes around it, and without the marks by which a spreadsheet keeps text as text. */
export function unwrapped(text: string): string {
  let inner = text;
  if (inner.length > 3 && inner.startsWith('="') && inner.endsWith('"')) inner = inner.slice(2, -1);
  for (const quote of ['"', "'"]) {
    if (inner.length > 1 && inner.startsWith(quote) && inner.endsWith(quote))
      inner = inner.slice(1, -1).trim();
  }
  if (/^[“„‘].*[”“’]$/u.test(inner)) inner = inner.slice(1, -1).trim();
  return inner;
}
