import { parentPort, workerData } from 'node:worker_threads';
import type { Event } from '../core/facts/event.js';
import type { Facts } from '../core/facts/facts.js';
import { waysOut } from '../core/way-out/find.js';
import type { StoodIn } from '../core/way-out/others.js';
import type { Taken } from '../core/way-out/treat.js';
import { loadSolver } from './highs.js';

/** What the search is told; what it answers is sent back, and a fault in it ends the thread with its error. */
export type Asked = { event: Event; facts: Facts; stoodIn: StoodIn; taken?: Taken };

const { event, facts, stoodIn, taken } = workerData as Asked;
parentPort!.postMessage(waysOut(event, facts, stoodIn, await loadSolver(), taken));
