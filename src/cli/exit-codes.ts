/** What the shell is told (docs/reference/exit-codes.md). */
export const ExitCode = {
  analysed: 0,
  /** Only with --exit-on: a finding reaches that severity. */
  reached: 1,
  /** The input or the call cannot be used. */
  unusable: 2,
  /** rimelog itself failed. */
  fault: 4,
} as const;
export type ExitCode = (typeof ExitCode)[keyof typeof ExitCode];
