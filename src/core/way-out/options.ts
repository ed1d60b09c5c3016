import { linesWeight } from '../batch.js';
import { judgeGuest } from '../diets.js';
import type { Guest } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import type { Ingredient, Substitute } from '../facts/ingredient.js';
import type { Recipe } from '../facts/recipe.js';
import { ingredientOf, recipeOf } from '../lookup.js';
import { Rational } from '../quantity/rational.js';
import { closureOf } from '../scaling.js';
import { byDiets, eats } from './lacking.js';
import { gramsOf, type Made, type Namer, type Treatment, treated } from './treat.js';

/** A way to make a dish otherwise, as a recipe with components of its own. */
export type Option = Made & { treatments: Treatment[] };

// So many kinds of trouble and answers to each tell for any dish of a party; past them the list is cut, in order.
const mostTroubles = 16;
const mostEach = 4;
const mostOptions = 12;

/**
 * Every way to make a dish so that some of these guests can eat it: what they cannot eat left out, swapped for one of
 * its substitutes, or its component served apart; for each guest alone, for two and for all together.
 */
export const optionsFor = (
  recipe: Recipe,
  guests: readonly Guest[],
  facts: Facts,
  namer: Namer,
): Option[] => {
  const found = new Map<string, Option>();
  for (const { ingredients, who } of troublesOf(recipe, guests, facts))
    for (const treatments of answersTo(ingredients, who, recipe, facts)) {
      if (found.size >= mostOptions) return [...found.values()];
      const mark = treatments.map(markOf).sort().join(' ');
      if (found.has(mark)) continue;
      const made = treated(recipe, treatments, facts, namer);
      if (made) found.set(mark, { ...made, treatments });
    }
  return [...found.values()];
};

const markOf = (one: Treatment): string =>
  one.do === 'apart'
    ? `apart ${one.component}`
    : one.do === 'swap'
      ? `${one.ingredient} by ${one.substitute.key}`
      : one.ingredient;

type Trouble = { ingredients: Ingredient[]; who: Guest[] };

/** What stands between the dish and each kind of guest; and, so that one tray may do for more, for several together. */
const troublesOf = (recipe: Recipe, guests: readonly Guest[], facts: Facts): Trouble[] => {
  const found = new Map<string, Trouble>();
  const note = ({ ingredients, who }: Trouble) => {
    const mark = ingredients
      .map(({ key }) => key)
      .sort()
      .join(' ');
    const known = found.get(mark);
    if (known) known.who.push(...who.filter((one) => !known.who.includes(one)));
    else if (found.size < mostTroubles) found.set(mark, { ingredients, who: [...who] });
  };
  for (const guest of guests) {
    const { verdict, reasons } = judgeGuest(byDiets(guest), recipe, facts);
    const against = reasons.filter((one) => one.verdict !== 'may' || guest.traces);
    if (verdict !== 'yes' && against.length > 0)
      note({ ingredients: [...new Set(against.map(({ ingredient }) => ingredient))], who: [guest] });
  }
  const alone = [...found.values()];
  const both = (a: Trouble, b: Trouble): Trouble => ({
    ingredients: [...new Set([...a.ingredients, ...b.ingredients])],
    who: [...new Set([...a.who, ...b.who])],
  });
  if (alone.length > 1) note(alone.reduce(both));
  alone.forEach((one, at) => {
    for (const other of alone.slice(at + 1)) note(both(one, other));
  });
  return [...found.values()];
};

/** What can be done about each of these ingredients, all together; first what the cook tries first. */
const answersTo = (
  ingredients: readonly Ingredient[],
  who: readonly Guest[],
  recipe: Recipe,
  facts: Facts,
): Treatment[][] => {
  let sets: { rank: number; treatments: Treatment[] }[] = [{ rank: 0, treatments: [] }];
  for (const ingredient of ingredients) {
    const choices = choicesFor(ingredient, who, recipe, facts);
    sets = sets
      .flatMap(({ rank, treatments }) =>
        choices.map((choice, at) => ({ rank: rank + at, treatments: withChoice(treatments, choice) })),
      )
      .sort((a, b) => a.rank - b.rank)
      .slice(0, mostEach);
  }
  return sets.map(({ treatments }) => treatments);
};

const withChoice = (treatments: Treatment[], choice: Treatment): Treatment[] =>
  treatments.some((one) => markOf(one) === markOf(choice)) ? treatments : [...treatments, choice];

const choicesFor = (
  ingredient: Ingredient,
  who: readonly Guest[],
  recipe: Recipe,
  facts: Facts,
): Treatment[] => {
  const { key, name } = ingredient;
  const swaps = ingredient.substitutes
    .filter((substitute) => doesFor(substitute, who, recipe, facts))
    .map((substitute): Treatment => {
      const by = nameOf(substitute, facts);
      return { do: 'swap', ingredient: key, name, substitute, by };
    });
  const out: Treatment[] = isSmall(key, recipe, facts) ? [{ do: 'leave-out', ingredient: key, name }] : [];
  return [...swaps, ...out, ...apartFrom(key, recipe, facts)];
};

const nameOf = ({ item }: Substitute, facts: Facts): string =>
  'ingredient' in item ? ingredientOf(item.ingredient, facts).name : recipeOf(item.component, facts).name;

/** Whether all these guests can eat a substitute by itself. */
const doesFor = ({ item }: Substitute, who: readonly Guest[], recipe: Recipe, facts: Facts): boolean => {
  const alone: Recipe = { ...recipe, lines: [{ ...recipe.lines[0]!, item }] };
  return who.every((guest) => eats(guest, alone, facts));
};

const quarter = Rational.of(1, 4);

/** Less than a quarter of the recipe it goes into; where either weight is not known, it is not said to be. */
const isLess = (line: Recipe['lines'][number], recipe: Recipe, facts: Facts): boolean => {
  if (line.amount === null) return true;
  const [grams, all] = [gramsOf(line, recipe, facts), linesWeight(recipe, facts)];
  return grams !== undefined && all !== undefined && grams.compare(all.times(quarter)) < 0;
};

/** Whether an ingredient can be left out: less than a quarter of whatever it goes into, and no flour of a dough. */
const isSmall = (key: string, recipe: Recipe, facts: Facts): boolean =>
  closureOf(recipe, facts).every((one) =>
    one.lines.every(
      (line) =>
        !('ingredient' in line.item && line.item.ingredient === key) ||
        (line.scales !== 'flour' && isLess(line, one, facts)),
    ),
  );

/** The component of a dish that an ingredient comes in by alone, where it is less than a quarter of the dish. */
const apartFrom = (key: string, recipe: Recipe, facts: Facts): Treatment[] => {
  const has = (one: Recipe) =>
    closureOf(one, facts).some(({ lines }) =>
      lines.some(({ item }) => 'ingredient' in item && item.ingredient === key),
    );
  const bring = recipe.lines.filter(({ item }) =>
    'ingredient' in item ? item.ingredient === key : has(recipeOf(item.component, facts)),
  );
  const [line] = bring;
  if (bring.length !== 1 || !line || !('component' in line.item)) return [];
  if (!isLess(line, recipe, facts)) return [];
  const component = recipeOf(line.item.component, facts);
  return [{ do: 'apart', component: component.key, name: component.name }];
};
