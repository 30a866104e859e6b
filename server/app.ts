import express, { type Express, Router } from 'express';
import { answerProblems } from './answer-problems.ts';
import type { Context } from './context.ts';
import { setSafeHeaders } from './guards/headers.ts';
import { guardHost } from './guards/host.ts';
import { guardMethods, only } from './guards/methods.ts';
import { guardOrigin } from './guards/origin.ts';
import { noQuery } from './guards/query.ts';
import { openApiDocument } from './openapi/document.ts';
import { Problem } from './problem.ts';
import { backgroundRoutes } from './routes/background.ts';
import { comparisonRoutes } from './routes/comparisons.ts';
import { EventStreams } from './routes/event-streams.ts';
import { eventRoutes } from './routes/events.ts';
import { exportRoutes } from './routes/exports.ts';
import { healthRoute } from './routes/health.ts';
import { pageRoutes } from './routes/pages.ts';
import { StoredLogs } from './routes/read-stored-log.ts';
import { recordRoutes } from './routes/records.ts';
import { repairRoutes } from './routes/repairs.ts';
import { resultRoutes } from './routes/results.ts';
import { seriesRoutes } from './routes/series.ts';
import { siteFileRoutes } from './routes/site-file.ts';
import { siteRoutes } from './routes/sites.ts';
import { workPageRoutes } from './routes/work-pages.ts';

/** The HTTP interface: guards first, then the routes, then every error as JSON. */
export function createApp(context: Context, allowedHosts: readonly string[]): Express {
  const app = express();
  app.disable('x-powered-by');
  app.disable('etag');
  app.set('query parser', 'simple');
  app.set('env', 'production');
  app.use(setSafeHeaders, guardMethods, guardHost(allowedHosts), guardOrigin);

  const logs = new StoredLogs();
  const streams = new EventStreams(context.limits.progressStreams);
  const api = Router();
  api.use(exportRoutes(context), eventRoutes(context, streams), resultRoutes(context), siteRoutes(context));
  api.use(backgroundRoutes(context), workPageRoutes(context, streams), siteFileRoutes(context));
  api.use(repairRoutes(context, streams), comparisonRoutes(context, streams));
  api.use(seriesRoutes(context, logs), recordRoutes(context, logs));
  api
    .route('/openapi.json')
    .get(noQuery, (_request, response) => {
      response.json(openApiDocument());
    })
    .all(only('GET'));

  app.use(healthRoute());
  app.use('/api/v1', api);
  app.use(pageRoutes(context));
  app.use((_request, _response, next) => next(new Problem('not-found')));
  app.use(answerProblems(context.log));
  return app;
}
