import { makes } from '../batch.js';
import type { Facts } from '../facts/facts.js';
import type { Recipe } from '../facts/recipe.js';
import { exact } from '../quantity/amount.js';
import type { Rational } from '../quantity/rational.js';
import { inUnit } from '../quantity/units.js';
import { unitFor } from '../unit-price.js';
import { nearest } from './near.js';

/** What the cost of a recipe is said by, and how many of it one batch makes. */
export type Priced = { unit: string; made: Rational; near: number };

/**
 * The portion where one batch is counted in portions, else the kilo or litre (pound or quart where US units are
 * shown); undefined where none of them is known.
 */
export const pricedBy = (recipe: Recipe, facts: Facts): Priced | undefined => {
  const { portions } = recipe.yield;
  if (portions !== null) return priced('portion', exact(portions));
  const { g, ml } = makes(recipe, facts);
  if (g) return measured('g', g, facts);
  return ml && measured('ml', ml, facts);
};

const measured = (base: 'g' | 'ml', made: Rational, { kitchen }: Facts): Priced | undefined => {
  const unit = unitFor(base, kitchen.units);
  return priced(unit, inUnit(made, unit, kitchen.cup));
};

const priced = (unit: string, made: Rational): Priced | undefined =>
  made.isZero ? undefined : { unit, made, near: nearest(made) };
