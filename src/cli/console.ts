import { once } from 'node:events';

/** Where a command writes. Results go to `out`, everything that is only talk to `err`. */
export interface Console {
  out(text: string): Promise<void>;
  err(text: string): void;
  readonly columns: number | undefined;
  readonly outIsTerminal: boolean;
  readonly errIsTerminal: boolean;
  readonly environment: Readonly<Record<string, string | undefined>>;
}

/** The real one. A reader that closes early (`| head`) ends the command quietly. */
export function processConsole(): Console {
  const { stdout, stderr, env } = process;
  stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(0);
    throw error;
  });
  return {
    async out(text) {
      if (!stdout.write(text)) await once(stdout, 'drain');
    },
    err(text) {
      stderr.write(text);
    },
    columns: stdout.columns,
    outIsTerminal: stdout.isTTY === true,
    errIsTerminal: stderr.isTTY === true,
    environment: env,
  };
}

export function colorWanted(io: Console, flag: boolean): boolean {
  const { NO_COLOR, TERM } = io.environment;
  return flag && io.outIsTerminal && !NO_COLOR && TERM !== 'dumb';
}
