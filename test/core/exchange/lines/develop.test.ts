import { expect, test } from 'vitest';
import { readLine } from '../../../../src/core/exchange/lines/read-line.js';
import { corpus, measured } from '../../../corpus/corpus.js';

const lines = corpus('lines-develop');

test('the lines the reader was developed on', () => {
  const { results, right, wrongAndSure, tooSure, sure } = measured(lines, readLine);
  console.log(`Developed on: ${right} of ${lines.length} lines read rightly, ${sure} of them sure.`);
  for (const { known, wrong, reading } of results)
    if (wrong.length > 0 || (process.env.SHOW && !reading.sure && !known.unsure))
      console.log(
        `${reading.sure ? 'SURE ' : ''}${known.text}: ${wrong.join('; ')} ${reading.because.join(' ')}`,
      );
  expect(tooSure.map(({ known }) => known.text)).toEqual([]);
  expect(wrongAndSure.map(({ known }) => known.text)).toEqual([]);
  expect(right / lines.length).toBeGreaterThanOrEqual(0.98);
});
