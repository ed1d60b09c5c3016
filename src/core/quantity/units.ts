import type { Cup } from '../facts/kitchen.js';
import { Rational } from './rational.js';

/** What an amount is counted in once its unit is resolved: grams, millilitres, or a count such as "clove". */
export type Base = 'g' | 'ml' | (string & {});

/** An exact amount in a base: 700 in g, 3 in clove. */
export type Quantity = { value: Rational; base: Base };

const sizes = (table: Record<string, string>): ReadonlyMap<string, Rational> =>
  new Map(Object.entries(table).map(([unit, size]) => [unit, Rational.parse(size)]));

/** NIST SP 811 appendix B and Handbook 44 appendix C: the avoirdupois pound is 453.59237 g exactly. */
const mass = sizes({ mg: '0.001', g: '1', kg: '1000', oz: '28.349523125', lb: '453.59237' });

const metricVolume = { ml: '1', cl: '10', dl: '100', l: '1000' };

/** NIST Handbook 44 appendix C: the US gallon is 231 cubic inches, 3785.411784 ml exactly. */
const usMeasures = {
  'fl-oz': '29.5735295625',
  pint: '473.176473',
  quart: '946.352946',
  gallon: '3785.411784',
};

/** UK Weights and Measures Act 1985, schedule 1: the gallon is 4546.09 ml exactly. */
const imperialMeasures = { 'fl-oz': '28.4130625', pint: '568.26125', quart: '1136.5225', gallon: '4546.09' };

const metricSpoons = { tsp: '5', tbsp: '15' };
const usSpoons = { tsp: '4.92892159375', tbsp: '14.78676478125' };

/** Each system's cup and spoons; a recipe or the kitchen says which it means. */
const volumes: Record<Cup, ReadonlyMap<string, Rational>> = {
  metric: sizes({ ...metricVolume, ...imperialMeasures, ...metricSpoons, cup: '250' }),
  us: sizes({ ...metricVolume, ...usMeasures, ...usSpoons, cup: '236.5882365' }),
  // 21 CFR 101.9(b)(5)(viii), the round figures of US food labels.
  'us-label': sizes({ ...metricVolume, ...usMeasures, ...metricSpoons, 'fl-oz': '30', cup: '240' }),
  imperial: sizes({ ...metricVolume, ...imperialMeasures, ...metricSpoons, cup: '284.130625' }),
  // NSW Health cookery conversion chart: the Australian tablespoon is 20 ml.
  australian: sizes({ ...metricVolume, ...imperialMeasures, tsp: '5', tbsp: '20', cup: '250' }),
};

const dozen = Rational.of(12);

/** Grams or millilitres in one of a unit under a cup system; undefined for counts. */
const sizeOf = (unit: string, cup: Cup): { base: Base; size: Rational } | undefined => {
  const grams = mass.get(unit);
  if (grams) return { base: 'g', size: grams };
  const ml = volumes[cup].get(unit);
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

const spellings: ReadonlyMap<string, string> = new Map(
  Object.entries({
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
    '%': 'percent',
    'per cent': 'percent',
    pct: 'percent',
  }),
);

/** The unit a cook's word means ("Tablespoons" is tbsp, nothing is each), or undefined when it can't be one. */
export const readUnit = (text: string): string | undefined => {
  const word = text.trim().toLowerCase().replace(/\.$/, '').replace(/\s+/g, ' ');
  const spelt = spellings.get(word);
  if (spelt) return spelt;
  const all: readonly string[] = [...measuredUnits, ...countUnits];
  if (all.includes(word)) return word;
  if (word.endsWith('s') && all.includes(word.slice(0, -1))) return word.slice(0, -1);
  const slug = word.replace(/ /g, '-');
  return /^[a-z][a-z-]{0,19}$/.test(slug) ? slug : undefined;
};
