import { type Command, InvalidArgumentError, Option } from 'commander';
import { instantFrom } from '../../importing/assembling/cut-times.ts';
import { ImportRefusal } from '../../importing/readings.ts';
import { timeAt } from '../../model/grid.ts';
import type { Record } from '../../model/record.ts';
import type { Norm } from '../../norms/norm.ts';
import type { Signals } from '../../signals/types.ts';
import { celsiusFrom, kilopascalFrom } from '../../units/convert.ts';
import { analyse } from '../analyse.ts';
import { type Console, colorWanted } from '../console.ts';
import { ExitCode } from '../exit-codes.ts';
import { requireCircuit } from '../named-circuit.ts';
import { type ReadingOptions, withReadingOptions } from '../options.ts';

interface NormsOptions extends ReadingOptions {
  readonly circuit?: string;
  readonly point?: string;
  readonly reading?: number;
  readonly at?: string;
  readonly json?: true;
  readonly color: boolean;
}

function numberOf(text: string): number {
  const value = Number(text);
  if (text.trim() === '' || !Number.isFinite(value)) throw new InvalidArgumentError('A number is expected.');
  return value;
}

export function addNorms(program: Command, io: Console, finish: (code: ExitCode) => void): void {
  withReadingOptions(program.command('norms'))
    .summary('what is normal here, and is this reading?')
    .description(
      'Learns from the quiet days of an export what is usual for each point and circuit of this site, and answers whether a reading is.',
    )
    .addOption(new Option('--circuit <id>', 'only this circuit'))
    .addOption(new Option('--point <name>', 'is a reading of this point normal? In one line'))
    .addOption(
      new Option('--reading <number>', "the reading, in the site's unit; else the last one").argParser(
        numberOf,
      ),
    )
    .addOption(new Option('--at <time>', 'when it was read: 2026-09-12T14:30; else at the end of the export'))
    .addOption(new Option('--json', 'write every range for a program'))
    .addOption(new Option('--no-color', 'no colour, as with NO_COLOR'))
    .action(async (exports: string[], options: NormsOptions) => finish(await norms(exports, options, io)));
}

async function norms(exports: readonly string[], options: NormsOptions, io: Console): Promise<ExitCode> {
  const { log, signals, diagnosis } = await analyse(exports, options, io);
  const { learnNorms } = await import('../../norms/learn-norms.ts');
  const all = learnNorms(signals, diagnosis.findings);
  if (options.point !== undefined) {
    await io.out(`${await answer(options.point, options, all, signals)}\n`);
    return ExitCode.analysed;
  }
  const circuit = options.circuit === undefined ? null : requireCircuit(log, options.circuit);
  const shown = circuit === null ? all : all.filter((norm) => norm.circuit === circuit);
  if (options.json) {
    const { normsDocument } = await import('../../reporting/norms/norms-document.ts');
    await io.out(`${JSON.stringify(normsDocument(shown, signals), null, 2)}\n`);
    return ExitCode.analysed;
  }
  const { normsReport } = await import('../../reporting/norms/norms-terminal.ts');
  const { paintFor } = await import('../../reporting/terminal.ts');
  const paint = paintFor({ color: colorWanted(io, options.color), columns: io.columns });
  await io.out(normsReport(shown, signals, paint));
  return ExitCode.analysed;
}

async function answer(
  point: string,
  { reading, at }: NormsOptions,
  norms: readonly Norm[],
  signals: Signals,
): Promise<string> {
  const { log } = signals;
  const { readingText } = await import('../../reporting/norms/norm-text.ts');
  const { visibleText } = await import('../../reporting/visible-text.ts');
  const norm = norms.find((one) => one.point === point && one.of === 'readings');
  if (norm === undefined) throw unknownPoint(point, norms);
  const last = recordOf(norm, signals);
  const time =
    at === undefined
      ? timeAt(
          log.grid,
          Math.max(
            0,
            last.values.findLastIndex((value) => !Number.isNaN(value)),
          ),
        )
      : instantFrom(at, log.calendar.timeZone, '--at');
  const value = reading === undefined ? lastValue(last) : insideReading(reading, norm, signals);
  const { judgeReading } = await import('../../norms/judge-reading.ts');
  const { peerRange } = await import('../../norms/peer-norm.ts');
  const verdict = judgeReading(norm, value, time, log);
  if (verdict === null) throw unknownPoint(point, norms);
  return visibleText(readingText(norm, verdict, peerRange(norm, norms, signals), log));
}

function recordOf({ point, id, circuit, suctionGroup }: Norm, { log }: Signals): Record {
  const probe = log.circuits.find((one) => one.id === circuit)?.probes.find((one) => one.point === point);
  if (probe !== undefined) return probe.record;
  const group = log.suctionGroups.find((one) => one.id === suctionGroup)!;
  return (id === 'suction' ? group.pressure : id === 'discharge' ? group.discharge : group.liquidLevel)!;
}

function lastValue({ values }: Record): number {
  return values.findLast((value) => !Number.isNaN(value)) ?? Number.NaN;
}

/** From the number that the user read on site. */
function insideReading(reading: number, { unit }: Norm, { log }: Signals): number {
  if (unit === 'Cel') return celsiusFrom(reading, log.units.temperature);
  if (unit === 'kPa') return kilopascalFrom(reading, log.units.pressure, log.atmosphere);
  return reading / 100;
}

function unknownPoint(point: string, norms: readonly Norm[]): ImportRefusal {
  const names = norms.flatMap((norm) => (norm.of === 'readings' && norm.point !== null ? [norm.point] : []));
  const shown = names.slice(0, 8).join(', ');
  return new ImportRefusal(
    'point-without-norm',
    names.length === 0
      ? 'The export has too few quiet days to tell what is normal: three are needed, days without a finding.'
      : `Nothing is known of what is normal for ${point}; there are norms for ${shown}${names.length > 8 ? ` and ${names.length - 8} more` : ''}.`,
  );
}
