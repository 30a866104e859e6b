import type { Progress } from '../pipeline/gather-readings.ts';
import type { Console } from './console.ts';

const refreshMilliseconds = 100;
const clearLine = '\r\u001b[K';

/** One line on standard error that says what is being done; nothing at all where that is no terminal. */
export interface ProgressLine {
  show(progress: Progress): void;
  clear(): void;
}

export function progressLine(io: Console): ProgressLine {
  if (!io.errIsTerminal) return { show() {}, clear() {} };
  let shownAt = Number.NEGATIVE_INFINITY;
  let stage = '';
  return {
    show(progress) {
      const now = performance.now();
      if (progress.stage === stage && now - shownAt < refreshMilliseconds) return;
      shownAt = now;
      stage = progress.stage;
      const share = progress.share === null ? '' : ` ${Math.round(progress.share * 100)} %`;
      io.err(`${clearLine}${stage}${share} …`);
    },
    clear() {
      if (stage !== '') io.err(clearLine);
    },
  };
}
