import { join } from 'node:path';
import { Router } from 'express';
import type { CircuitBackground } from '../../src/reporting/background/circuit-background.ts';
import { resultNames } from '../analysis/result-names.ts';
import type { Context } from '../context.ts';
import { readyExport } from '../context.ts';
import { only } from '../guards/methods.ts';
import { noQuery } from '../guards/query.ts';
import { Problem } from '../problem.ts';
import { readStored } from './stored-page.ts';

/** What is known of a circuit beside its findings: what is normal, what alarms would have said, air above its limit. */
export function backgroundRoutes(context: Context): Router {
  const router = Router();
  router
    .route('/exports/:id/circuits/:circuit/background')
    .get(noQuery, async (request, response) => {
      const { id } = readyExport(context, request.params.id);
      const text = await readStored(join(context.store.resultFolderOf(id), resultNames.background));
      const { circuits } = JSON.parse(text) as { circuits: readonly CircuitBackground[] };
      const found = circuits.find(({ circuit }) => circuit === request.params.circuit);
      if (found === undefined) throw new Problem('unknown-circuit');
      response.json(found);
    })
    .all(only('GET'));
  return router;
}
