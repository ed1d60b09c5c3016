import { schemaVersion } from '../store/migrations.js';
import { run } from './run.js';

await run(async ({ engine }) => `The ${engine} database is at step ${schemaVersion}.`);
