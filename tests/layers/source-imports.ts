import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

export interface Import {
  readonly specifier: string;
  readonly typeOnly: boolean;
}

export interface SourceFile {
  /** From the root of the repository, with `/`. */
  readonly path: string;
  readonly text: string;
  readonly imports: readonly Import[];
}

/** The code without comments; strings stay, so that a `//` within one is not taken for a comment. */
export function withoutComments(text: string): string {
  const token = /'(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*"|`(?:\\.|[^`\\])*`|\/\/[^\n]*|\/\*[\s\S]*?\*\//g;
  return text.replace(token, (match) => (match.startsWith('//') || match.startsWith('/*') ? ' ' : match));
}

/** Static imports, re-exports, dynamic imports and worker files named by `new URL(…, import.meta.url)`. */
export function importsOf(text: string): Import[] {
  const code = withoutComments(text);
  const found: Import[] = [];
  const statement = /^[ \t]*(?:import|export)\s+(type\s+)?(?:[^'"`;]*?\sfrom\s+)?['"]([^'"]+)['"]/gm;
  for (const match of code.matchAll(statement)) {
    found.push({ specifier: match[2]!, typeOnly: match[1] !== undefined });
  }
  for (const match of code.matchAll(/\bimport\s*\(\s*['"]([^'"]+)['"]/g)) {
    found.push({ specifier: match[1]!, typeOnly: false });
  }
  for (const match of code.matchAll(/\bnew URL\(\s*['"](\.[^'"]+\.ts)['"]\s*,\s*import\.meta\.url/g)) {
    found.push({ specifier: match[1]!, typeOnly: false });
  }
  return found;
}

export function sourceFile(name: string, text: string): SourceFile {
  return { path: name, text, imports: importsOf(text) };
}

/** Every TypeScript file under the folders. */
export function readSources(root: string, folders: readonly string[]): SourceFile[] {
  return folders.flatMap((folder) =>
    readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
      .map((name) => path.posix.join(folder, name.split(path.sep).join('/')))
      .filter((name) => /\.[cm]?tsx?$/.test(name) && !/(^|\/)(node_modules|dist)\//.test(name))
      .map((name) => sourceFile(name, readFileSync(path.join(root, name), 'utf8'))),
  );
}

/** `src/units/convert.ts` is in `units`, `server/guards/host.ts` in `server`. */
export function roomOf(file: string): string {
  const [first, second] = file.split('/');
  return first === 'src' ? second! : first!;
}

/** The file that a relative import names, or null for a package. */
export function targetOf(file: string, specifier: string): string | null {
  return specifier.startsWith('.') ? path.posix.join(path.posix.dirname(file), specifier) : null;
}
