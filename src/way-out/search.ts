import { Worker } from 'node:worker_threads';
import type { WaysOut } from '../core/way-out/find.js';
import type { Asked } from './worker.js';

/** A search that is under way or done; `stop` ends it, and then it has no answer. */
export type Search = { answer: Promise<WaysOut>; stop(): void };

// Run from its sources the workbook has the same compiled thread, for threads load no TypeScript.
const compiled = new URL(
  import.meta.url.includes('/dist/') ? './worker.js' : '../../dist/src/way-out/worker.js',
  import.meta.url,
);

/** Searches for the smallest ways out in a thread of its own, so that pages are answered meanwhile. */
export const search = (asked: Asked): Search => {
  const worker = new Worker(compiled, { workerData: asked });
  const answer = new Promise<WaysOut>((found, failed) => {
    worker.once('message', found);
    worker.once('error', failed);
    worker.once('exit', () => failed(new Error('the search was stopped')));
  });
  answer.catch(() => {}); // one that was stopped has nobody who waits for it
  return { answer, stop: () => void worker.terminate() };
};
