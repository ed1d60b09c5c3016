import type { Cup } from '../facts/kitchen.js';
import { Rational } from './rational.js';

/** What an amount is counted in once its unit is resolved: grams, millilitres, or a count such as "clove". */
export type Base = 'g' | 'ml' | (string & {});

/** An exact amount in a base: 700 in g, 3 in clove. */
export type Quantity = { value: Rational; base: Base };

const r = Rational.parse;

/** NIST SP 811 appendix B and Handbook 44 appendix C: the avoirdupois pound is 453.59237 g exactly. */
const mass: Record<string, Rational> = {
  mg: r('0.001'),
  g: r('1'),
  kg: r('1000'),
  oz: r('28.349523125'),
  lb: r('453.59237'),
};

const metricVolume: Record<string, Rational> = { ml: r('1'), cl: r('10'), dl: r('100'), l: r('1000') };

/** NIST Handbook 44 appendix C: the US gallon is 231 cubic inches, 3785.411784 ml exactly. */
const usMeasures = {
  'fl-oz': r('29.5735295625'),
  pint: r('473.176473'),
  quart: r('946.352946'),
  gallon: r('3785.411784'),
};

/** UK Weights and Measures Act 1985, schedule 1: the gallon is 4546.09 ml exactly. */
const imperialMeasures = {
  'fl-oz': r('28.4130625'),
  pint: r('568.26125'),
  quart: r('1136.5225'),
  gallon: r('4546.09'),
};

const metricSpoons = { tsp: r('5'), tbsp: r('15') };

/** Each system's cup and spoons; a recipe or the kitchen says which it means. */
const volumes: Record<Cup, Record<string, Rational>> = {
  metric: { ...metricVolume, ...imperialMeasures, ...metricSpoons, cup: r('250') },
  us: {
    ...metricVolume,
    ...usMeasures,
    tsp: r('4.92892159375'),
    tbsp: r('14.78676478125'),
    cup: r('236.5882365'),
  },
  // 21 CFR 101.9(b)(5)(viii), the round figures of US food labels.
  'us-label': { ...metricVolume, ...usMeasures, ...metricSpoons, 'fl-oz': r('30'), cup: r('240') },
  imperial: { ...metricVolume, ...imperialMeasures, ...metricSpoons, cup: r('284.130625') },
  // NSW Health cookery conversion chart: the Australian tablespoon is 20 ml.
  australian: { ...metricVolume, ...imperialMeasures, tsp: r('5'), tbsp: r('20'), cup: r('250') },
};

const dozen = Rational.of(12);

/** Grams or millilitres in one of a unit under a cup system; undefined for counts. */
const sizeOf = (unit: string, cup: Cup): { base: Base; size: Rational } | undefined => {
  const grams = mass[unit];
  if (grams) return { base: 'g', size: grams };
  const ml = volumes[cup][unit];
  return ml && { base: 'ml', size: ml };
};

/** An amount in its entered unit, resolved to grams, millilitres or a count; exact. A dozen is twelve each. */
export const quantity = (value: Rational, unit: string, cup: Cup): Quantity => {
  const known = sizeOf(unit, cup);
  if (known) return { value: value.times(known.size), base: known.base };
  return unit === 'dozen' ? { value: value.times(dozen), base: 'each' } : { value, base: unit };
};

/** How many of `unit` a value in its base makes under a cup system; exact. */
export const inUnit = (value: Rational, unit: string, cup: Cup): Rational => {
  const known = sizeOf(unit, cup);
  if (known) return value.over(known.size);
  return unit === 'dozen' ? value.over(dozen) : value;
};

/** The base a unit resolves to, whatever the amount. */
export const baseOf = (unit: string): Base =>
  sizeOf(unit, 'metric')?.base ?? (unit === 'dozen' ? 'each' : unit);

/** True for units of weight or volume; anything else is a count of pieces. */
export const isMeasured = (unit: string): boolean => sizeOf(unit, 'metric') !== undefined;

/** True for the units whose size the cup system decides. */
export const needsCup = (unit: string): boolean =>
  ['tsp', 'tbsp', 'cup', 'fl-oz', 'pint', 'quart', 'gallon'].includes(unit);

export const countUnits = [
  'each',
  'dozen',
  'portion',
  'batch',
  'clove',
  'bunch',
  'head',
  'leaf',
  'sprig',
  'stalk',
  'slice',
  'sheet',
  'tin',
  'jar',
  'bottle',
  'packet',
  'bag',
  'tub',
  'block',
  'loaf',
  'fillet',
  'side',
  'rasher',
  'pinch',
] as const;

export const measuredUnits = [
  'g',
  'kg',
  'ml',
  'cl',
  'dl',
  'l',
  'tsp',
  'tbsp',
  'cup',
  'oz',
  'lb',
  'fl-oz',
  'pint',
  'quart',
  'gallon',
] as const;

const spellings: Record<string, string> = {
  gram: 'g',
  grams: 'g',
  gramme: 'g',
  grammes: 'g',
  gr: 'g',
  kilo: 'kg',
  kilos: 'kg',
  kilogram: 'kg',
  kilograms: 'kg',
  kgs: 'kg',
  ounce: 'oz',
  ounces: 'oz',
  pound: 'lb',
  pounds: 'lb',
  lbs: 'lb',
  millilitre: 'ml',
  millilitres: 'ml',
  milliliter: 'ml',
  milliliters: 'ml',
  mls: 'ml',
  centilitre: 'cl',
  centilitres: 'cl',
  decilitre: 'dl',
  decilitres: 'dl',
  litre: 'l',
  litres: 'l',
  liter: 'l',
  liters: 'l',
  ltr: 'l',
  teaspoon: 'tsp',
  teaspoons: 'tsp',
  tsps: 'tsp',
  tablespoon: 'tbsp',
  tablespoons: 'tbsp',
  tbsps: 'tbsp',
  tbs: 'tbsp',
  cups: 'cup',
  'fl oz': 'fl-oz',
  floz: 'fl-oz',
  'fluid ounce': 'fl-oz',
  'fluid ounces': 'fl-oz',
  pt: 'pint',
  pints: 'pint',
  qt: 'quart',
  quarts: 'quart',
  gal: 'gallon',
  gallons: 'gallon',
  '': 'each',
  piece: 'each',
  pieces: 'each',
  whole: 'each',
  can: 'tin',
  cans: 'tin',
  leaves: 'leaf',
  loaves: 'loaf',
  bunches: 'bunch',
  pinches: 'pinch',
  batches: 'batch',
  dozens: 'dozen',
};

/** The unit a cook's word means ("Tablespoons" is tbsp, nothing is each), or undefined when it can't be one. */
export const readUnit = (text: string): string | undefined => {
  const word = text.trim().toLowerCase().replace(/\.$/, '').replace(/\s+/g, ' ');
  const spelt = spellings[word];
  if (spelt) return spelt;
  const all: readonly string[] = [...measuredUnits, ...countUnits];
  if (all.includes(word)) return word;
  if (word.endsWith('s') && all.includes(word.slice(0, -1))) return word.slice(0, -1);
  const slug = word.replace(/ /g, '-');
  return /^[a-z][a-z-]{0,19}$/.test(slug) ? slug : undefined;
};
