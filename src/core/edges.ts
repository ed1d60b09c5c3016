import type { AllergenList } from './allergens.js';
import { Rational } from './quantity/rational.js';

/** Where sulphites are at so many mg a kilo or litre, which of their substances is contained; none below 10. */
export const sulphitesAt = (mg: Rational): 'sulphites-above-10' | 'sulphites-at-10' | undefined => {
  const side = mg.compare(Rational.of(10));
  return side > 0 ? 'sulphites-above-10' : side === 0 ? 'sulphites-at-10' : undefined;
};

/** Whether a list's law lets food with so many mg of gluten a kilo be called gluten-free; it is no word on its cereals. */
export const mayBeCalledGlutenFree = (mg: Rational, { edges }: AllergenList): boolean => {
  const side = mg.compare(Rational.parse(edges.glutenFree.mg));
  return edges.glutenFree.at ? side <= 0 : side < 0;
};

/** Whether a list's law has sulphites declared at so many mg a kilo or litre. */
export const sulphitesCount = (mg: Rational, { edges }: AllergenList): boolean => {
  if (!edges.sulphites) return false;
  const side = mg.compare(Rational.parse(edges.sulphites.mg));
  return edges.sulphites.at ? side >= 0 : side > 0;
};
