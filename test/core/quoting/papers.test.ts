import { describe, expect, test } from 'vitest';
import { numberedPaper } from '../../../src/core/facts/quote.js';
import { creditOf, invoiceOf, receiptOf } from '../../../src/core/quoting/papers.js';
import { vat } from '../selling/sold.js';
import { kitchenAt, paid, quoteOf, supper } from './quoted.js';

const accepted = quoteOf(
  supper(46, {
    price: { by: { aGuest: 2600 }, minimum: 125000, discount: { off: 5000 }, discountFor: 'for old friends' },
  }),
  kitchenAt(2500, vat()),
);
const deposit = paid('2026-09-28', 36000, { words: 'deposit, by bank' });
const rest = paid('2026-11-26', 108000);

// 46 at 26.00 are 1,196.00, raised to 1,250.00, less 50.00: 1,200.00, and 240.00 of VAT. A quarter of 1,440.00 is 360.00.
describe('an invoice', () => {
  const invoice = invoiceOf(accepted, [deposit, rest], { number: 7, date: '2026-10-02' });

  test('says what was accepted and what was paid by its day', () => {
    expect(numberedPaper.parse(invoice)).toEqual(invoice);
    expect(invoice).toMatchObject({
      kind: 'invoice',
      number: 7,
      from: 'Cold Ash Kitchen',
      client: 'Ines and Tom',
      lines: [
        { words: 'guests', count: 46, each: 2600, amount: 119600 },
        { words: 'to the least that a party comes to', count: null, each: null, amount: 5400 },
        { words: 'for old friends', count: null, each: null, amount: -5000 },
      ],
      taxAmount: 24000,
      total: 144000,
      paid: 36000,
      words: 'Still to be paid: balance by 26 Nov 2026.',
    });
  });

  test('says when all is paid', () => {
    const late = invoiceOf(accepted, [deposit, rest], { number: 8, date: '2026-11-26' });
    expect(late).toMatchObject({ paid: 144000, words: 'Paid in full.' });
    const struck = { ...rest, struck: '2026-11-27' };
    expect(invoiceOf(accepted, [deposit, struck], { number: 8, date: '2026-11-28' }).paid).toBe(36000);
  });

  test('is taken back whole by a credit', () => {
    const credit = creditOf(invoice, { number: 1, date: '2026-10-03' });
    expect(numberedPaper.parse(credit)).toEqual(credit);
    expect(credit).toMatchObject({
      kind: 'credit',
      number: 1,
      of: 7,
      total: 144000,
      taxAmount: 24000,
      paid: 0,
    });
    expect(credit.words).toBe('Takes back invoice 7 of 2 Oct 2026.');
  });
});

// A sixth of each payment is VAT: 60.00 of 360.00, 180.00 of 1,080.00. Of 0.10 with 0.02 in it, paid in three, 0.03, 0.03
// and 0.04, the payments so far hold 0.006, 0.012 and 0.02: 1, 1 and 2 pence, so 1, 0 and 1 in the receipts.
test('receipts of the whole hold the whole tax', () => {
  const all = [deposit, rest];
  const tax = all.map((one) => receiptOf(accepted, one, all, { number: 1, date: one.date }).taxAmount);
  expect(tax).toEqual([6000, 18000]);
  const receipt = receiptOf(accepted, deposit, all, { number: 1, date: '2026-09-29' });
  expect(numberedPaper.parse(receipt)).toEqual(receipt);
  expect(receipt).toMatchObject({
    kind: 'receipt',
    payment: deposit.key,
    lines: [{ words: 'deposit, by bank', count: null, each: null, amount: 36000 }],
    total: 36000,
    paid: 36000,
    words: 'Received on 28 Sep 2026.',
  });
  const tiny = quoteOf(
    supper(1, { price: { by: { aGuest: 10 } } }),
    kitchenAt(2500, vat({ included: true })),
  );
  const three = ['01', '02', '03'].map((day, i) => paid(`2026-10-${day}`, [3, 3, 4][i]!));
  const parts = three.map((one) => receiptOf(tiny, one, three, { number: 1, date: one.date }).taxAmount);
  expect(parts).toEqual([1, 0, 1]);
});
