import { expect, test } from 'vitest';
import { type Tax, taxRoundings } from '../../../src/core/facts/price.js';
import { taxOf } from '../../../src/core/selling/tax.js';

const at = (rate: string, rounding: Tax['rounding'], included = false): Tax => ({
  name: 'Tax',
  rate,
  included,
  rounding,
});
const each = (rounding: Tax['rounding'], lines: number[], included = false) =>
  taxOf(lines, at('20', rounding, included)).tax;

// HMRC internal manual VATREC12010 "Rounding on invoices", on VAT Notice 700, The VAT Guide, paragraph 17.5: the tax of
// an invoice may go down to a whole penny; that of a line to the nearest penny, or down to 0.1p. Worked: three lines of
// 1.99 at 20 per cent hold 0.398 each: 1.194 in all, 1.19; by line 0.40, so 1.20; down to a tenth 39.7p, so 119.1p, 1.19.
test('VAT on three lines of 1.99: 1.19 by invoice, 1.20 by line', () => {
  const lines = [199, 199, 199];
  expect(taxRoundings.map((way) => each(way, lines))).toEqual([119, 119, 120, 119]);
  expect(taxOf(lines, at('20', 'whole-down'))).toEqual({ net: 597, tax: 119, total: 716 });
  expect(taxOf(lines, at('20', 'line-nearest'))).toEqual({ net: 597, tax: 120, total: 717 });
});

// Invented: 2.98 holds 59.6p: down 59, to the nearest 60. Ten lines of 0.01 hold 0.2p each: 2p of the whole, none by
// the nearest penny of a line, 2p by tenths. Four of 0.03 hold 0.6p each: 2.4p, 2; by line 4; by tenths 2.4, 2. Lines of
// 0.04, 0.8p in each of two, are 1.6p: tenths add up to 1.6 and go down to 1, the whole to the nearest is 2.
test('the four roundings differ where they should', () => {
  const by = (lines: number[]) => taxRoundings.map((way) => each(way, lines));
  expect(by([298])).toEqual([59, 60, 60, 59]);
  expect(by(Array(10).fill(1))).toEqual([2, 2, 0, 2]);
  expect(by(Array(4).fill(3))).toEqual([2, 2, 4, 2]);
  expect(by([4, 4])).toEqual([1, 2, 2, 1]);
});

// The arithmetic of Notice 700: 120.00 with 20 per cent in it holds a sixth, 20.00, not 24.00.
test('120.00 holds 20.00 of VAT at 20 per cent', () => {
  expect(taxOf([12000], at('20', 'whole-nearest', true))).toEqual({ net: 10000, tax: 2000, total: 12000 });
  expect(taxOf([12000], at('20', 'whole-nearest'))).toEqual({ net: 12000, tax: 2400, total: 14400 });
  expect(taxOf([12000], null)).toEqual({ net: 12000, tax: 0, total: 12000 });
});

// ISO 4217, List One: JPY has no minor digits, KWD three. 1,999 yen at 10 per cent: 199.9, so 200 or down 199; 1.999
// dinar at 5 per cent: 99.95 fils. Sums are minor units, so that nothing but their number differs.
test('currencies of no and of three minor digits', () => {
  expect(taxOf([1999], at('10', 'whole-nearest')).tax).toBe(200);
  expect(taxOf([1999], at('10', 'whole-down')).tax).toBe(199);
  expect(taxOf([1999], at('5', 'line-nearest'))).toEqual({ net: 1999, tax: 100, total: 2099 });
});

// Invented: 1.00 off lines of 2.00 and 1.00 is 67p and 33p of it: 1.33 and 0.67 are left, 26.6p and 13.4p of tax.
test('a discount comes off the lines before their tax, and no tax goes below zero', () => {
  expect(taxOf([200, 100], at('20', 'line-nearest'), 100)).toEqual({ net: 200, tax: 40, total: 240 });
  expect(taxOf([200, 100], at('20', 'line-down'), 100).tax).toBe(40);
  expect(taxOf([1, 1, 1], at('20', 'line-nearest', true), 3)).toEqual({ net: 0, tax: 0, total: 0 });
});
