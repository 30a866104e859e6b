import type { Command } from 'commander';
import { Argument, InvalidArgumentError, Option } from 'commander';
import { type OverrideOptions, withOverrideOptions } from './override-options.ts';

/** Options that every command which reads an export understands. */
export interface ReadingOptions extends OverrideOptions {
  readonly site?: string;
  readonly timeZone?: string;
}

function knownTimeZone(value: string): string {
  try {
    new Intl.DateTimeFormat('en', { timeZone: value });
  } catch {
    throw new InvalidArgumentError('An IANA name such as America/Denver or Europe/Berlin is expected.');
  }
  return value;
}

/** `site: false` for the command that writes a site file. */
export function withReadingOptions(command: Command, { site = true } = {}): Command {
  command.addArgument(new Argument('<export...>', 'CSV files, .gz, .zip, or a folder of them'));
  if (site) {
    command.addOption(new Option('--site <file>', 'site file that says what the columns are (YAML or JSON)'));
  }
  return withTimeAndOverrides(command);
}

/** For a command that reads the exports of many stores: a site file lies in the folder of its store. */
export function withStoreOptions(command: Command): Command {
  command.addArgument(
    new Argument('<store...>', 'one folder, .zip or CSV file a store; site.yaml in a folder is used'),
  );
  return withTimeAndOverrides(command);
}

function withTimeAndOverrides(command: Command): Command {
  command.addOption(
    new Option('--time-zone <zone>', 'zone of times without an offset, where no site file says it').argParser(
      knownTimeZone,
    ),
  );
  return withOverrideOptions(command);
}
