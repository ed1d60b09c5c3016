import Fraction from 'fraction.js';

/** Grams in a unit of weight. NIST Handbook 44, Appendix C, for the pound and ounce. */
export const perGram: Record<string, string> = { g: '1', kg: '1000', oz: '28.349523125', lb: '453.59237' };

const fixed: Record<string, string> = { ml: '1', l: '1000' };

/** Millilitres in each system's measures; the imperial cup is half a pint of 568.26125 ml. */
const imperial = { 'fl-oz': '28.4130625', pint: '568.26125', quart: '1136.5225' };
const american = { 'fl-oz': '29.5735295625', pint: '473.176473', quart: '946.352946' };
const cups: Record<string, Record<string, string>> = {
  metric: { ...imperial, cup: '250', tbsp: '15', tsp: '5' },
  us: { ...american, cup: '236.5882365', tbsp: '14.78676478125', tsp: '4.92892159375' },
  'us-label': { ...american, 'fl-oz': '30', cup: '240', tbsp: '15', tsp: '5' },
  imperial: { ...imperial, cup: '284.130625', tbsp: '15', tsp: '5' },
  australian: { ...imperial, cup: '250', tbsp: '20', tsp: '5' },
};

/** Millilitres in a unit of volume; nothing for a unit that is none. */
export const millilitres = (unit: string, cup: string): Fraction | undefined => {
  const ml = fixed[unit] ?? cups[cup]![unit];
  return ml === undefined ? undefined : new Fraction(ml);
};
