import { type Command, InvalidArgumentError, Option } from 'commander';
import type { Console } from '../console.ts';

interface ServeOptions {
  readonly port?: number;
  readonly host: string;
  readonly data?: string;
}

function portNumber(value: string): number {
  const port = Number(value);
  if (!/^\d+$/.test(value) || port > 65_535)
    throw new InvalidArgumentError('A port is a number from 0 to 65535.');
  return port;
}

export function addServe(program: Command, io: Console): void {
  program
    .command('serve')
    .summary('open the page in a browser on this machine')
    .description('Serves the page on this machine: drop an export on it, see the circuits and their plots.')
    .addOption(
      new Option(
        '--port <n>',
        'port; 0 takes any free one, as does 4180 when it is taken and no port is asked for',
      ).argParser(portNumber),
    )
    .addOption(new Option('--host <address>', 'address to listen on').default('127.0.0.1'))
    .addOption(
      new Option(
        '--data <folder>',
        'where uploads and findings are kept; the data folder of this user unless told',
      ),
    )
    .action(async (options: ServeOptions) => {
      const { startServer } = await import('../../../server/serve.ts');
      const { address, close } = await startServer({
        port: options.port ?? null,
        host: options.host,
        dataFolder: options.data ?? null,
      });
      for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void close());
      await io.out(`rimelog is ready at ${address}\n`);
    });
}
