import type { Console } from '../../../src/cli/console.ts';
import { run } from '../../../src/cli/program.ts';

export interface CliResult {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** One command line in this process, with what it wrote; nothing is a terminal unless told. */
export async function runCli(args: readonly string[], changes: Partial<Console> = {}): Promise<CliResult> {
  let out = '';
  let err = '';
  const code = await run(args, {
    async out(text) {
      out += text;
    },
    err(text) {
      err += text;
    },
    columns: undefined,
    outIsTerminal: false,
    errIsTerminal: false,
    environment: {},
    ...changes,
  });
  return { code, out, err };
}
