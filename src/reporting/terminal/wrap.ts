const lengthOf = (text: string): number => [...text].length;

function pieces(word: string, width: number): string[] {
  const characters = [...word];
  const cut: string[] = [];
  for (let at = 0; at < characters.length; at += width) cut.push(characters.slice(at, at + width).join(''));
  return cut;
}

/** Lines of at most `width` characters, broken at spaces; a longer word is cut. */
export function wrapText(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).flatMap((each) => pieces(each, width))) {
    if (line === '') line = word;
    else if (lengthOf(line) + 1 + lengthOf(word) <= width) line += ` ${word}`;
    else {
      lines.push(line);
      line = word;
    }
  }
  if (line !== '') lines.push(line);
  return lines;
}

/** Text hung behind a label: the label stands on the first line, the others are indented as far, under the text of a step `1. …`. */
export function hang(
  label: string,
  text: string,
  indent: number,
  labelWidth: number,
  width: number,
): string[] {
  const margin = ' '.repeat(indent);
  const step = /^\d+\. /.exec(text)?.[0].length ?? 0;
  const lines = wrapText(text, width - indent - labelWidth - step);
  return lines.map((line, index) => {
    const head = index === 0 ? label.padEnd(labelWidth) : ' '.repeat(labelWidth + step);
    return `${margin}${head}${line}`;
  });
}

export function indented(text: string, indent: number, width: number): string[] {
  return hang('', text, indent, 0, width);
}
