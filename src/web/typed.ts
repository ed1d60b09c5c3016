import type { Measure } from '../core/facts/common.js';
import { exact } from '../core/quantity/amount.js';
import { Rational } from '../core/quantity/rational.js';
import { inWords } from '../core/quantity/show.js';

/** A whole number as a field holds it; nothing for null. */
export const typedNumber = (value: number | null): string => (value === null ? '' : String(value));

/** An amount as a cook writes it: 3/2 is "1 1/2". */
export const typedAmount = (amount: string | null): string => {
  const [, n, d] = /^(\d+)\/(\d+)$/.exec(amount ?? '') ?? [];
  if (!n || !d || Number(n) < Number(d)) return amount ?? '';
  return `${Math.floor(Number(n) / Number(d))} ${Number(n) % Number(d)}/${d}`;
};

/** An amount or the range that it begins, as a cook writes it: "2–3". */
export const typedRange = (amount: string | null, amountTo: string | null): string =>
  [amount, amountTo]
    .filter((end) => end !== null)
    .map(typedAmount)
    .join('–');

/** A unit as a field holds it: litres with a capital, for a small l reads as 1; per cent as its sign. */
export const typedUnit = (unit: string): string => ({ l: 'L', percent: '%' })[unit] ?? unit;

/** A measure as a field holds it: "2.5 kg". */
export const typedMeasure = (measure: Measure | null): string =>
  measure ? `${typedAmount(measure.amount)} ${typedUnit(measure.unit)}` : '';

/** A measure as it was entered, in words: "2.5 kg", "12 pieces", "5 tins". */
export const measureInWords = ({ amount, unit }: Measure): string =>
  inWords({ figure: typedAmount(amount), unit: typedUnit(unit) }, amount === '1' ? 'piece' : 'pieces');

/** A share as a per cent: "0.885" is "88.5". */
export const typedPercent = (share: string): string =>
  typedAmount(exact(share).times(Rational.of(100)).toString());

/** An edible yield as a field holds it: "88 %", and above all of it the factor, "3.05". */
export const typedYield = (factor: string): string =>
  exact(factor).compare(Rational.one) > 0 ? typedAmount(factor) : `${typedPercent(factor)} %`;
