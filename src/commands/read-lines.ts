import { readLines } from '../core/exchange/lines/read-lines.js';
import { refuse, standardInput } from './standard-input.js';

/** Reads lines of ingredients from standard input and prints one JSON object for each. */
const text = await standardInput(10_000_000);
const read = text === undefined ? undefined : readLines(text);
if (!read) refuse('This is more text than a list of ingredients holds. Paste one list at a time.');
else if ('sentence' in read) refuse(read.sentence);
else process.stdout.write(`${read.map((line) => JSON.stringify(line)).join('\n')}\n`);
