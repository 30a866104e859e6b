import { Router } from 'express';
import { circuitSeries } from '../../src/reporting/circuit-series.ts';
import { type CircuitLog, readCircuitLog } from '../../src/store/stored-log.ts';
import type { Context } from '../context.ts';
import { readyExport } from '../context.ts';
import { only } from '../guards/methods.ts';
import { readQuery } from '../guards/query.ts';
import { Problem } from '../problem.ts';
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

/** What a circuit's page plots, reduced to the columns it has; asked again on every zoom. */
export function circuitRoutes(context: Context, logs: StoredLogs): Router {
  const router = Router();
  router
    .route('/exports/:id/circuits/:circuit/series')
    .get(async (request, response) => {
      const query = readQuery(request, rangeQuery);
      const { id } = readyExport(context, request.params.id);
      const folder = context.store.resultFolderOf(id);
      const stored = await logs.read(folder);
      const found = await readCircuitLog(folder, stored, request.params.circuit);
      if (found === null) throw new Problem('unknown-circuit');
      response.json(plotOf(found, rangeOf(query, stored.grid)));
    })
    .all(only('GET'));
  return router;
}
