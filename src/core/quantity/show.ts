import type { Cup, Kitchen } from '../facts/kitchen.js';
import { exact } from './amount.js';
import { Rational } from './rational.js';
import { asFraction, coarser, inOneUnit, plain, type Rounding, type Shown, toStep } from './shown.js';
import { inUnit, isMeasured, type Quantity, quantity } from './units.js';
import { slipsInOunces, usVolume, usWeight } from './us-measures.js';

export type { Rounding, Shown } from './shown.js';

const r = Rational.of;
const half = r(1, 2);

const ten = r(10);
const thousand = r(1000);

/**
 * 100 and more to tens, 10 to 99 to ones, less to halves, or finer where the scales are; from 1000 in kilos or litres, to hundredths, for prep to
 * tenths. Never finer than `finest`: what that leaves nothing of is said to be under it. What a recipe states and the
 * scales show stays as it is: 125 g of butter are no 130 g.
 */
const metric = (value: Rational, finest: Rational, less: string, more: string, rounding: Rounding): Shown => {
  if (rounding === 'stated' && !value.isZero && value.over(finest).isWhole && !value.over(ten).isWhole)
    return value.compare(thousand) < 0
      ? { figure: plain(value), unit: less }
      : { figure: plain(value.over(thousand)), unit: more };
  const usual = value.compare(r(100)) >= 0 ? r(10) : value.compare(r(10)) >= 0 ? r(1) : least(finest);
  const near = toStep(value, coarser(usual, finest));
  if (near.compare(thousand) >= 0) {
    const wanted = rounding === 'prep' ? r(100) : r(10);
    const step = coarser(wanted, finest);
    const kilos = toStep(value, step).over(thousand);
    // A scale of 25 g shows 2.125 kg, and 2.13 would be finer than it is.
    const places = rounding === 'prep' ? 1 : 2;
    return { figure: step.over(wanted).isWhole ? kilos.toFixed(places) : plain(kilos), unit: more };
  }
  if (near.isZero && !value.isZero) return { figure: `under ${plain(finest)}`, unit: less };
  return { figure: plain(near), unit: less };
};

const least = (finest: Rational): Rational => (finest.compare(half) < 0 ? finest : half);

// Jugs have no scale to read: half a millilitre is as fine as a pipette of the kitchen goes.
const jug = half;

/**
 * An amount resolved to its base, in the kitchen's units and no finer than its scales. Metric: g then kg, ml then L; US:
 * pounds and ounces to a quarter, little of which that is too coarse in grams, gallons down to quarter teaspoons. Counts
 * as fractions.
 */
export const showQuantity = (
  { value, base }: Quantity,
  kitchen: Kitchen,
  rounding: Rounding = 'recipe',
): Shown => {
  const us = kitchen.units === 'us';
  const finest = exact(kitchen.scaleStep);
  if (base === 'g')
    return us && !slipsInOunces(value, finest)
      ? usWeight(value, finest, rounding)
      : metric(value, finest, 'g', 'kg', rounding);
  if (base === 'ml')
    return us ? usVolume(value, usCup(kitchen.cup), rounding) : metric(value, jug, 'ml', 'L', rounding);
  return { ...asFraction(value), unit: base };
};

// A kitchen that shows US measures but keeps a metric cup still wants gallons that are US gallons.
const usCup = (cup: Cup): Cup => (cup === 'us-label' ? 'us-label' : 'us');

const spoons = ['tsp', 'tbsp', 'cup'];

/** A line's amount as entered or scaled: spoons and cups stay spoons and cups while they are few. */
export const showAmount = (
  value: Rational,
  unit: string,
  cup: Cup,
  kitchen: Kitchen,
  rounding: Rounding = 'recipe',
): Shown => {
  const resolved = quantity(value, unit, cup);
  if (!spoons.includes(unit)) return showQuantity(resolved, kitchen, rounding);
  const tbsp = inUnit(resolved.value, 'tbsp', cup);
  if (unit === 'tsp' && tbsp.compare(r(1)) < 0) return { ...asFraction(value), unit };
  if (unit !== 'cup' && tbsp.compare(r(8)) < 0) return { ...asFraction(tbsp), unit: 'tbsp' };
  if (unit === 'cup' && value.compare(r(4)) <= 0) return { ...asFraction(value), unit };
  return showQuantity(resolved, kitchen, rounding);
};

/** The same of a range, its lower end first; one figure where both ends read alike. */
export const showEnds = (
  least: Rational | undefined,
  amount: Rational,
  unit: string,
  cup: Cup,
  kitchen: Kitchen,
  rounding: Rounding = 'recipe',
): Shown => {
  const to = showAmount(amount, unit, cup, kitchen, rounding);
  const from = least && showAmount(least, unit, cup, kitchen, rounding);
  return from && inWords(from) !== inWords(to) ? { ...to, from } : to;
};

/** A count of which not even an eighth of one is wanted is said by its weight in grams, where scales can show that. */
export const orByWeight = (
  shown: Shown,
  grams: Rational | undefined,
  kitchen: Kitchen,
  rounding: Rounding = 'recipe',
): Shown => {
  if (shown.figure !== 'under' || isMeasured(shown.unit) || !grams) return shown;
  const weight = showQuantity({ value: grams, base: 'g' }, kitchen, rounding);
  return weight.figure.startsWith('under') ? shown : weight;
};

/** Degrees as the kitchen reads them: Celsius as entered, Fahrenheit to the nearest 5. */
export const showHeat = (celsius: number, kitchen: Pick<Kitchen, 'heat'>): string => {
  if (kitchen.heat === 'C') return `${celsius} °C`;
  return `${plain(toStep(r(celsius).times(r(9, 5)).plus(r(32)), r(5)))} °F`;
};

/** A shown figure as one line of plain text: "2.15 kg", "1 1/2 tsp", "3", "2–3 cloves". */
export const inWords = ({ from, ...shown }: Shown, name?: string): string => {
  const { figure, fraction, unit, and = [] } = shown;
  if (from && inOneUnit(from, shown))
    return `${[from.figure, from.fraction].filter(Boolean).join(' ')}–${inWords(shown, name)}`;
  const said = [
    [figure, fraction, unit === 'each' ? name : plural(unit, figure, fraction)].filter(Boolean).join(' '),
    ...and.map((part) => inWords(part)),
  ].join(', ');
  return from ? `${inWords(from, name)} to ${said}` : said;
};

const plurals = new Map<string, string>(
  Object.entries({
    leaf: 'leaves',
    loaf: 'loaves',
    bunch: 'bunches',
    pinch: 'pinches',
    batch: 'batches',
  }),
);
const fixed = ['g', 'kg', 'ml', 'L', 'tsp', 'tbsp', 'oz', 'lb', 'fl-oz'];

/** A unit as it is said with its figure: 3 cloves, 1/2 bunch, 2 kg. */
export const plural = (unit: string, figure: string, fraction?: string): string => {
  if (unit === 'percent') return '%';
  const one = figure === '1' ? !fraction : figure === '' || figure === 'under';
  const words = unit.replace(/-/g, ' ');
  return one || fixed.includes(unit) ? words : (plurals.get(unit) ?? `${words}s`);
};
