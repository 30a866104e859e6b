import { type Command, InvalidArgumentError, Option } from 'commander';
import type { ReadOverrides } from '../importing/read-exports.ts';
import type { SiteFile } from '../importing/site-file/site-file.ts';

/** Flags by which the user takes the other one of two possible readings of an export. */
export interface OverrideOptions {
  readonly dayFirst?: true;
  readonly monthFirst?: true;
  readonly year?: number;
  readonly decimalComma?: true;
  readonly decimalPoint?: true;
  readonly delimiter?: string;
  readonly encoding?: string;
  readonly keepRails?: true;
  readonly unitChange?: 'convert' | 'reject' | 'keep';
  readonly temperatureUnit?: 'degF' | 'degC' | 'K';
  readonly pressureUnit?: 'psig' | 'psia' | 'bar' | 'barg' | 'kPa';
}

const heading = 'Where an export can be read in two ways:';

const delimiterWords: Readonly<{ [word: string]: string }> = {
  comma: ',',
  semicolon: ';',
  tab: '\t',
  pipe: '|',
};

function delimiterOf(value: string): string {
  const delimiter = delimiterWords[value] ?? value;
  if (!Object.values(delimiterWords).includes(delimiter)) {
    throw new InvalidArgumentError(`One of ${Object.keys(delimiterWords).join(', ')} is expected.`);
  }
  return delimiter;
}

function yearOf(value: string): number {
  if (!/^(?:19|20)\d\d$/u.test(value)) throw new InvalidArgumentError('A year such as 2026 is expected.');
  return Number(value);
}

function encodingOf(value: string): string {
  try {
    new TextDecoder(value);
  } catch {
    throw new InvalidArgumentError('An encoding such as utf-8, utf-16le or windows-1252 is expected.');
  }
  return value;
}

export function withOverrideOptions(command: Command): Command {
  return command
    .optionsGroup(heading)
    .addOption(new Option('--day-first', '3/4 is the third of April').conflicts('monthFirst'))
    .addOption(new Option('--month-first', '3/4 is the fourth of March'))
    .addOption(new Option('--year <year>', 'of the first stamp, where stamps have no year').argParser(yearOf))
    .addOption(new Option('--decimal-comma', '3,5 is three and a half').conflicts('decimalPoint'))
    .addOption(new Option('--decimal-point', '3.5 is three and a half'))
    .addOption(
      new Option('--delimiter <mark>', 'what parts the cells: comma, semicolon, tab or pipe').argParser(
        delimiterOf,
      ),
    )
    .addOption(new Option('--encoding <name>', 'utf-8, utf-16le, windows-1252 …').argParser(encodingOf))
    .addOption(new Option('--keep-rails', 'take -40, 327.67 and their kind as readings'))
    .addOption(
      new Option('--unit-change <how>', 'where a column changes its unit part way').choices([
        'convert',
        'reject',
        'keep',
      ]),
    )
    .addOption(
      new Option('--temperature-unit <unit>', 'of temperatures whose column says none').choices([
        'degF',
        'degC',
        'K',
      ]),
    )
    .addOption(
      new Option('--pressure-unit <unit>', 'of pressures whose column says none').choices([
        'psig',
        'psia',
        'bar',
        'barg',
        'kPa',
      ]),
    )
    .optionsGroup('Options:');
}

export function overridesFrom(options: OverrideOptions): ReadOverrides {
  const {
    dayFirst,
    monthFirst,
    year,
    decimalComma,
    decimalPoint,
    delimiter,
    encoding,
    keepRails,
    unitChange,
  } = options;
  return {
    ...(dayFirst ? { dateOrder: 'dmy' } : monthFirst ? { dateOrder: 'mdy' } : {}),
    ...(year === undefined ? {} : { year }),
    ...(decimalComma ? { decimalComma: true } : decimalPoint ? { decimalComma: false } : {}),
    ...(delimiter === undefined ? {} : { delimiter }),
    ...(encoding === undefined ? {} : { encoding }),
    ...(keepRails ? { keepRails } : {}),
    ...(unitChange === undefined ? {} : { unitChange }),
  };
}

/** Units of the columns that say none, as the flags state them; they go before the site file. */
export function statedUnits({ temperatureUnit, pressureUnit }: OverrideOptions): SiteFile['units'] {
  if (temperatureUnit === undefined && pressureUnit === undefined) return undefined;
  return {
    ...(temperatureUnit === undefined ? {} : { temperature: temperatureUnit }),
    ...(pressureUnit === undefined ? {} : { pressure: pressureUnit }),
  };
}
