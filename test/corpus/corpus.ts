import { readFileSync } from 'node:fs';
import type { LineReading } from '../../src/core/exchange/lines/reading.js';

/** One line of the corpus with its right reading; README.md beside it says what each part means. */
export type Known = {
  text: string;
  amount: string;
  unit: string;
  food: string;
  note: string;
  pack: string;
  unsure: boolean;
};

/** The rows of a corpus file, in its order. */
export const corpus = (name: string): Known[] =>
  readFileSync(`test/corpus/${name}.txt`, 'utf8')
    .split('\n')
    .filter((row) => row.trim() !== '' && !row.startsWith('#'))
    .map((row) => {
      const [text = '', amount = '', unit = '', food = '', note = '', pack = '', mark = ''] = row
        .split('|')
        .map((part) => part.trim());
      return { text, amount, unit, food, note, pack, unsure: mark === 'unsure' };
    });

/** Case, commas and spaces make no difference. */
const plain = (words: string): string =>
  words
    .toLowerCase()
    .replace(/[,;.()]|\s+/g, ' ')
    .replace(/ +/g, ' ')
    .trim();

/** What differs between a reading and the right one, in words; empty when it is right. */
export const differences = (known: Known, read: LineReading): string[] => {
  const heading = read.kind === 'heading';
  const parts: [string, string, string][] = [
    ['amount', known.amount, [read.quantity, read.quantityTo].filter((one) => one !== null).join('-')],
    ['unit', known.unit, heading ? 'heading' : (read.unit ?? '')],
    ['food', plain(known.food), plain(heading ? (read.heading ?? '') : read.food)],
    ['note', plain(known.note), plain(read.note)],
    ['pack', known.pack, read.pack ? `${read.pack.amount} ${read.pack.unit}` : ''],
  ];
  return parts
    .filter(([, right, got]) => right !== got)
    .map(([part, right, got]) => `${part} "${right}" read as "${got}"`);
};

/** How a reader does on some lines: rightly read, wrongly and sure, sure where nobody can be, and sure in all. */
export const measured = (lines: readonly Known[], read: (text: string) => LineReading) => {
  const results = lines.map((known) => {
    const reading = read(known.text);
    return { known, reading, wrong: differences(known, reading) };
  });
  return {
    results,
    right: results.filter(({ wrong }) => wrong.length === 0).length,
    wrongAndSure: results.filter(({ wrong, reading }) => wrong.length > 0 && reading.sure),
    tooSure: results.filter(({ known, reading }) => known.unsure && reading.sure),
    sure: results.filter(({ reading }) => reading.sure).length,
  };
};
