import type { Tax } from '../facts/price.js';
import { allocate } from '../money.js';
import { exact } from '../quantity/amount.js';
import { Rational, sum } from '../quantity/rational.js';

/** What a paper comes to, in minor units: without tax, the tax, and with it. */
export type Taxed = { net: number; tax: number; total: number };

/**
 * The tax in or on the lines of a paper, amounts as prices are named, less a discount that is spread over them in
 * proportion; whole minor units by the rounding the tax states, the net and the tax adding up to the total.
 */
export const taxOf = (lines: readonly number[], tax: Tax | null, discount = 0): Taxed => {
  const named = lines.reduce((a, b) => a + b, 0) - discount;
  if (!tax) return { net: named, tax: 0, total: named };
  const due = dueOn(less(lines, discount), tax);
  return tax.included
    ? { net: named - due, tax: due, total: named }
    : { net: named, tax: due, total: named + due };
};

/** What is left of each line; none goes below 0, so that no line's tax does. */
const less = (lines: readonly number[], discount: number): number[] => {
  const off = allocate(
    discount,
    lines.map((line) => Rational.of(line)),
  );
  return lines.map((line, i) => line - off[i]!);
};

const ten = Rational.of(10);

/**
 * HMRC, VAT Notice 700, paragraph 17.5, as VATREC12010 reads it: the tax payable on an invoice may go down to a whole
 * penny; that of a line to the nearest penny, or down to a tenth of one. Tenths are summed, and the sum goes down.
 */
const dueOn = (lines: readonly number[], tax: Tax): number => {
  const share = shareOf(tax);
  const each = lines.map((line) => Rational.of(line).times(share));
  if (tax.rounding === 'whole-down') return Number(sum(each).floor());
  if (tax.rounding === 'whole-nearest') return Number(sum(each).round());
  if (tax.rounding === 'line-nearest') return each.reduce((due, one) => due + Number(one.round()), 0);
  const tenths = each.reduce((due, one) => due + one.times(ten).floor(), 0n);
  return Number(tenths / 10n);
};

/** What part of a sum as named is tax: of 120 with 20 per cent in it a sixth. */
const shareOf = ({ rate, included }: Tax): Rational => {
  const percent = exact(rate);
  const hundred = Rational.of(100);
  return percent.over(included ? hundred.plus(percent) : hundred);
};
