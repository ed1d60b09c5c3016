import type { Pack } from './facts/ingredient.js';
import type { Kitchen } from './facts/kitchen.js';
import { toMinor } from './money.js';
import { exact } from './quantity/amount.js';
import { Rational } from './quantity/rational.js';
import { baseOf, inUnit, quantity } from './quantity/units.js';
import { latestPrice } from './weighing.js';

export type UnitPrice = { minor: number; unit: string; date: string; guess: boolean };

/**
 * What a kilo or litre (a pound or quart where US units are shown) or one piece of a pack costs at the price that
 * stands, in minor units rounded half up; undefined without a price.
 */
export const unitPrice = (pack: Pack, kitchen: Pick<Kitchen, 'units' | 'cup'>): UnitPrice | undefined => {
  const price = latestPrice(pack);
  const size = exact(pack.size.amount);
  if (!price || size.isZero) return undefined;
  const unit = unitFor(pack.size.unit, kitchen.units);
  const held = inUnit(quantity(size, pack.size.unit, kitchen.cup).value, unit, kitchen.cup);
  const { date, guess } = price;
  return { minor: toMinor(Rational.of(price.price).over(held)), unit, date, guess };
};

/** What an amount is priced by: the kilo or litre, the pound or quart where US units are shown, or its own count. */
export const unitFor = (unit: string, units: Kitchen['units']): string => {
  const base = baseOf(unit);
  if (base === 'g') return units === 'us' ? 'lb' : 'kg';
  if (base === 'ml') return units === 'us' ? 'quart' : 'l';
  return base;
};
