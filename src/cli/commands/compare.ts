import { type Command, Option } from 'commander';
import { ImportRefusal } from '../../importing/readings.ts';
import { analyse } from '../analyse.ts';
import { type Console, colorWanted } from '../console.ts';
import { ExitCode } from '../exit-codes.ts';
import { requireCircuit } from '../named-circuit.ts';
import { type ReadingOptions, withReadingOptions } from '../options.ts';

interface CompareOptions extends ReadingOptions {
  readonly against?: string[];
  readonly circuit?: string;
  readonly json?: true;
  readonly color: boolean;
}

export function addCompare(program: Command, io: Console, finish: (code: ExitCode) => void): void {
  withReadingOptions(program.command('compare'))
    .summary('this export against another, or a circuit against its sisters')
    .description(
      'Compares two exports of one site figure by figure, or with --circuit alone one circuit with its sisters.',
    )
    .addOption(new Option('--against <export...>', 'the other export, of an earlier or a later time'))
    .addOption(new Option('--circuit <id>', 'only this circuit; without --against beside its sisters'))
    .addOption(new Option('--json', 'write the comparison for a program'))
    .addOption(new Option('--no-color', 'no colour, as with NO_COLOR'))
    .action(async (exports: string[], options: CompareOptions) =>
      finish(await compare(exports, options, io)),
    );
}

async function compare(exports: readonly string[], options: CompareOptions, io: Console): Promise<ExitCode> {
  if (options.against === undefined && options.circuit === undefined) {
    throw new ImportRefusal(
      'nothing-to-compare',
      'Say what to compare with: --against another export, or --circuit to set one circuit beside its sisters.',
    );
  }
  const one = await analyse(exports, options, io);
  const { paintFor } = await import('../../reporting/terminal.ts');
  const { comparisonReport, sistersReport } = await import(
    '../../reporting/comparison/comparison-terminal.ts'
  );
  const paint = paintFor({ color: colorWanted(io, options.color), columns: io.columns });
  const write = (document: object, text: string): Promise<void> =>
    io.out(options.json ? `${JSON.stringify(document, null, 2)}\n` : text);
  const circuit = options.circuit === undefined ? null : requireCircuit(one.log, options.circuit);
  if (options.against === undefined) {
    const { sisterComparison } = await import('../../comparison/compare-sisters.ts');
    const compared = sisterComparison(one.signals)(circuit!);
    if (compared === null) {
      throw new ImportRefusal(
        'no-sisters',
        `${circuit} has fewer than two sisters on its suction group; compare it with an earlier export by --against.`,
      );
    }
    const { sistersDocument } = await import('../../reporting/comparison/sisters-document.ts');
    const sisters = sistersDocument(compared, one.log);
    await write(sisters, sistersReport(sisters, paint));
    return ExitCode.analysed;
  }
  const other = await analyse(options.against, options, io);
  const [before, after] = one.log.grid.startMs < other.log.grid.startMs ? [one, other] : [other, one];
  const { compareHistories, nothingInCommon } = await import('../../comparison/compare-histories.ts');
  const compared = compareHistories(before.signals, after.signals);
  if (compared.places.length === 0) throw new ImportRefusal('nothing-in-common', nothingInCommon);
  const places = compared.places.filter(
    ({ kind, id }) => circuit === null || (kind === 'circuit' && id === circuit),
  );
  const { comparisonDocument } = await import('../../reporting/comparison/comparison-document.ts');
  const comparison = comparisonDocument({ ...compared, places }, before.log, after.log);
  await write(comparison, comparisonReport(comparison, paint));
  return ExitCode.analysed;
}
