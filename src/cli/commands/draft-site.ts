import { type Command, Option } from 'commander';
import { ImportRefusal } from '../../importing/readings.ts';
import type { Console } from '../console.ts';
import { ExitCode } from '../exit-codes.ts';
import { type ReadingOptions, withReadingOptions } from '../options.ts';
import { overridesFrom, statedUnits } from '../override-options.ts';
import { progressLine } from '../progress-line.ts';
import { writeOutput } from '../write-output.ts';

interface DraftOptions extends Omit<ReadingOptions, 'site'> {
  readonly output?: string;
  readonly force?: true;
}

export function addDraftSite(program: Command, io: Console, finish: (code: ExitCode) => void): void {
  withReadingOptions(program.command('draft-site'), { site: false })
    .summary('write the guessed site file, to be corrected')
    .description('Guesses what the columns are and writes a site file with every guess explained.')
    .addOption(new Option('-o, --output <file>', 'write to this file instead of standard output'))
    .addOption(new Option('--force', 'replace the file when it is there already'))
    .action(async (exports: string[], options: DraftOptions) => finish(await draft(exports, options, io)));
}

async function draft(exports: readonly string[], options: DraftOptions, io: Console): Promise<ExitCode> {
  const progress = progressLine(io);
  const { gatherReadings } = await import('../../pipeline/gather-readings.ts');
  const { guessSite } = await import('../../importing/naming/guess-site.ts');
  const { draftSite } = await import('../../importing/naming/draft-site.ts');
  const { readings, site } = await gatherReadings({
    exports,
    timeZone: options.timeZone ?? null,
    overrides: overridesFrom(options),
    units: statedUnits(options),
    onProgress: progress.show,
  }).finally(progress.clear);
  const text = draftSite(guessSite(readings, site));
  if (options.output === undefined) {
    await io.out(text);
    return ExitCode.analysed;
  }
  try {
    writeOutput(options.output, text, exports, options.force ? 'w' : 'wx');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
    throw new ImportRefusal(
      'output-exists',
      `${options.output} is there already and may hold corrections; give another name, or --force to replace it.`,
    );
  }
  io.err(`Wrote ${options.output}; read it through, then: rimelog check … --site ${options.output}\n`);
  return ExitCode.analysed;
}
