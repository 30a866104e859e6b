import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { StoredLog } from '../../src/store/stored-log.ts';
import { resultNames } from '../analysis/result-names.ts';

const kept = 4;

/** Logs without their values, the last few kept in memory: every zoom asks for one. */
export class StoredLogs {
  readonly #logs = new Map<string, Promise<StoredLog>>();

  /** `folder` is the result folder of an export. */
  read(folder: string): Promise<StoredLog> {
    const known = this.#logs.get(folder);
    if (known !== undefined) return known;
    const reading = readFile(join(folder, resultNames.log), 'utf8').then(
      (text) => JSON.parse(text) as StoredLog,
    );
    reading.catch(() => this.#logs.delete(folder));
    this.#logs.set(folder, reading);
    const oldest = this.#logs.keys().next().value;
    if (this.#logs.size > kept && oldest !== undefined) this.#logs.delete(oldest);
    return reading;
  }
}
