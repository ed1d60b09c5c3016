import compress from '@fastify/compress';
import formbody from '@fastify/formbody';
import helmet from '@fastify/helmet';
import rateLimit from '@fastify/rate-limit';
import view from '@fastify/view';
import fastify, { type FastifyInstance } from 'fastify';
import { useAccess } from './web/access.js';
import { newCode } from './web/account/code.js';
import { serveAssets } from './web/assets.js';
import { useErrors } from './web/errors.js';
import { parseForm } from './web/form.js';
import { hostGuard, originGuard } from './web/guards.js';
import { safetyHeaders } from './web/headers.js';
import type { House } from './web/house.js';
import { loggedError, loggedRequest } from './web/logged.js';
import { useRoutes } from './web/routes.js';
import { useSessions } from './web/session.js';
import { views } from './web/view-engine.js';

const mega = 1024 * 1024;

/** The whole workbook as one server, not yet listening; `app.house.firstCode` makes the first account. */
export const buildApp = async (given: Omit<House, 'assets' | 'firstCode'>): Promise<FastifyInstance> => {
  const { config } = given;
  const app = fastify({
    trustProxy: config.trustProxy,
    bodyLimit: 2 * mega,
    routerOptions: { ignoreTrailingSlash: true },
    logger: { level: config.logLevel, serializers: { req: loggedRequest, err: loggedError } },
  });
  await app.register(helmet, safetyHeaders);
  app.addHook('onRequest', hostGuard(config));
  app.addHook('onRequest', originGuard);
  useErrors(app);
  await app.register(compress, { encodings: ['gzip'], zlibOptions: { level: 4 } });
  await app.register(rateLimit, { global: false });
  app.removeContentTypeParser(['application/json', 'text/plain']);
  await app.register(view, views);
  await app.register(formbody, { parser: parseForm });
  app.decorate('house', { ...given, assets: serveAssets(app), firstCode: newCode() });
  await useSessions(app, given);
  useAccess(app, given);
  await useRoutes(app);
  return app;
};
