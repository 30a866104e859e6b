import type { Logging } from '../logging.ts';
import type { Naming } from '../naming.ts';
import type { PointRole } from '../simulated-store.ts';
import type { TimeStyle } from './local-time.ts';

/** How one system writes its export. */
export interface Dialect {
  readonly layout: 'wide' | 'long' | 'change-of-value' | 'file-a-circuit';
  readonly delimiter: ',' | ';' | '\t';
  readonly decimal: '.' | ',';
  readonly time: TimeStyle;
  readonly logging: Logging;
  readonly naming: Naming;
  /** Lines of title above the header. */
  readonly preamble: boolean;
  /** Where the unit stands. */
  readonly units: 'header' | 'row' | 'none';
  /** Words for 0 and 1. */
  readonly statusWords: readonly [string, string];
  readonly missing: string;
  readonly newline: '\n' | '\r\n';
  readonly byteOrderMark: boolean;
  /** Roles that this system does not log. */
  readonly without: readonly PointRole[];
}

export interface ExportFile {
  readonly name: string;
  readonly text: string;
}
