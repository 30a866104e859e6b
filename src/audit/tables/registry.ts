import type { TableDefinition } from '../table.ts';
import { alarmLeadsTable } from './alarm-leads.ts';
import { alarmsTable } from './alarms.ts';
import { changesTable } from './changes.ts';
import { circuitsTable } from './circuits.ts';
import { compressorsTable } from './compressors.ts';
import { defrostsTable } from './defrosts.ts';
import { exposureTable } from './exposure.ts';
import { normsTable } from './norms.ts';
import { pointsTable } from './points.ts';
import { probesTable } from './probes.ts';
import { suctionTable } from './suction.ts';

/** Every table that is made from the history itself, the contract's four first. */
export const tableDefinitions = [
  probesTable,
  circuitsTable,
  defrostsTable,
  compressorsTable,
  exposureTable,
  alarmsTable,
  alarmLeadsTable,
  suctionTable,
  changesTable,
  normsTable,
  pointsTable,
] as unknown as readonly TableDefinition<unknown>[];
