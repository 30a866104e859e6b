import { Router } from 'express';
import type { Context } from '../context.ts';
import { only } from '../guards/methods.ts';
import { noQuery } from '../guards/query.ts';
import { addressesOf } from './addresses.ts';

/** Sites that analysed exports speak of, by name, each with its exports, newest first. */
export function siteRoutes({ store }: Context): Router {
  const router = Router();
  router
    .route('/sites')
    .get(noQuery, (_request, response) => {
      const sites = new Map<string, { site: string; timeZone: string; exports: unknown[] }>();
      for (const { id, received, summary } of store.list()) {
        if (summary === null) continue;
        const { site, timeZone, start, end, circuits, findings } = summary;
        const entry = sites.get(site) ?? { site, timeZone, exports: [] };
        entry.exports.push({ id, received, start, end, circuits, counts: findings, ...addressesOf(id) });
        sites.set(site, entry);
      }
      response.json({ sites: [...sites.values()] });
    })
    .all(only('GET'));
  return router;
}
