/** First digits of the decimal digits of other scripts (Unicode general category Nd). */
const zeros = [
  0x660, 0x6f0, 0x7c0, 0x966, 0x9e6, 0xa66, 0xae6, 0xb66, 0xbe6, 0xc66, 0xce6, 0xd66, 0xe50, 0xed0, 0xf20,
  0x1040, 0x17e0, 0x1810, 0xff10,
];

// biome-ignore lint/suspicious/noControlCharactersInRegex: everything but ASCII is meant
const beyondAscii = /[^\u0000-\u007f]/u;

/** `text` with the digits of other scripts as 0 to 9. */
export function plainDigits(text: string): string {
  if (!beyondAscii.test(text)) return text;
  return text.replace(/\p{Nd}/gu, (digit) => {
    const code = digit.codePointAt(0)!;
    const zero = zeros.findLast((each) => each <= code);
    return zero === undefined || code > zero + 9 ? digit : String(code - zero);
  });
}
