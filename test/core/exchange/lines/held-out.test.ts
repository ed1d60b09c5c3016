import { expect, test } from 'vitest';
import { readLine } from '../../../../src/core/exchange/lines/read-line.js';
import { corpus, measured } from '../../../corpus/corpus.js';

/**
 * Lines that were written before the reader saw them: at least 95 of 100 read rightly, and none wrongly and sure.
 * What each file gave when it was first opened stands in test/corpus/README.md.
 */
test.each([
  'lines-held-out',
  'lines-second',
  'lines-third',
  'lines-fourth',
  'lines-reported',
  'lines-sixth',
  'lines-seventh',
  'lines-eighth',
  'lines-ninth',
  'lines-tenth',
  'lines-eleventh',
  'lines-twelfth',
  'lines-thirteenth',
  'lines-fourteenth',
  'lines-fifteenth',
  'lines-sixteenth',
])('%s', (name) => {
  const lines = corpus(name);
  const { results, right, wrongAndSure, tooSure, sure } = measured(lines, readLine);
  const share = ((100 * right) / lines.length).toFixed(1);
  console.log(`${name}: ${right} of ${lines.length} lines read rightly (${share} %), ${sure} of them sure.`);
  for (const { known, wrong, reading } of results)
    if (wrong.length > 0) console.log(`${reading.sure ? 'Sure: ' : ''}${known.text}: ${wrong.join('; ')}`);
  expect(lines.length).toBeGreaterThanOrEqual(100);
  expect(right / lines.length).toBeGreaterThanOrEqual(0.95);
  expect(wrongAndSure.map(({ known }) => known.text)).toEqual([]);
  expect(tooSure.map(({ known }) => known.text)).toEqual([]);
});
