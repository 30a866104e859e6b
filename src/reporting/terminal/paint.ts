import picocolors from 'picocolors';
import type { Severity } from '../../model/finding.ts';
import { severityWords } from '../words.ts';

/** How the list is drawn: its width, and colours that are all plain when colour is off. */
export interface Paint {
  readonly width: number;
  bold(text: string): string;
  dim(text: string): string;
  severity(severity: Severity, text: string): string;
}

const narrowest = 60;
const widest = 100;

export function paintFor(options: { readonly color: boolean; readonly columns: number | undefined }): Paint {
  const colors = picocolors.createColors(options.color);
  const bySeverity = { act: colors.red, watch: colors.yellow, note: colors.dim };
  return {
    width: Math.max(narrowest, Math.min(widest, options.columns ?? 80)),
    bold: colors.bold,
    dim: colors.dim,
    severity: (severity, text) => colors.bold(bySeverity[severity](text)),
  };
}

/** `▲ ACT`: a shape and a word, whatever the colour. */
export function severityBadge(severity: Severity): string {
  const { symbol, word } = severityWords[severity];
  return `${symbol} ${word.toUpperCase()}`;
}
