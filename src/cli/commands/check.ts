import { type Command, Option } from 'commander';
import type { Diagnosis, Severity } from '../../model/finding.ts';
import { severities } from '../../model/finding.ts';
import { analyse } from '../analyse.ts';
import { type Console, colorWanted } from '../console.ts';
import { ExitCode } from '../exit-codes.ts';
import { type ReadingOptions, withReadingOptions } from '../options.ts';
import { writeOutput } from '../write-output.ts';

interface CheckOptions extends ReadingOptions {
  readonly from?: string;
  readonly to?: string;
  readonly json?: true;
  readonly html?: string;
  readonly exitOn?: Severity;
  readonly color: boolean;
}

export function addCheck(program: Command, io: Console, finish: (code: ExitCode) => void): void {
  withReadingOptions(program.command('check'))
    .summary('find the circuits in trouble, worst first')
    .description('Reads an export and lists the circuits in trouble, worst first.')
    .addOption(new Option('--from <time>', 'leave out what is earlier: 2026-09-01 or 2026-09-01T06:00'))
    .addOption(new Option('--to <time>', 'leave out what is later'))
    .addOption(new Option('--json', 'write the findings document instead of the list').conflicts('html'))
    .addOption(new Option('--html <file>', 'also write a report of one page, with plots, to this file'))
    .addOption(
      new Option('--exit-on <severity>', 'end with status 1 when a finding is at least this severe').choices([
        'watch',
        'act',
      ]),
    )
    .addOption(new Option('--no-color', 'no colour, as with NO_COLOR'))
    .action(async (exports: string[], options: CheckOptions) => finish(await check(exports, options, io)));
}

async function check(exports: readonly string[], options: CheckOptions, io: Console): Promise<ExitCode> {
  const analysed = await analyse(exports, options, io);
  if (options.html !== undefined) {
    const { htmlReport } = await import('../../reporting/html-report.ts');
    writeOutput(options.html, htmlReport(analysed), [...exports, options.site]);
  }
  if (options.json) {
    const { findingsDocument } = await import('../../reporting/findings-document.ts');
    const document = findingsDocument(analysed.log, analysed.report, analysed.diagnosis);
    await io.out(`${JSON.stringify(document, null, 2)}\n`);
  } else {
    const { paintFor, terminalReport } = await import('../../reporting/terminal.ts');
    const paint = paintFor({ color: colorWanted(io, options.color), columns: io.columns });
    await io.out(terminalReport(analysed, paint));
    if (options.html !== undefined) await io.out(`\nThe page with the plots: ${options.html}\n`);
  }
  return reaches(analysed.diagnosis, options.exitOn) ? ExitCode.reached : ExitCode.analysed;
}

function reaches(diagnosis: Diagnosis, threshold: Severity | undefined): boolean {
  if (threshold === undefined) return false;
  const least = severities.indexOf(threshold);
  return diagnosis.findings.some(({ severity }) => severities.indexOf(severity) >= least);
}
