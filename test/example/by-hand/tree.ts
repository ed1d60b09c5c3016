import Fraction from 'fraction.js';
import type { Dish, Event } from '../../../src/core/facts/event.js';
import type { Workbook } from '../../../src/core/facts/facts.js';
import type { Recipe } from '../../../src/core/facts/recipe.js';
import { millilitres, perGram } from './units.js';

const zero = new Fraction(0);
export const total = (parts: Fraction[]) => parts.reduce((all, part) => all.add(part), zero);

/** Portions of a dish: guests of each group who eat it, times their portion, times the over-catering. */
export const portionsOf = (dish: Dish, event: Event, byPiece: boolean): Fraction => {
  const { eaters } = dish;
  const heads = event.groups.map((group) => {
    if ('everybody' in eaters) return new Fraction(group.guests).mul(group.portion);
    if ('shares' in eaters) {
      const share = eaters.shares.find((one) => one.group === group.key)?.percent ?? '0';
      return new Fraction(group.guests).mul(share).div(100).mul(group.portion);
    }
    const count = eaters.counts.find((one) => one.group === group.key)?.guests ?? 0;
    return new Fraction(count).mul(group.portion);
  });
  const eaten = total(heads).mul(new Fraction(event.overCatering).add(100)).div(100);
  return byPiece ? eaten.ceil() : eaten;
};

export const cupOf = (recipe: Recipe, book: Workbook) => recipe.cup ?? book.kitchen.cup;

/**
 * An amount of a finished recipe, in the user's cups, as a part of one batch: by weight, by volume, else by portions.
 */
export const partOfBatch = (amount: string, unit: string, recipe: Recipe, cup: string, book: Workbook) => {
  const { portions, weight, volume } = recipe.yield;
  const grams = perGram[unit];
  if (grams) return new Fraction(amount).mul(grams).div(perGram[weight!.unit]!).div(weight!.amount);
  const ml = millilitres(unit, cup);
  if (!ml) return new Fraction(amount).div(portions!);
  return new Fraction(amount)
    .mul(ml)
    .div(millilitres(volume!.unit, cupOf(recipe, book))!)
    .div(volume!.amount);
};

/** One row a recipe, one column a component: batches of the component that one batch of the recipe takes. */
export const directUse = (book: Workbook): Fraction[][] =>
  book.recipes.map((user) =>
    book.recipes.map((component) =>
      total(
        user.lines
          .filter(({ item }) => 'component' in item && item.component === component.key)
          .map((line) => partOfBatch(line.amount!, line.unit, component, cupOf(user, book), book)),
      ),
    ),
  );

const product = (a: Fraction[][], b: Fraction[][]) =>
  a.map((row) => b[0]!.map((_, j) => total(row.map((cell, k) => cell.mul(b[k]![j]!)))));

/** All use at any depth: the identity, plus direct use, plus use of what is used, until nothing is left. */
export const fullUse = (book: Workbook): Fraction[][] => {
  const direct = directUse(book);
  let all = direct.map((row, i) => row.map((_, j) => new Fraction(i === j ? 1 : 0)));
  let layer = all;
  for (let depth = 0; depth <= book.recipes.length; depth++) {
    layer = product(layer, direct);
    if (layer.every((row) => row.every((cell) => cell.equals(0)))) return all;
    all = all.map((row, i) => row.map((cell, j) => cell.add(layer[i]![j]!)));
  }
  throw new Error('a recipe contains itself');
};

/** Batches of the dish's own recipe. */
export const factorOf = (dish: Dish, event: Event, book: Workbook): Fraction => {
  const recipe = book.recipes.find((one) => one.key === dish.recipe)!;
  const portions = portionsOf(dish, event, recipe.byPiece);
  const each = dish.portion;
  return each
    ? portions.mul(partOfBatch(each.amount, each.unit, recipe, cupOf(recipe, book), book))
    : portions.div(recipe.yield.portions!);
};
