import type { Event } from '../../core/facts/event.js';
import type { Facts } from '../../core/facts/facts.js';
import type { Ingredient, Pack } from '../../core/facts/ingredient.js';
import { ingredientOf, recipeOf } from '../../core/lookup.js';
import { closureOf } from '../../core/scaling.js';
import { latestPrice, preferredPack } from '../../core/weighing.js';
import type { WhatIf } from '../../core/whole-cost/what-if.js';
import type { Choice } from '../fields.js';
import type { Format } from '../format.js';
import { measureInWords, typedMeasure } from '../typed.js';
import type { Offered } from './read.js';

/** What the party has that could be otherwise. */
export const offeredBy = (event: Event, facts: Facts, f: Format): Offered => {
  const bought = ingredientsOf(event, facts)
    .filter(({ notBought }) => !notBought)
    .sort((a, b) => a.name.localeCompare(b.name, facts.kitchen.locale));
  return {
    ingredients: bought.filter(isPriced).map(({ key, name }) => ({ value: key, label: name })),
    packs: bought.flatMap((one) => otherPacks(one, f)),
    dishes: event.courses.flatMap((course) =>
      course.dishes.map((dish) => ({
        value: `${course.key}/${dish.key}`,
        label: recipeOf(dish.recipe, facts).name,
      })),
    ),
  };
};

const ingredientsOf = (event: Event, facts: Facts): Ingredient[] => {
  const used = event.courses
    .flatMap(({ dishes }) => dishes.flatMap(({ recipe }) => closureOf(recipeOf(recipe, facts), facts)))
    .flatMap(({ lines }) => lines.flatMap(({ item }) => ('ingredient' in item ? [item.ingredient] : [])));
  return [...new Set(used)].map((key) => ingredientOf(key, facts));
};

const isPriced = (ingredient: Ingredient): boolean => {
  const pack = preferredPack(ingredient);
  return pack !== undefined && latestPrice(pack) !== undefined;
};

const otherPacks = (ingredient: Ingredient, f: Format): Choice[] =>
  ingredient.packs
    .filter((pack) => pack !== preferredPack(ingredient))
    .map((pack) => ({
      value: `${ingredient.key}/${pack.key}`,
      label: `${ingredient.name}: ${packWords(pack, f)}`,
    }));

const packWords = (pack: Pack, f: Format): string => {
  const price = latestPrice(pack);
  const from = [pack.supplier, pack.brand].filter(Boolean).join(', ');
  return [measureInWords(pack.size), from && `from ${from}`, price ? f.money(price.price) : 'no price']
    .filter(Boolean)
    .join(', ');
};

/** A change in few words: "52 guests, Butter 8% dearer". */
export const inWords = (change: WhatIf, offered: Offered, f: Format): string => {
  const named = (list: readonly Choice[], value: string) =>
    String(list.find((choice) => choice.value === value)?.label ?? '');
  const { guests, dearer, pack, without, portion } = change;
  const dish = (at: { course: string; dish: string }) => named(offered.dishes, `${at.course}/${at.dish}`);
  return [
    guests !== undefined && f.count(guests, 'guest'),
    dearer &&
      `${named(offered.ingredients, dearer.ingredient)} ${percentWords(dearer.percent.toString().replace('-', ''))} ${dearer.percent.sign < 0 ? 'cheaper' : 'dearer'}`,
    pack && named(offered.packs, `${pack.ingredient}/${pack.pack}`),
    without && `without ${dish(without)}`,
    portion && `${dish(portion)} at ${typedMeasure(portion.portion)}`,
  ]
    .filter(Boolean)
    .join('; ');
};

const percentWords = (percent: string): string => `${percent}%`;
