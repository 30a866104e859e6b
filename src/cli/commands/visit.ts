import { type Command, Option } from 'commander';
import { analyse } from '../analyse.ts';
import { type Console, colorWanted } from '../console.ts';
import { ExitCode } from '../exit-codes.ts';
import { type ReadingOptions, withReadingOptions } from '../options.ts';
import { writeOutput } from '../write-output.ts';

interface VisitOptions extends ReadingOptions {
  readonly html?: string;
  readonly color: boolean;
}

export function addVisit(program: Command, io: Console, finish: (code: ExitCode) => void): void {
  withReadingOptions(program.command('visit'))
    .summary('one sheet before driving out')
    .description(
      'What to ask by phone, which circuits are worth a stop, worst first, what to check there and what to bring.',
    )
    .addOption(new Option('--html <file>', 'also write the sheet as a page that prints on one sheet'))
    .addOption(new Option('--no-color', 'no colour, as with NO_COLOR'))
    .action(async (exports: string[], options: VisitOptions) => finish(await visit(exports, options, io)));
}

async function visit(exports: readonly string[], options: VisitOptions, io: Console): Promise<ExitCode> {
  const analysed = await analyse(exports, options, io);
  const { visitSheet } = await import('../../visit/visit-sheet.ts');
  const sheet = visitSheet(analysed.signals, analysed.diagnosis);
  if (options.html !== undefined) {
    const { visitPage } = await import('../../reporting/visit/visit-page.ts');
    writeOutput(options.html, visitPage(sheet, analysed), [...exports, options.site]);
  }
  const { visitReport } = await import('../../reporting/visit/visit-terminal.ts');
  const { paintFor } = await import('../../reporting/terminal.ts');
  const paint = paintFor({ color: colorWanted(io, options.color), columns: io.columns });
  await io.out(visitReport(sheet, analysed, paint));
  if (options.html !== undefined) await io.out(`\nThe sheet: ${options.html}\n`);
  return ExitCode.analysed;
}
