import { Router } from 'express';
import { indexAt } from '../../src/model/grid.ts';
import type { Record } from '../../src/model/record.ts';
import { reduceSeries } from '../../src/reporting/reduce-series.ts';
import { siteScale } from '../../src/reporting/site-scale.ts';
import { readPoint, type StoredLog } from '../../src/store/stored-log.ts';
import type { Context } from '../context.ts';
import { readyExport } from '../context.ts';
import { only } from '../guards/methods.ts';
import { noQuery, readQuery } from '../guards/query.ts';
import { Problem } from '../problem.ts';
import type { StoredLogs } from './read-stored-log.ts';
import { rangeOf, rangeQuery } from './time-range.ts';

type Described = Pick<Record, 'point' | 'quantity' | 'exportUnit' | 'intervalMs' | 'logging'>;

/** The unit in which the site reads a quantity, and the way there; other quantities stay as they are inside. */
function shownAs(
  quantity: Record['quantity'],
  log: StoredLog,
): { unit: string; convert: (value: number) => number } {
  const scale = siteScale(log);
  if (quantity === 'temperature') return { unit: scale.temperatureSign, convert: scale.temperature };
  if (quantity === 'temperature-difference')
    return { unit: scale.temperatureSign, convert: scale.difference };
  if (quantity === 'pressure') return { unit: scale.pressureSign, convert: scale.pressure };
  return { unit: '', convert: (value) => value };
}

function described({ point, quantity, exportUnit, intervalMs, logging }: Described) {
  return { point, quantity, exportUnit, intervalMs, logging };
}

/** Any single point of the export, reduced: lowest and highest of every pixel column. */
export function recordRoutes(context: Context, logs: StoredLogs): Router {
  const router = Router();
  router
    .route('/exports/:id/records')
    .get(noQuery, async (request, response) => {
      const { id } = readyExport(context, request.params.id);
      const stored = await logs.read(context.store.resultFolderOf(id));
      response.json({ records: stored.records.map(described) });
    })
    .all(only('GET'));
  router
    .route('/exports/:id/records/:point')
    .get(async (request, response) => {
      const query = readQuery(request, rangeQuery);
      const { id } = readyExport(context, request.params.id);
      const folder = context.store.resultFolderOf(id);
      const stored = await logs.read(folder);
      const record = await readPoint(folder, stored, request.params.point);
      if (record === null) throw new Problem('unknown-point');
      const { fromMs, toMs, pixels } = rangeOf(query, stored.grid);
      const range = { from: indexAt(stored.grid, fromMs), to: indexAt(stored.grid, toMs) + 1 };
      const { unit, convert } = shownAs(record.quantity, stored);
      response.json({
        ...described(record),
        unit,
        span: { from: fromMs, to: toMs },
        line: reduceSeries(record.values, stored.grid, range, pixels, convert),
      });
    })
    .all(only('GET'));
  return router;
}
