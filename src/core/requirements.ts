import { batchesFor, componentGrams, cupOf, type Makes, makes } from './batch.js';
import type { Dish, Eaters, Event } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import type { Ingredient } from './facts/ingredient.js';
import type { Cup } from './facts/kitchen.js';
import type { Line, Recipe } from './facts/recipe.js';
import type { Answer, Problem } from './problem.js';
import { missingFact, noAmount, noYield } from './problems.js';
import { exact } from './quantity/amount.js';
import { Rational } from './quantity/rational.js';
import { type Quantity, quantity } from './quantity/units.js';
import { isMissing, statesBought, weigh } from './weighing.js';

/** One line at the amount that is cooked; undefined where a fact is missing. */
export type LineNeed = {
  line: Line;
  base: Rational | undefined;
  amount: Rational | undefined;
  ingredient: Ingredient | undefined;
  component: Recipe | undefined;
  prepared: Rational | undefined;
  bought: Quantity | undefined;
  /** Batches of the component that this line takes. */
  batches: Rational | undefined;
};

/** One recipe, however often it comes up inside a dish, at the sum of its uses. */
export type RecipeNeed = {
  recipe: Recipe;
  cup: Cup;
  /** Batches; undefined when a use of it can't be worked out. */
  factor: Rational | undefined;
  makes: Makes;
  lines: LineNeed[];
};

export type DishNeed = {
  dish: Dish;
  recipe: Recipe;
  portions: Rational;
  /** Grams or millilitres of one portion, where known. */
  portion: Quantity | undefined;
  /** The dish's own recipe first, then every component after all that use it. */
  recipes: RecipeNeed[];
  problems: Problem[];
};

/** How many of each guest group eat a dish, before portion factors; a group not named eats none. */
export const eatersOf = (eaters: Eaters, event: Event): Map<string, Rational> => {
  const counts = new Map<string, Rational>();
  for (const group of event.groups) {
    const guests = Rational.of(group.guests);
    if ('everybody' in eaters) counts.set(group.key, guests);
    else if ('shares' in eaters) {
      const share = eaters.shares.find((s) => s.group === group.key);
      counts.set(
        group.key,
        share ? guests.times(exact(share.percent)).over(Rational.of(100)) : Rational.zero,
      );
    } else {
      counts.set(group.key, Rational.of(eaters.counts.find((c) => c.group === group.key)?.guests ?? 0));
    }
  }
  return counts;
};

/** All guests of an event, heads not portions. */
export const headCount = (event: Event): number =>
  event.groups.reduce((total, group) => total + group.guests, 0);

/**
 * Portions to cook of a dish: eaters of each group times its portion factor, plus over-catering; exact, and
 * rounded up to whole pieces only where the recipe goes by the piece.
 */
export const portionsOf = (dish: Dish, recipe: Recipe, event: Event): Rational => {
  const eaters = eatersOf(dish.eaters, event);
  let portions = Rational.zero;
  for (const group of event.groups)
    portions = portions.plus(eaters.get(group.key)!.times(exact(group.portion)));
  const over = exact(event.overCatering).over(Rational.of(100)).plus(Rational.one);
  const asked = portions.times(over);
  return recipe.byPiece ? Rational.of(asked.ceil()) : asked;
};

/** A recipe and every component below it, each before what it uses; a loop is our own mistake and throws. */
export const closure = (root: Recipe, facts: Facts): Recipe[] => {
  const order: Recipe[] = [];
  const open = new Set<string>();
  const done = new Set<string>();
  const visit = (recipe: Recipe) => {
    if (done.has(recipe.key)) return;
    if (open.has(recipe.key)) throw new Error(`recipe ${recipe.key} contains itself`);
    open.add(recipe.key);
    for (const { item } of recipe.lines) if ('component' in item) visit(componentOf(item.component, facts));
    open.delete(recipe.key);
    done.add(recipe.key);
    order.push(recipe);
  };
  visit(root);
  return order.reverse();
};

const componentOf = (key: string, facts: Facts): Recipe => found(facts.recipes.get(key), key);

const found = <T>(value: T | undefined, key: string): T => {
  if (!value) throw new Error(`no fact for ${key}`);
  return value;
};

/**
 * A recipe at `factor` batches with all below it: every line's amount, prepared grams and as purchased, exact.
 * Uses of a component are summed first, so a whole-pieces line rounds up once for the whole of what is asked.
 */
