import { type RequestHandler, Router } from 'express';
import { circuitSeries } from '../../src/reporting/circuit-series.ts';
import { readGroupLog } from '../../src/store/group-log.ts';
import { type CircuitLog, readCircuitLog, type StoredLog } from '../../src/store/stored-log.ts';
import type { Context } from '../context.ts';
import { readyExport } from '../context.ts';
import { only } from '../guards/methods.ts';
import { readQuery } from '../guards/query.ts';
import { Problem, type ProblemCode } from '../problem.ts';
import type { StoredLogs } from './read-stored-log.ts';
import { settledLines } from './settled-lines.ts';
import { type PlotRange, rangeOf, rangeQuery } from './time-range.ts';

/** All lines of a circuit's plot; where findings stand is said by the findings document. */
function plotOf({ log, circuit, signals }: CircuitLog, { fromMs, toMs, pixels }: PlotRange) {
  const { findings: _, ...series } = circuitSeries(
    log,
    { circuits: [signals] },
    circuit.id,
    fromMs,
    toMs,
    pixels,
  );
  return {
    ...series,
    suctionGroup: circuit.suctionGroup,
    stepMs: log.grid.stepMs,
    logSpan: { from: log.grid.startMs, to: log.grid.startMs + (log.grid.count - 1) * log.grid.stepMs },
    settled: settledLines(log, circuit, signals.phase, { fromMs, toMs, pixels }),
  };
}

/** What the pages are given to plot. */
export type PlotSeries = ReturnType<typeof plotOf>;

type ReadLog = (folder: string, stored: StoredLog, name: string) => Promise<CircuitLog | null>;

function sendSeries(context: Context, logs: StoredLogs, read: ReadLog, missing: ProblemCode): RequestHandler {
  return async (request, response) => {
    const query = readQuery(request, rangeQuery);
    const { id } = readyExport(context, request.params['id']);
    const folder = context.store.resultFolderOf(id);
    const stored = await logs.read(folder);
    const found = await read(folder, stored, String(request.params['name']));
    if (found === null) throw new Problem(missing);
    response.json(plotOf(found, rangeOf(query, stored.grid)));
  };
}

/** What the page of a circuit or a suction group plots, reduced to the columns it has; asked again on every zoom. */
export function seriesRoutes(context: Context, logs: StoredLogs): Router {
  const router = Router();
  router
    .route('/exports/:id/circuits/:name/series')
    .get(sendSeries(context, logs, readCircuitLog, 'unknown-circuit'))
    .all(only('GET'));
  router
    .route('/exports/:id/groups/:name/series')
    .get(sendSeries(context, logs, readGroupLog, 'unknown-group'))
    .all(only('GET'));
  return router;
}
