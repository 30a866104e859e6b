import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { type Command, Option } from 'commander';
import type { AnalysedExports } from '../../pipeline/analyse-exports.ts';
import type { JudgedStore, RoundRefusal } from '../../reporting/round/round-document.ts';
import { analyse } from '../analyse.ts';
import { type Console, colorWanted } from '../console.ts';
import { ExitCode } from '../exit-codes.ts';
import { refusalIn } from '../failure.ts';
import { type ReadingOptions, withStoreOptions } from '../options.ts';
import { writeOutput } from '../write-output.ts';

interface RoundOptions extends ReadingOptions {
  readonly json?: true;
  readonly html?: string;
  readonly color: boolean;
}

export function addRound(program: Command, io: Console, finish: (code: ExitCode) => void): void {
  withStoreOptions(program.command('round'))
    .summary('many stores in one list: who needs somebody first')
    .description(
      'Reads the exports of many stores, one after another, and puts the places worth a stop in one list, worst first.',
    )
    .addOption(new Option('--json', 'write the list as JSON').conflicts('html'))
    .addOption(
      new Option(
        '--html <folder>',
        'also write the list, and the report of each store, as pages to this folder',
      ),
    )
    .addOption(new Option('--no-color', 'no colour, as with NO_COLOR'))
    .action(async (stores: string[], options: RoundOptions) => finish(await round(stores, options, io)));
}

async function round(sources: readonly string[], options: RoundOptions, io: Console): Promise<ExitCode> {
  const { judgedStore, roundDocument } = await import('../../reporting/round/round-document.ts');
  const judged: JudgedStore[] = [];
  const unreadable: RoundRefusal[] = [];
  const reports = new Map<string, string>();
  for (const [index, source] of sources.entries()) {
    const analysed = await analysedOrRefused(source, options, io);
    if (typeof analysed === 'string') {
      unreadable.push({ source, message: analysed });
      continue;
    }
    const store = judgedStore(analysed, source);
    judged.push(store);
    if (options.html === undefined) continue;
    const name = reportName(index + 1, store.store.store);
    await writeReport(analysed, join(options.html, name), sources);
    reports.set(source, name);
  }
  const document = roundDocument(judged, unreadable);
  if (options.json) await io.out(`${JSON.stringify(document, null, 2)}\n`);
  else {
    const { roundReport } = await import('../../reporting/round/round-terminal.ts');
    const { paintFor } = await import('../../reporting/terminal/paint.ts');
    const paint = paintFor({ color: colorWanted(io, options.color), columns: io.columns });
    await io.out(roundReport(document, paint));
  }
  if (options.html !== undefined) {
    const { roundPage } = await import('../../reporting/round/round-page.ts');
    const page = join(options.html, 'index.html');
    await mkdir(options.html, { recursive: true });
    writeOutput(page, roundPage(document, reports), sources);
    await io.out(`\nThe page of the round, with the report of each store: ${page}\n`);
  }
  return judged.length === 0 ? ExitCode.unusable : ExitCode.analysed;
}

/** One store that cannot be read is told in the list and does not stop the others. */
async function analysedOrRefused(
  source: string,
  options: RoundOptions,
  io: Console,
): Promise<AnalysedExports | string> {
  try {
    return await analyse([source], options, io);
  } catch (error) {
    const refusal = refusalIn(error);
    if (refusal === null) throw error;
    return refusal;
  }
}

async function writeReport(
  analysed: AnalysedExports,
  path: string,
  inputs: readonly string[],
): Promise<void> {
  const { htmlReport } = await import('../../reporting/html-report.ts');
  await mkdir(join(path, '..'), { recursive: true });
  writeOutput(path, htmlReport(analysed), inputs);
}

/** `03-quillan-row-foods.html`: plain on every disk, and no two alike. */
function reportName(number: number, store: string): string {
  const plain = store
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/gu, '-')
    .replace(/^-|-$/gu, '')
    .slice(0, 40);
  return `${String(number).padStart(2, '0')}-${plain === '' ? 'store' : plain}.html`;
}
