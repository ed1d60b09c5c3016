import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { startPostgres } from './postgres.js';

// Runs the command given with TEST_DATABASE_URL set: to a server of its own, unless one is named already.
const [command = '', ...args] = process.argv.slice(2);
const server = process.env.TEST_DATABASE_URL
  ? { url: process.env.TEST_DATABASE_URL, stop: async () => {} }
  : await startPostgres();
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => {});
try {
  const child = spawn(command, args, {
    stdio: 'inherit',
    env: { ...process.env, TEST_DATABASE_URL: server.url },
  });
  const [code] = await once(child, 'exit');
  process.exitCode = code ?? 1;
} finally {
  await server.stop();
}
