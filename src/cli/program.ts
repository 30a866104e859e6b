import { Command } from 'commander';
import { addAudit } from './commands/audit.ts';
import { addCheck } from './commands/check.ts';
import { addCompare } from './commands/compare.ts';
import { addDraftSite } from './commands/draft-site.ts';
import { addNormalize } from './commands/normalize.ts';
import { addNorms } from './commands/norms.ts';
import { addRound } from './commands/round.ts';
import { addServe } from './commands/serve.ts';
import { addVerify } from './commands/verify.ts';
import { addVisit } from './commands/visit.ts';
import type { Console } from './console.ts';
import { ExitCode } from './exit-codes.ts';
import { reportFailure } from './failure.ts';
import { version } from './version.ts';

const examples = `Finds the circuits in trouble in the history that a refrigeration controller exports as CSV.

Examples:
  rimelog check store.csv                            the list, worst first
  rimelog check store.csv --html report.html         the same, and a page with plots to mail
  rimelog check september/ --site site.yaml --json   a folder of files; findings for a program
  rimelog visit store.csv                            one sheet before driving out
  rimelog round stores/*                             many stores: who needs somebody first
  rimelog audit store.csv --tables tables/           the month in tables; --html for one report
  rimelog verify store.csv --circuit M01 --serviced 2026-09-12T10:30   did the repair hold?
  rimelog norms store.csv --point "M01 air A" --reading 38   is this reading normal here?
  rimelog compare october.csv --against september.csv   what changed
  rimelog draft-site store.csv -o site.yaml          what the columns are, guessed, to be corrected
  rimelog normalize store.csv > tidy.csv             what was understood, as one tidy CSV
  rimelog serve                                      the page in a browser on this machine
`;

const closing = `
Status: 0 analysed · 1 with --exit-on, a finding reaches that severity · 2 the input or the call cannot be used.
Your logs stay on this machine: nothing is fetched or sent.`;

function buildProgram(io: Console, finish: (code: ExitCode) => void): Command {
  const program = new Command('rimelog')
    .exitOverride()
    .configureOutput({
      writeOut: (text) => void io.out(text),
      writeErr: (text) => io.err(text),
      outputError: (text, write) => write(text.replace(/^error: /, 'rimelog: ')),
      getOutHelpWidth: () => io.columns ?? 100,
      getErrHelpWidth: () => io.columns ?? 100,
    })
    .version(version, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .helpCommand('help [command]', 'print the help of a command')
    .addHelpText('beforeAll', (context) => (context.command.parent === null ? examples : ''))
    .addHelpText('after', closing)
    .showHelpAfterError('(rimelog --help shows examples)');
  addCheck(program, io, finish);
  addVisit(program, io, finish);
  addRound(program, io, finish);
  addAudit(program, io, finish);
  addVerify(program, io, finish);
  addNorms(program, io, finish);
  addCompare(program, io, finish);
  addNormalize(program, io, finish);
  addDraftSite(program, io, finish);
  addServe(program, io);
  return program;
}

/** Runs one command line (without `node` and the script) and says what to tell the shell. */
export async function run(args: readonly string[], io: Console): Promise<ExitCode> {
  let code: ExitCode = ExitCode.analysed;
  const program = buildProgram(io, (finished) => {
    code = finished;
  });
  try {
    await program.parseAsync([...args], { from: 'user' });
    return code;
  } catch (error) {
    return reportFailure(error, io);
  }
}
