import { expect, test } from 'vitest';
import allergens from '../../shared/allergens.json' with { type: 'json' };
import diets from '../../shared/diets.json' with { type: 'json' };
import { parseWorkbook, workbookText } from '../../src/core/exchange/workbook.js';
import { exampleKitchen } from '../world.js';

// The example is a whole kitchen: every key that is used exists, once, and lists are sorted by key.
const kitchen = exampleKitchen();
const keys = (list: readonly { key: string }[]) => list.map((one) => one.key);

test('every list is sorted by key and no key stands twice', () => {
  for (const list of [kitchen.places, kitchen.ingredients, kitchen.recipes, kitchen.events]) {
    expect(keys(list)).toEqual([...new Set(keys(list))].sort());
  }
  for (const recipe of kitchen.recipes) {
    expect(new Set(keys(recipe.lines)).size).toBe(recipe.lines.length);
    expect(new Set(keys(recipe.steps)).size).toBe(recipe.steps.length);
  }
});

test('every reference leads somewhere, and all rows say that they are the example', () => {
  const ingredients = new Set(keys(kitchen.ingredients));
  const recipes = new Set(keys(kitchen.recipes));
  for (const recipe of kitchen.recipes) {
    if (recipe.variantOf) expect(recipes).toContain(recipe.variantOf);
    for (const { item } of recipe.lines) {
      if ('ingredient' in item) expect(ingredients).toContain(item.ingredient);
      else expect(recipes).toContain(item.component);
    }
  }
  for (const event of kitchen.events) {
    expect(keys(kitchen.places)).toContain(event.place);
    const groups = keys(event.groups);
    for (const guest of event.guests) expect(groups).toContain(guest.group);
    for (const dish of event.courses.flatMap((course) => course.dishes)) {
      expect(recipes).toContain(dish.recipe);
      const { eaters } = dish;
      const named = 'shares' in eaters ? eaters.shares : 'counts' in eaters ? eaters.counts : [];
      for (const { group } of named) expect(groups).toContain(group);
    }
  }
  const rows = [...kitchen.places, ...kitchen.ingredients, ...kitchen.recipes, ...kitchen.events];
  expect(rows.filter((row) => row.origin !== 'example')).toEqual([]);
});

test('allergens and diets are those of the published lists', () => {
  const known = new Set([...allergens.substances, ...allergens.groups].map((one) => one.id));
  for (const ingredient of kitchen.ingredients) {
    for (const id of Object.keys(ingredient.allergens)) expect(known).toContain(id);
  }
  const dietIds = new Set(diets.map((diet) => diet.id));
  for (const guest of kitchen.events.flatMap((event) => event.guests)) {
    for (const id of guest.diets) expect(dietIds).toContain(id);
  }
});

test('no more guests are named or counted than come', () => {
  for (const event of kitchen.events) {
    const come = event.groups.reduce((all, group) => all + group.guests, 0);
    const heard = event.guests.reduce((all, guest) => all + guest.count, 0) + event.eatsAll;
    expect(heard).toBeLessThan(come); // some have not been heard from
  }
});

test('it is a workbook file that the workbook takes, and gives back unchanged', () => {
  expect(parseWorkbook(workbookText(kitchen))).toEqual({ workbook: kitchen });
});
