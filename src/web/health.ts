import { anyAccount } from '../store/accounts.js';
import { schemaVersion } from '../store/migrations.js';
import type { Answerer } from './house.js';

/** Whether the workbook is ready, for whoever watches over it. */
export const health: Answerer = async (request, reply) => {
  const { engine, db } = request.server.house;
  const ready = await anyAccount(db).then(
    () => true,
    () => false,
  );
  return reply
    .code(ready ? 200 : 503)
    .header('cache-control', 'no-store')
    .send({ engine, schemaVersion, ready });
};
