import type { Cup, Kitchen } from '../facts/kitchen.js';
import { Rational } from './rational.js';
import { inUnit, isMeasured, type Quantity, quantity } from './units.js';

/** A figure as a kitchen can weigh or measure it: "2.15" kg, "1" and "1/2" tsp. For reading, never for reckoning. */
export type Shown = { figure: string; fraction?: string; unit: string };

/** recipe: kilos and litres to two places; prep: to one. */
export type Rounding = 'recipe' | 'prep';

const r = Rational.of;

const toStep = (value: Rational, step: Rational): Rational => r(value.over(step).round()).times(step);

const plain = (value: Rational): string => value.toString();

/** 100 and more to tens, 10 to 99 to ones, less to halves; what would come out as nothing keeps two figures. */
const small = (value: Rational): string => {
  if (value.compare(r(100)) >= 0) return plain(toStep(value, r(10)));
  if (value.compare(r(10)) >= 0) return plain(toStep(value, r(1)));
  const half = toStep(value, r(1, 2));
  if (!half.isZero || value.isZero) return plain(half);
  return value.compare(r(1, 100)) < 0 ? 'under 0.01' : value.toFixed(2).replace(/0$/, '');
};

const thousand = r(1000);
// From here on rounding to tens makes a whole kilo of it.
const nearlyThousand = r(995);

const metric = (value: Rational, less: string, more: string, rounding: Rounding): Shown => {
  if (value.compare(nearlyThousand) < 0) return { figure: small(value), unit: less };
  return { figure: value.over(thousand).toFixed(rounding === 'prep' ? 1 : 2), unit: more };
};

const ounce = Rational.parse('28.349523125');

const usWeight = (grams: Rational, rounding: Rounding): Shown => {
  const oz = grams.over(ounce);
  if (oz.compare(r(16)) >= 0)
    return { figure: oz.over(r(16)).toFixed(rounding === 'prep' ? 1 : 2), unit: 'lb' };
  return { ...asFraction(oz, quarters), unit: 'oz' };
};

const usVolume = (ml: Rational, cup: Cup): Shown => {
  const of = (unit: string) => inUnit(ml, unit, cup);
  if (of('gallon').compare(r(1)) >= 0) return { ...asFraction(of('gallon'), quarters), unit: 'gallon' };
  if (of('quart').compare(r(2)) >= 0) return { ...asFraction(of('quart'), quarters), unit: 'quart' };
  if (of('cup').compare(r(1, 4)) >= 0) return { ...asFraction(of('cup')), unit: 'cup' };
  return of('tbsp').compare(r(1)) >= 0
    ? { ...asFraction(of('tbsp')), unit: 'tbsp' }
    : { ...asFraction(of('tsp')), unit: 'tsp' };
};

const spoonfuls = [1, 2, 3, 4, 8];
// Scales and jugs have no thirds.
const quarters = [1, 2, 4];

/** The nearest whole, half, third, quarter or eighth; halves only above ten, whole figures above a hundred. */
const asFraction = (value: Rational, parts = spoonfuls): { figure: string; fraction?: string } => {
  const finest = value.compare(r(100)) >= 0 ? 1 : value.compare(r(10)) >= 0 ? 2 : parts.at(-1)!;
  let best = r(value.round());
  for (const d of parts) {
    if (d > finest) break;
    const near = toStep(value, r(1, d));
    if (distance(near, value).compare(distance(best, value)) < 0) best = near;
  }
  if (best.isZero && !value.isZero) return { figure: 'under', fraction: `1/${finest}` };
  const whole = r(best.floor());
  const rest = best.minus(whole);
  if (rest.isZero) return { figure: plain(whole) };
  return { figure: whole.isZero ? '' : plain(whole), fraction: `${rest.n}/${rest.d}` };
};

const distance = (a: Rational, b: Rational): Rational => {
  const d = a.minus(b);
  return d.sign < 0 ? d.negated() : d;
};

/** An amount resolved to its base, in the kitchen's units. Metric: g then kg, ml then L. Counts as fractions. */
export const showQuantity = (
  { value, base }: Quantity,
  kitchen: Kitchen,
  rounding: Rounding = 'recipe',
): Shown => {
  const us = kitchen.units === 'us';
  if (base === 'g') return us ? usWeight(value, rounding) : metric(value, 'g', 'kg', rounding);
  if (base === 'ml') return us ? usVolume(value, usCup(kitchen.cup)) : metric(value, 'ml', 'L', rounding);
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

/** A shown figure as one line of plain text: "2.15 kg", "1 1/2 tsp", "3". */
export const inWords = ({ figure, fraction, unit }: Shown, name?: string): string =>
  [figure, fraction, unit === 'each' ? name : plural(unit, figure, fraction)].filter(Boolean).join(' ');

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
  const one = figure === '1' ? !fraction : figure === '' || figure === 'under';
  const words = unit.replace(/-/g, ' ');
  return one || fixed.includes(unit) ? words : (plurals.get(unit) ?? `${words}s`);
};
