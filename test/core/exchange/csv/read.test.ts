import { stringify } from 'csv-stringify/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decodeText } from '../../../../src/core/exchange/csv/decode.js';
import { asItWas, harmless } from '../../../../src/core/exchange/csv/harmless.js';
import { readCsv } from '../../../../src/core/exchange/csv/read.js';
import { csvText } from '../../../../src/core/exchange/csv/write.js';

const rows = (text: string): string[][] => {
  const read = readCsv(text);
  if ('sentence' in read) throw new Error(read.sentence);
  return read.rows.map(({ cells }) => cells);
};

// RFC 4180, Common Format and MIME Type for CSV Files (October 2005), section 2, by its rules.
describe('RFC 4180 section 2', () => {
  test('rule 1: each record on a line of its own, ended by CR LF', () => {
    expect(rows('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n')).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
  });
  test('rule 2: the last record may have no line break', () => {
    expect(rows('aaa,bbb,ccc\r\nzzz,yyy,xxx')).toHaveLength(2);
  });
  test('rule 4: spaces are part of a field', () => {
    expect(rows('a , b,c\r\n1,2,3')[0]).toEqual(['a ', ' b', 'c']);
  });
  test('rule 5: a field may stand in quotes or not', () => {
    expect(rows('"aaa","bbb","ccc"\r\nzzz,yyy,xxx')[0]).toEqual(['aaa', 'bbb', 'ccc']);
  });
  test('rule 6: line breaks, quotes and commas within quotes', () => {
    expect(rows('"aaa","b\r\nbb","c,c"\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'b\r\nbb', 'c,c'],
      ['zzz', 'yyy', 'xxx'],
    ]);
  });
  test('rule 7: a quote within quotes is doubled', () => {
    expect(rows('"aaa","b""bb","ccc"')[0]).toEqual(['aaa', 'b"bb', 'ccc']);
  });
});

test('semicolons, tabs, a byte order mark, old and mixed line ends, rows of other lengths', () => {
  expect(rows('\uFEFFa;b\n1,5;2\n')).toEqual([
    ['a', 'b'],
    ['1,5', '2'],
  ]);
  expect(rows('a\tb\r1\t2\r')).toEqual([
    ['a', 'b'],
    ['1', '2'],
  ]);
  expect(rows('a,b\r\n1,2\n3\n\n , \n4,5,6')).toEqual([['a', 'b'], ['1', '2'], ['3'], ['4', '5', '6']]);
});

test('a row knows the line it begins on, also below a cell with line breaks', () => {
  const read = readCsv('a,b\n"x\ny\nz",1\n\nlast,2\n');
  expect('rows' in read && read.rows.map(({ line }) => line)).toEqual([1, 2, 6]);
});

test('a quotation mark within a field stands for itself', () => {
  expect(rows('name,price\n12" pizza,4')[1]).toEqual(['12" pizza', '4']);
});

test('UTF-8, else Latin-1; UTF-16 by its mark', () => {
  expect(decodeText(Buffer.from('\uFEFFCrème'))).toEqual({ text: 'Crème', encoding: 'UTF-8' });
  expect(decodeText(Buffer.from('Crème', 'latin1'))).toEqual({ text: 'Crème', encoding: 'Latin-1' });
  expect(decodeText(Uint8Array.of(0x80, 0x35)).text).toBe('€5');
  expect(decodeText(Buffer.from('\uFEFFCrème', 'utf16le'))).toEqual({ text: 'Crème', encoding: 'UTF-16' });
});

test('what is too long, empty, no text or never ends is said in a sentence', () => {
  const sentence = (text: string) => (readCsv(text) as { sentence?: string }).sentence;
  expect(sentence('')).toContain('nothing in it');
  expect(sentence('a\0')).toContain('no text');
  expect(sentence('a,b\n"c')).toContain('line 2 is never closed');
  expect(sentence('x\n'.repeat(50_002))).toContain('more than 50 000 rows');
  expect(rows('x\n'.repeat(50_001))).toHaveLength(50_001);
  expect(sentence('x'.repeat(16_000_001))).toContain('16 000 000 letters');
});

const cell = fc.string({ unit: 'grapheme', maxLength: 12 }).filter((text) => !text.includes('\0'));
const table = fc
  .array(fc.tuple(cell, cell, cell), { minLength: 1, maxLength: 8 })
  .map((list) => list.map(([a, b, c]) => [`k${a}`, b, c]));

test('what is written reads back, and another library writes the same', () => {
  fc.assert(
    fc.property(table, (list) => {
      const text = csvText([['key', 'b', 'c'], ...list]);
      const back = readCsv(text, { rows: 100, letters: 100_000, delimiter: ',' });
      expect('rows' in back && back.rows.slice(1).map(({ cells }) => cells)).toEqual(list);
      expect(
        rows(stringify([['key', 'b', 'c'], ...list], { record_delimiter: '\r\n', quoted: true })),
      ).toEqual([['key', 'b', 'c'], ...list]);
    }),
  );
});

test('no cell begins like a formula, and every cell comes back as it was', () => {
  const risky = fc
    .tuple(fc.constantFrom('=', '+', '-', '@', '\t', '\r', '\n', "'=", "''+", "'"), cell)
    .map(([a, b]) => a + b);
  fc.assert(
    fc.property(fc.oneof(cell, risky), (text) => {
      const out = harmless(text);
      expect(asItWas(out)).toBe(text);
      expect(/^[=+\-@\t\r\n]/.test(out) && !/^[-+]?\d+([.,]\d+)?$/.test(out)).toBe(false);
    }),
  );
  expect(harmless('=1+1')).toBe("'=1+1");
  expect(harmless('-5')).toBe('-5');
});

test('any bytes are answered', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
      const read = readCsv(decodeText(bytes).text);
      expect('rows' in read || 'sentence' in read).toBe(true);
    }),
    { numRuns: 500 },
  );
});
