/** Which mark stands before decimals. */
export type DecimalMark = '.' | ',';

/** What the writing of one number says about the file's decimal mark. */
export type MarkEvidence = 'point' | 'comma' | 'open' | null;

export interface NumberReading {
  readonly value: number;
  /** Text after the number: a unit, or empty. */
  readonly rest: string;
  readonly evidence: MarkEvidence;
  /** True where a mark was taken for one of thousands that could be the decimal mark (`1,234` beside 3.4). */
  readonly ambiguous: boolean;
}

const minusSigns = /^(?:[\u2212\u2010-\u2015\ufe63\uff0d]\s?|-\s)/u;

/** The number at the beginning of `text`, grouped or with either decimal mark; null where there is none. */
export function readNumberText(text: string, mark: DecimalMark): NumberReading | null {
  const signed = text.replace(minusSigns, '-');
  let at = signed.startsWith('-') || signed.startsWith('+') ? 1 : 0;
  let sign = signed.startsWith('-') ? -1 : 1;
  const start = at;
  while (at < signed.length && isNumberPart(signed, at)) at++;
  let body = signed.slice(start, at);
  const trailing = /[\s'’]+$/u.exec(body)?.[0].length ?? 0;
  if (trailing > 0) {
    body = body.slice(0, -trailing);
    at -= trailing;
  }
  if (!/\d/u.test(body)) return null;
  // Mainframes and accounting exports put the sign behind: `26.1-`.
  if (start === 0 && at === signed.length - 1 && /[-\u2212]/u.test(signed[at]!)) {
    sign = -1;
    at++;
  }
  const exponent = /^e[-+]?\d{1,4}(?![\p{L}\d])/iu.exec(signed.slice(at))?.[0] ?? '';
  const plain = plainDigits(body, mark);
  if (plain === null) return null;
  const value = sign * Number(plain.digits + exponent);
  const rest = signed.slice(at + exponent.length).trim();
  return { value, rest, evidence: plain.evidence, ambiguous: plain.ambiguous };
}

function isNumberPart(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  if ((code >= 48 && code <= 57) || code === 46 || code === 44) return true;
  if (code !== 32 && code !== 39 && code !== 0x2019) return false;
  const next = text.charCodeAt(at + 1);
  return next >= 48 && next <= 57;
}

interface PlainDigits {
  readonly digits: string;
  readonly evidence: MarkEvidence;
  readonly ambiguous: boolean;
}

function plainDigits(body: string, mark: DecimalMark): PlainDigits | null {
  const joined = withoutGroups(body, /[ '’]/gu);
  if (joined === null) return null;
  const points = countOf(joined, '.');
  const commas = countOf(joined, ',');
  if (points === 0 && commas === 0) return { digits: joined, evidence: null, ambiguous: false };
  if (points > 0 && commas > 0) {
    const decimal = joined.lastIndexOf('.') > joined.lastIndexOf(',') ? '.' : ',';
    if (countOf(joined, decimal) > 1) return null;
    const digits = withoutGroups(joined, decimal === '.' ? /,/gu : /\./gu);
    return digits === null ? null : decided(digits, decimal);
  }
  const used = points > 0 ? '.' : ',';
  if (points + commas > 1) {
    const digits = withoutGroups(joined, used === '.' ? /\./gu : /,/gu);
    return digits === null ? null : { digits, evidence: used === '.' ? 'comma' : 'point', ambiguous: false };
  }
  if (!/^[1-9]\d{0,2}[.,]\d{3}$/u.test(joined)) return decided(joined, used);
  if (used === mark) return { digits: joined.replace(',', '.'), evidence: 'open', ambiguous: false };
  return { digits: joined.replace(used, ''), evidence: 'open', ambiguous: true };
}

function decided(digits: string, decimal: DecimalMark): PlainDigits {
  return {
    digits: digits.replace(',', '.'),
    evidence: decimal === '.' ? 'point' : 'comma',
    ambiguous: false,
  };
}

/** Takes out a grouping mark where every group behind it has three digits; null where one has not. */
function withoutGroups(text: string, marks: RegExp): string | null {
  const groups = text.split(marks);
  if (groups.length === 1) return text;
  const [first, ...others] = groups as [string, ...string[]];
  if (!/^\d{1,3}$/u.test(first)) return null;
  const whole = others.every((group, index) =>
    index === others.length - 1
      ? /^\d{3}(?:[.,]\d*)?$/u.test(group) || /^\d{3}(?:[.,]\d{3})*(?:[.,]\d*)?$/u.test(group)
      : /^\d{3}$/u.test(group),
  );
  return whole ? groups.join('') : null;
}

function countOf(text: string, mark: string): number {
  return text.split(mark).length - 1;
}
