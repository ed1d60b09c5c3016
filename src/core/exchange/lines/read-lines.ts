import { readLine } from './read-line.js';
import type { LineReading } from './reading.js';

/** More than any list of ingredients; beyond it nothing is read, so that an answer never takes long. */
export const mostLines = 20_000;
export const mostText = 600_000;

/** One answer for each line of a text, blank ones included; or the sentence that says why it is too much. */
export const readLines = (text: string): LineReading[] | { sentence: string } => {
  if (text.length > mostText)
    return { sentence: 'This is more text than a list of ingredients holds. Paste one list at a time.' };
  const lines = text.replace(/\r\n?/g, '\n').replace(/\n$/, '').split('\n');
  if (lines.length > mostLines)
    return { sentence: `These are ${lines.length} lines. Paste at most ${mostLines} at a time.` };
  return lines.map(readLine);
};
