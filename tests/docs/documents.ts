import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export const root = new URL('../../', import.meta.url);
export const read = (path: string): string => readFileSync(new URL(path, root), 'utf8');

/** Every page that a reader may open, by its path from the root. */
export const documents: readonly string[] = [
  ...readdirSync(root).filter((name) => name.endsWith('.md')),
  ...markdownUnder('docs'),
  ...markdownUnder('sample-logs'),
  ...markdownUnder('tests'),
];

function markdownUnder(folder: string): string[] {
  return readdirSync(fileURLToPath(new URL(`${folder}/`, root)), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.md') && !name.includes('node_modules'))
    .map((name) => `${folder}/${name.replaceAll('\\', '/')}`);
}

/** Text without its fenced code. */
export function prose(markdown: string): string {
  return markdown.replace(/^(```+)[^\n]*\n[\s\S]*?^\1\s*$/gm, '');
}

/** Lines of fenced code, and code between backticks. */
export function codeOf(markdown: string): string[] {
  const fences = [...markdown.matchAll(/^(```+)[^\n]*\n([\s\S]*?)^\1\s*$/gm)].flatMap(([, , code]) =>
    code!.split('\n'),
  );
  return [...fences, ...[...prose(markdown).matchAll(/`([^`]+)`/g)].map(([, code]) => code!)];
}

/** Headings as the anchors that a link may name (GitHub's rule for plain headings). */
export function anchorsOf(markdown: string): string[] {
  return [...prose(markdown).matchAll(/^#+ (.+)$/gm)].map(([, heading]) =>
    heading!
      .toLowerCase()
      .replace(/[^\p{L}\p{N}\s_-]/gu, '')
      .trim()
      .replace(/\s/g, '-'),
  );
}
