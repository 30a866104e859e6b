import type { ExampleName, ExampleOptions } from '../../sample-logs/maker/examples.ts';
import { exampleStore } from '../../sample-logs/maker/examples.ts';
import type { SimulatedStore } from '../../sample-logs/maker/simulated-store.ts';
import { type ToLogOptions, toLog } from '../../sample-logs/maker/to-log.ts';
import { monthOf } from '../../src/audit/month.ts';
import { type MonthAudit, monthAudit } from '../../src/audit/month-audit.ts';
import type { Cell, Table } from '../../src/audit/table.ts';
import { diagnose } from '../../src/diagnosis/diagnose.ts';
import type { Diagnosis } from '../../src/model/finding.ts';
import type { Log } from '../../src/model/log.ts';
import { computeSignals } from '../../src/signals/compute-signals.ts';

export async function auditOf(
  log: Log,
  month: string | null = null,
  diagnosis?: Diagnosis,
): Promise<MonthAudit> {
  const signals = computeSignals(log);
  return monthAudit({ log, signals, diagnosis: diagnosis ?? diagnose(signals) }, monthOf(log, month)!);
}

export interface SimulatedAudit {
  readonly store: SimulatedStore;
  readonly log: Log;
  readonly audit: MonthAudit;
}

export async function simulatedAudit(
  name: ExampleName,
  options: ExampleOptions,
  logging: ToLogOptions = {},
): Promise<SimulatedAudit> {
  const store = exampleStore(name, options);
  const log = toLog(store, logging);
  return { store, log, audit: await auditOf(log) };
}

/** The rows of a table as objects by column name. */
export function objectsOf({ columns, rows }: Table): { readonly [name: string]: Cell }[] {
  return rows.map((row) => Object.fromEntries(columns.map(({ name }, k) => [name, row[k]!])));
}
