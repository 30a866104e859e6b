/** Text that someone sent, for a log: control characters escaped, so that it stays one line; cut at 2,000 characters. */
export function oneLine(text: string): string {
  return text.slice(0, 2000).replace(/[\p{Cc}\u2028\u2029]/gu, (character) => {
    return `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;
  });
}
