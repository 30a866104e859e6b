import { type Command, Option } from 'commander';
import { analyse } from '../analyse.ts';
import { type Console, colorWanted } from '../console.ts';
import { ExitCode } from '../exit-codes.ts';
import { requireCircuit } from '../named-circuit.ts';
import { type ReadingOptions, withReadingOptions } from '../options.ts';

interface VerifyOptions extends ReadingOptions {
  readonly circuit: string;
  readonly serviced: string;
  readonly json?: true;
  readonly color: boolean;
}

export function addVerify(program: Command, io: Console, finish: (code: ExitCode) => void): void {
  withReadingOptions(program.command('verify'))
    .summary('did the repair hold?')
    .description(
      'Compares a circuit before and after a service: what changed, by how much, is it back at what was usual, and is everything switched back on.',
    )
    .addOption(new Option('--circuit <id>', 'the circuit that was serviced').makeOptionMandatory())
    .addOption(
      new Option('--serviced <time>', "when, on the site's clock: 2026-09-12T10:30").makeOptionMandatory(),
    )
    .addOption(new Option('--json', 'write the comparison for a program'))
    .addOption(new Option('--no-color', 'no colour, as with NO_COLOR'))
    .action(async (exports: string[], options: VerifyOptions) => finish(await verify(exports, options, io)));
}

async function verify(exports: readonly string[], options: VerifyOptions, io: Console): Promise<ExitCode> {
  const { log, signals, diagnosis } = await analyse(exports, options, io);
  const circuit = requireCircuit(log, options.circuit);
  const { serviceTime } = await import('../../pipeline/service-time.ts');
  const { checkRepair } = await import('../../repair-check/check-repair.ts');
  const serviced = serviceTime(options.serviced, log, '--serviced');
  const check = checkRepair(signals, diagnosis.findings, circuit, serviced);
  const { repairDocument } = await import('../../reporting/repair/repair-document.ts');
  const repair = repairDocument(check, log);
  if (options.json) {
    await io.out(`${JSON.stringify(repair, null, 2)}\n`);
    return ExitCode.analysed;
  }
  const { repairReport } = await import('../../reporting/repair/repair-terminal.ts');
  const { paintFor } = await import('../../reporting/terminal.ts');
  const paint = paintFor({ color: colorWanted(io, options.color), columns: io.columns });
  await io.out(repairReport(repair, paint));
  return ExitCode.analysed;
}