export const scale = (root: Recipe, factor: Rational | undefined, facts: Facts): Answer<RecipeNeed[]> => {
  const problems: Problem[] = [];
  const factors = new Map<string, Rational | undefined>([[root.key, factor]]);
  const needs: RecipeNeed[] = [];
  for (const recipe of closure(root, facts)) {
    const cup = cupOf(recipe, facts);
    const batches = factors.get(recipe.key);
    const lines = recipe.lines.map((line) => lineNeed(line, recipe, batches, cup, facts, problems));
    needs.push({ recipe, cup, factor: batches, makes: makes(recipe, facts), lines });
    for (const need of lines) if (need.component) addUse(need, need.component, factors, problems);
  }
  return { value: needs, problems };
};

const addUse = (
  need: LineNeed,
  component: Recipe,
  factors: Map<string, Rational | undefined>,
  problems: Problem[],
) => {
  const before = factors.has(component.key) ? factors.get(component.key) : Rational.zero;
  if (need.line.amount === null) return factors.set(component.key, before);
  if (need.amount && !need.batches) problems.push(noYield(component, need.line.unit));
  factors.set(component.key, need.batches && before?.plus(need.batches));
};

const lineNeed = (
  line: Line,
  recipe: Recipe,
  factor: Rational | undefined,
  cup: Cup,
  facts: Facts,
  problems: Problem[],
): LineNeed => {
  const ingredient =
    'ingredient' in line.item
      ? found(facts.ingredients.get(line.item.ingredient), line.item.ingredient)
      : undefined;
  const component = 'component' in line.item ? componentOf(line.item.component, facts) : undefined;
  const base = line.amount === null ? undefined : exact(line.amount);
  if (!base) problems.push(noAmount(recipe, line.key, (ingredient ?? component)!.name));
  const straight = base && factor?.times(base);
  const amount = straight && line.scales === 'pieces' ? Rational.of(straight.ceil()) : straight;
  const need: LineNeed = {
    line,
    base,
    amount,
    ingredient,
    component,
    prepared: undefined,
    bought: undefined,
    batches: undefined,
  };
  if (!amount) return need;
  const asked = quantity(amount, line.unit, cup);
  if (component) {
    need.batches = batchesFor(makes(component, facts), asked);
    need.prepared = componentGrams(component, asked, facts);
    return need;
  }
  const weighed = weigh(ingredient!, asked, statesBought(line, asked.base));
  const { prepared, bought } = weighed;
  // Where the bought amount is known, a missing weight only leaves the weight of the dish open.
  if (isMissing(prepared))
    problems.push({ ...missingFact(ingredient!, prepared), weight: isMissing(bought) ? 'ask' : 'check' });
  else need.prepared = prepared;
  if (!isMissing(bought)) need.bought = bought;
  else if (!ingredient!.notBought) problems.push(missingFact(ingredient!, bought));
  return need;
};

/** One dish of an event with its portions and all it needs, through any depth; exact. */
export const dishNeed = (dish: Dish, event: Event, facts: Facts): DishNeed => {
  const recipe = componentOf(dish.recipe, facts);
  const portions = portionsOf(dish, recipe, event);
  const cup = cupOf(recipe, facts);
  const made = makes(recipe, facts);
  const stated = dish.portion ? quantity(exact(dish.portion.amount), dish.portion.unit, cup) : undefined;
  const asked = stated
    ? { value: stated.value.times(portions), base: stated.base }
    : { value: portions, base: 'portion' };
  const factor = batchesFor(made, asked);
  const { value: recipes, problems } = scale(recipe, factor, facts);
  if (!factor) problems.unshift(noYield(recipe, stated ? stated.base : 'portion'));
  return { dish, recipe, portions, portion: stated ?? portionOf(made), recipes, problems };
};

const portionOf = (made: Makes): Quantity | undefined => {
  if (!made.portions || made.portions.isZero) return undefined;
  if (made.g) return { value: made.g.over(made.portions), base: 'g' };
  return made.ml && { value: made.ml.over(made.portions), base: 'ml' };
};

export type CourseNeed = { course: Event['courses'][number]; dishes: DishNeed[] };

/** Everything an event needs, course by course and dish by dish; a done event from the facts it was served with. */
export const requirementsOf = (event: Event, facts: Facts): CourseNeed[] =>
  event.courses.map((course) => ({
    course,
    dishes: course.dishes.map((dish) => dishNeed(dish, event, facts)),
  }));

/** Problems without repeats, worst first, otherwise in the order they came up. */
export const worstFirst = (problems: readonly Problem[]): Problem[] => {
  const seen = new Set<string>();
  const rank = { stop: 0, ask: 1, check: 2 };
  return [...problems]
    .sort((a, b) => rank[a.weight] - rank[b.weight])
    .filter(({ sentence }) => !seen.has(sentence) && seen.add(sentence));
};
