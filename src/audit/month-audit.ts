import type { Diagnosis } from '../model/finding.ts';
import type { Log } from '../model/log.ts';
import type { Signals } from '../signals/types.ts';
import { type Danfo, dayTable } from './day-table.ts';
import type { Month } from './month.ts';
import type { MonthScope } from './scope.ts';
import { type Table, tableOf } from './table.ts';
import { tableDefinitions } from './tables/registry.ts';

/** A month in tables, by name; all findings, alarms and plots come from the scope. */
export interface MonthAudit {
  readonly scope: MonthScope;
  readonly tables: ReadonlyMap<string, Table>;
}

interface Judged {
  readonly log: Log;
  readonly signals: Signals;
  readonly diagnosis: Diagnosis;
}

/** All tables of a month; that of the days is filled at once. danfojs-node is loaded here, when the first audit is made. */
export async function monthAudit({ log, signals, diagnosis }: Judged, month: Month): Promise<MonthAudit> {
  const scope: MonthScope = { log, signals, diagnosis, month };
  const tables = new Map(tableDefinitions.map((definition) => [definition.name, tableOf(definition, scope)]));
  tables.set('days', dayTable(scope, tables, await loadDanfo()));
  return { scope, tables };
}

/**
 * Its frames alone, without its readers of files. It is a CommonJS package: what stands in `default` for Node lies open
 * for a bundler.
 */
async function loadDanfo(): Promise<Danfo> {
  const loaded = await import('danfojs-node/dist/danfojs-base/index.js');
  return 'DataFrame' in loaded ? loaded : (loaded as { default: Danfo }).default;
}

/** A table that every audit has. */
export function tableNamed({ tables }: MonthAudit, name: string): Table {
  const table = tables.get(name);
  if (table === undefined) throw new RangeError(`An audit has no table ${name}.`);
  return table;
}
