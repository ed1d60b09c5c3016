import type { Workbook } from '../facts/facts.js';
import { type Known, nothingKnown } from '../known.js';
import { normalName } from '../names.js';
import type { Problem } from '../problem.js';
import { asKnown } from '../rules/recipe.js';
import { refusals } from '../rules.js';

type Named = { key: string; name: string };

/** Why a whole kitchen cannot be kept: the rules of each document, with all the others beside it. */
export const workbookRules = (workbook: Workbook): Problem[] => {
  const { kitchen, places, ingredients, recipes, events } = workbook;
  const known: Known = {
    ...nothingKnown,
    ingredients: new Set(ingredients.map(({ key }) => key)),
    recipes: new Map(recipes.map((recipe) => [recipe.key, asKnown(recipe)])),
    places: new Set(places.map(({ key }) => key)),
    diets: new Set(kitchen.diets.map(({ key }) => key)),
  };
  const homes = places.filter(({ kind }) => kind === 'home');
  const otherHomes = (key: string) => homes.filter((home) => home.key !== key).map(({ name }) => name);
  const sameName = { ingredient: namesakes(ingredients), recipe: namesakes(recipes) };
  return [
    ...keysTwice('place', places),
    ...keysTwice('ingredient', ingredients),
    ...keysTwice('recipe', recipes),
    ...keysTwice('event', events),
    ...refusals('kitchen', kitchen, known),
    ...(homes.length === 0 ? [noHome(kitchen.name)] : []),
    ...places.flatMap((one) =>
      refusals('place', one, { ...known, otherHomes: homes.length === 0 ? [one.name] : otherHomes(one.key) }),
    ),
    ...ingredients.flatMap((one) =>
      refusals('ingredient', one, { ...known, namesake: sameName.ingredient(one) }),
    ),
    ...recipes.flatMap((one) => refusals('recipe', one, { ...known, namesake: sameName.recipe(one) })),
    ...events.flatMap((one) => refusals('event', one, known)),
  ];
};

/** Finds the earlier document whose name compares alike. */
const namesakes = (list: readonly Named[]): ((one: Named) => Named | undefined) => {
  const first = new Map<string, Named>();
  for (const one of list) if (!first.has(normalName(one.name))) first.set(normalName(one.name), one);
  return (one) => {
    const earlier = first.get(normalName(one.name));
    return earlier === one ? undefined : earlier;
  };
};

const keysTwice = (entity: Problem['subject']['entity'], list: readonly Named[]): Problem[] => {
  const seen = new Set<string>();
  return list.flatMap(({ key, name }) => {
    if (!seen.has(key)) {
      seen.add(key);
      return [];
    }
    const sentence = `The key "${key}" stands twice in one list: give each its own.`;
    return [
      { weight: 'stop', code: 'key-twice', sentence, subject: { entity, key, name, field: 'key' } } as const,
    ];
  });
};

const noHome = (name: string): Problem => ({
  weight: 'stop',
  code: 'no-home',
  sentence: 'One place must be the home kitchen: write "kind": "home" at it.',
  subject: { entity: 'kitchen', key: 'kitchen', name },
});
