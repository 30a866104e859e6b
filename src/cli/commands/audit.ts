import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { isMonthName, monthOf, monthsIn } from '../../audit/month.ts';
import type { MonthAudit } from '../../audit/month-audit.ts';
import { ImportRefusal } from '../../importing/readings.ts';
import { analyse } from '../analyse.ts';
import { type Console, colorWanted } from '../console.ts';
import { ExitCode } from '../exit-codes.ts';
import { type ReadingOptions, withReadingOptions } from '../options.ts';
import { writeOutput } from '../write-output.ts';
import { holdYoungGeneration } from '../young-generation.ts';

interface AuditOptions extends ReadingOptions {
  readonly month?: string;
  readonly tables?: string;
  readonly html?: string;
  readonly color: boolean;
}

function monthName(text: string): string {
  if (!isMonthName(text)) throw new InvalidArgumentError('A month like 2026-09 is expected.');
  return text;
}

export function addAudit(program: Command, io: Console, finish: (code: ExitCode) => void): void {
  withReadingOptions(program.command('audit'))
    .summary("the engineer's month: tables and one report")
    .description(
      'Brings a month of history into tables and one report: coverage, levels, exposure, defrosts, starts, suction, changes, alarms.',
    )
    .addOption(
      new Option(
        '--month <month>',
        "one month on the site's clock, 2026-09; else all of the export",
      ).argParser(monthName),
    )
    .addOption(new Option('--tables <folder>', 'write the tables to this folder as CSV files'))
    .addOption(new Option('--html <file>', 'write the report of the month, with plots, to this file'))
    .addOption(new Option('--no-color', 'no colour, as with NO_COLOR'))
    .action(async (exports: string[], options: AuditOptions) => finish(await audit(exports, options, io)));
}

async function audit(exports: readonly string[], options: AuditOptions, io: Console): Promise<ExitCode> {
  await import('../../pipeline/analyse-exports.ts');
  holdYoungGeneration();
  const analysed = await analyse(exports, options, io);
  const month = monthOf(analysed.log, options.month ?? null);
  if (month === null) {
    throw new ImportRefusal(
      'month-not-in-export',
      `The export holds nothing of ${options.month}; it holds ${monthsIn(analysed.log).join(', ')}.`,
    );
  }
  const { monthAudit } = await import('../../audit/month-audit.ts');
  const made = await monthAudit(analysed, month);
  const inputs = [...exports, options.site];
  const { auditSummary } = await import('../../reporting/audit/audit-summary.ts');
  const { paintFor } = await import('../../reporting/terminal.ts');
  const paint = paintFor({ color: colorWanted(io, options.color), columns: io.columns });
  const summary = auditSummary(made, analysed.report, paint);
  if (options.html !== undefined) {
    const { auditReport } = await import('../../reporting/audit/audit-report.ts');
    writeOutput(options.html, auditReport(made, analysed.report), inputs);
  }
  // Last: tables that no report asks for are written row by row and not held.
  if (options.tables !== undefined) await writeTables(made, options.tables, inputs);
  await io.out(summary);
  if (options.tables !== undefined) await io.out(`\nThe tables: ${options.tables}\n`);
  if (options.html !== undefined) await io.out(`\nThe report of the month: ${options.html}\n`);
  return ExitCode.analysed;
}

async function writeTables(
  audit: MonthAudit,
  folder: string,
  inputs: readonly (string | undefined)[],
): Promise<void> {
  const { tableCsv } = await import('../../audit/table-csv.ts');
  await mkdir(folder, { recursive: true });
  for (const table of audit.tables.values()) {
    writeOutput(join(folder, `${table.name}.csv`), tableCsv(table), inputs);
  }
}
