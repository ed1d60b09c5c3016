import { describe, expect, test } from 'vitest';
import { accountOf, duesIfPostponed, duesOf } from '../../../src/core/quoting/dues.js';
import { offerComes } from '../../../src/core/quoting/offer-comes.js';
import { owedIfCancelled, owedIfOthers } from '../../../src/core/quoting/owed.js';
import { kitchenAt, paid, quoteOf, supper } from './quoted.js';

const { offer } = quoteOf(supper(), kitchenAt(2500));
const option = offer.options[0]!;
const { total } = offerComes(option, offer);

// 1,196.00, accepted on 28 September: a quarter is 299.00, and 897.00 are due on 26 November. Accepted on the 27th of
// November, both are due that day. Of 1,196.01 a quarter is 299.0025: the penny goes to the balance.
test('deposit and balance, by their days', () => {
  expect(total).toBe(119600);
  expect(duesOf(offer, total, '2026-09-28')).toEqual([
    { words: 'deposit, one quarter', amount: 29900, date: '2026-09-28' },
    { words: 'balance', amount: 89700, date: '2026-11-26' },
  ]);
  expect(duesOf(offer, total, null)[0]!.date).toBeNull();
  expect(duesOf(offer, total, '2026-11-27').map(({ date }) => date)).toEqual(['2026-11-27', '2026-11-27']);
  expect(duesOf(offer, 119601, null).map(({ amount }) => amount)).toEqual([29900, 89701]);
});

// Three parts of 100/3 per cent of 10.00 are 3.34, 3.33 and 3.33; 60 and 60 per cent are 6.00 and the 4.00 left; what no
// line asks for is due on the day.
test('parts add up to the total, whatever they ask for', () => {
  const dues = (...percents: (string | null)[]) =>
    duesOf(
      { ...offer, dues: percents.map((percent, i) => ({ words: `part ${i}`, percent, date: null })) },
      1000,
      '2026-09-28',
    ).map(({ amount, date }) => [amount, date]);
  const then = '2026-09-28';
  expect(dues('100/3', '100/3', null)).toEqual([334, 333, 333].map((amount) => [amount, then]));
  expect(dues('60', '60', null)).toEqual([
    [600, then],
    [400, then],
  ]);
  expect(dues('25')).toEqual([
    [250, then],
    [750, '2026-11-28'],
  ]);
  expect(dues()).toEqual([[1000, '2026-11-28']]);
});

// Of 299.00 and 897.00: 200.00 came on the 28th, 100.00 on the 30th, of which 50.00 went back: 49.00 of the deposit open.
describe('what is paid and what is owed', () => {
  const dues = duesOf(offer, total, '2026-09-28');
  const came = [
    paid('2026-09-28', 20000),
    paid('2026-09-30', 10000),
    paid('2026-10-01', 5000, { back: true }),
  ];

  test('payments count for the dues in order', () => {
    const { paid: sum, owed, dues: open } = accountOf(total, dues, came, '2026-10-02');
    expect([sum, owed]).toEqual([25000, 94600]);
    expect(open.map((due) => [due.open, due.late])).toEqual([
      [4900, true],
      [89700, false],
    ]);
  });

  test('on its day it is not late; too much paid is owed back; what was struck out counts for nothing', () => {
    expect(accountOf(total, dues, [], '2026-09-28').dues[0]!.late).toBe(false);
    expect(accountOf(total, dues, [paid('2026-09-28', 120000)], '2026-12-01')).toMatchObject({
      owed: -400,
      dues: [{ open: 0, late: false }, { open: 0 }],
    });
    expect(
      accountOf(total, dues, [paid('2026-09-28', 500, { struck: '2026-09-29' })], '2026-10-02').paid,
    ).toBe(0);
  });
});

// From 28 days before a quarter is owed, from 14 a half, from 3 all; the party is on 28 November.
test('called off: what the terms say is owed that day', () => {
  const owed = (day: string) => {
    const { daysBefore, step, owed, next } = owedIfCancelled(offer, total, day);
    return [daysBefore, step?.percent, owed, next?.from];
  };
  expect(owed('2026-10-30')).toEqual([29, undefined, 0, '2026-10-31']);
  expect(owed('2026-10-31')).toEqual([28, '25', 29900, '2026-11-14']);
  expect(owed('2026-11-13')).toEqual([15, '25', 29900, '2026-11-14']);
  expect(owed('2026-11-14')).toEqual([14, '50', 59800, '2026-11-25']);
  expect(owed('2026-11-29')).toEqual([-1, '100', 119600, undefined]);
  const silent = { ...offer, terms: { ...offer.terms, cancellation: [] } };
  expect(owedIfCancelled(silent, total, '2026-11-27').owed).toBeUndefined();
});

// 5 per cent of 46 is 2.3, so 44 is the fewest at 26.00: 1,144.00.
test('other guests than offered for', () => {
  const told = (guests: number, day = '2026-11-20', of = offer, by = option) =>
    owedIfOthers(of, by, guests, day);
  expect(told(44)).toEqual({ why: 'same-price', owed: 114400, least: 44 });
  expect(told(43)).toEqual({ why: 'new-quote', owed: undefined, least: 44 });
  expect(told(50)).toMatchObject({ why: 'new-quote', owed: undefined });
  expect(told(44, '2026-11-25').why).toBe('same-price');
  expect(told(40, '2026-11-26')).toMatchObject({ why: 'final', owed: 119600 });
  const silent = { ...offer, terms: { ...offer.terms, fewerPercent: null } };
  expect(told(45, '2026-11-20', silent)).toMatchObject({ why: 'not-said', owed: undefined });
  const tiers = { ...option, tiers: [{ from: 40, each: 2650 }] };
  expect(told(41, '2026-11-20', offer, tiers)).toMatchObject({ why: 'tier', owed: 41 * 2650 });
});

test('put off by a week, what has a day moves a week, and the deposit stays due on acceptance', () => {
  const dates = duesIfPostponed(offer, total, '2026-09-28', '2026-12-05').map(({ date, amount }) => [
    date,
    amount,
  ]);
  expect(dates).toEqual([
    ['2026-09-28', 29900],
    ['2026-12-03', 89700],
  ]);
});
