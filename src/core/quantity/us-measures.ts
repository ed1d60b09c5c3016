import type { Cup } from '../facts/kitchen.js';
import { Rational } from './rational.js';
import { asFraction, asMixed, plain, quarters, type Rounding, type Shown, toStep, under } from './shown.js';
import { inUnit, quantity } from './units.js';

const r = Rational.of;

const ounce = Rational.parse('28.349523125');
const ounceParts = [r(1, 4), r(1, 2), r(1)];

/**
 * Grams in pounds and ounces, to a quarter of an ounce or as the scales can show; for prep in pounds to one place.
 * US Armed Forces Recipe Service, TM 10-412 (2003), card A-1: 4.35 lb is 4 lb 5 1/2 oz.
 */
export const usWeight = (grams: Rational, finest: Rational, rounding: Rounding): Shown => {
  const step =
    ounceParts.find((part) => part.times(ounce).compare(finest) >= 0) ?? r(finest.over(ounce).ceil());
  const oz = toStep(grams.over(ounce), step);
  if (oz.compare(r(16)) >= 0 && rounding === 'prep')
    return { figure: grams.over(ounce).over(r(16)).toFixed(1), unit: 'lb' };
  if (oz.isZero && !grams.isZero) return { ...under(step), unit: 'oz' };
  const pounds = r(oz.over(r(16)).floor());
  const rest = { ...asMixed(oz.minus(pounds.times(r(16)))), unit: 'oz' };
  return pounds.isZero ? rest : mixed([{ figure: plain(pounds), unit: 'lb' }, rest]);
};

/** Whether so little is meant that a quarter of an ounce is a twentieth off or more, and the scales show grams: 10 g of yeast. */
export const slipsInOunces = (grams: Rational, finest: Rational): boolean => {
  if (grams.compare(ounce) >= 0 || finest.compare(r(1)) > 0 || grams.compare(finest) < 0) return false;
  const slip = toStep(grams, ounce.times(r(1, 4))).minus(grams);
  return slip.times(slip).times(r(400)).compare(grams.times(grams)) >= 0;
};

/** The first part that is there, with the others that are behind it. */
const mixed = (parts: Shown[]): Shown => {
  const [first, ...and] = parts.filter(({ figure, fraction }) => fraction || figure !== '0');
  return and.length > 0 ? { ...first!, and } : first!;
};

const measures = ['gallon', 'quart', 'pint', 'cup', 'tbsp'];

/** To a quarter of a teaspoon; TM 10-412, card A-1(3): 19.98 gal is 19 gal, 3 qt, 1 pt, 1 cup, 10 tbsp, 2 3/4 tsp. */
const mixedVolume = (ml: Rational): Shown => {
  const teaspoon = quantity(r(1), 'tsp', 'us').value;
  let left = toStep(ml.over(teaspoon), r(1, 4)).times(teaspoon);
  const parts = measures.map((unit) => {
    const whole = r(inUnit(left, unit, 'us').floor());
    left = left.minus(quantity(whole, unit, 'us').value);
    return { figure: plain(whole), unit };
  });
  return mixed([...parts, { ...asMixed(inUnit(left, 'tsp', 'us')), unit: 'tsp' }]);
};

/** Millilitres in US measures: from a quart measured out from the largest down, less in cups or spoons. */
export const usVolume = (ml: Rational, cup: Cup, rounding: Rounding): Shown => {
  if (cup === 'us' && rounding !== 'prep' && inUnit(ml, 'quart', cup).compare(r(1)) >= 0)
    return mixedVolume(ml);
  const of = (unit: string) => inUnit(ml, unit, cup);
  if (of('gallon').compare(r(1)) >= 0) return { ...asFraction(of('gallon'), quarters), unit: 'gallon' };
  if (of('quart').compare(r(2)) >= 0) return { ...asFraction(of('quart'), quarters), unit: 'quart' };
  if (of('cup').compare(r(1, 4)) >= 0) return { ...asFraction(of('cup')), unit: 'cup' };
  return of('tbsp').compare(r(1)) >= 0
    ? { ...asFraction(of('tbsp')), unit: 'tbsp' }
    : { ...asFraction(of('tsp')), unit: 'tsp' };
};
