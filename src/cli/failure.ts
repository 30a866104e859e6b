import { CommanderError } from 'commander';
import { ImportRefusal } from '../importing/readings.ts';
import { visibleText } from '../reporting/visible-text.ts';
import type { Console } from './console.ts';
import { ExitCode } from './exit-codes.ts';

const fileTroubles: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  EACCES: 'this user may not open it',
  EPERM: 'this user may not open it',
  EISDIR: 'it is a folder, not a file',
  ENOTDIR: 'a part of the path is a file, not a folder',
  ENOSPC: 'the disk is full',
  EROFS: 'the disk is read-only',
  EADDRINUSE: 'the port is in use; give another one with --port',
};

function fileTrouble(error: unknown): string | null {
  if (!(error instanceof Error)) return null;
  const { code, path } = error as NodeJS.ErrnoException;
  const trouble = code === undefined ? undefined : fileTroubles[code];
  if (trouble === undefined) return null;
  return path === undefined ? `This cannot be done: ${trouble}.` : `${path}: ${trouble}.`;
}

/** Why an input cannot be used, in a sentence; null for any other error. */
export function refusalIn(error: unknown): string | null {
  return error instanceof ImportRefusal ? error.message : fileTrouble(error);
}

/** One sentence on standard error, and the status for the shell. The trace is for developers who ask for it. */
export function reportFailure(error: unknown, io: Console): ExitCode {
  if (error instanceof CommanderError) {
    return error.exitCode === 0 ? ExitCode.analysed : ExitCode.unusable;
  }
  const refusal = refusalIn(error);
  if (refusal !== null) {
    io.err(`rimelog: ${visibleText(refusal)}\n`);
    return ExitCode.unusable;
  }
  const what = error instanceof Error ? error.message : String(error);
  const [firstLine] = what.split('\n');
  io.err(
    `rimelog: A fault in rimelog itself stopped the analysis (${visibleText(firstLine ?? '')}); please report it ` +
      'with the command and the first lines of the export (RIMELOG_TRACE=1 shows where).\n',
  );
  if (io.environment['RIMELOG_TRACE'] && error instanceof Error) io.err(`${error.stack}\n`);
  return ExitCode.fault;
}
