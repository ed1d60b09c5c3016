import Fraction from 'fraction.js';
import type { Dish, Event } from '../../src/core/facts/event.js';
import type { Workbook } from '../../src/core/facts/facts.js';
import { matrixRow } from './by-hand/allergens.js';
import { allocate, type Need, needOf, roundHalfUp } from './by-hand/cost.js';
import { coverageOf } from './by-hand/coverage.js';
import { prepOf } from './by-hand/prep.js';
import { cupOf, factorOf, fullUse, partOfBatch, portionsOf, total } from './by-hand/tree.js';
import { wholeOf } from './by-hand/whole.js';

/**
 * The sheets of the example worked a second time, in another way than the program does: the recipe tree is one table
 * of what each recipe takes of each other, multiplied out, and every figure a plain formula over it. Takes nothing
 * from the program but the types of the facts.
 */
type Row = { recipe: string; line: string; ingredient: string; need: Need | undefined };
type Worked = {
  dish: Dish;
  course: string;
  batches: Map<string, Fraction>;
  rows: Row[];
  lines: { line: string; cost: Fraction }[];
  cost: Fraction;
};

const nothing = new Fraction(0);
const text = (figure: Fraction) => figure.toFraction();
const costs = (rows: { need: Need | undefined }[]) => total(rows.map((row) => row.need?.cost ?? nothing));

const workDish = (dish: Dish, course: string, event: Event, book: Workbook, use: Fraction[][]): Worked => {
  const own = use[book.recipes.findIndex((one) => one.key === dish.recipe)]!;
  const factor = factorOf(dish, event, book);
  const made = book.recipes.filter((_, i) => !own[i]!.equals(0));
  const batches = new Map(made.map((one) => [one.key, factor.mul(own[book.recipes.indexOf(one)]!)]));
  const rows = made.flatMap((recipe) =>
    recipe.lines.flatMap((line): Row[] => {
      if (!('ingredient' in line.item)) return [];
      const need = needOf(line, recipe, batches.get(recipe.key)!, cupOf(recipe, book), book);
      return [{ recipe: recipe.key, line: line.key, ingredient: line.item.ingredient, need }];
    }),
  );
  const lines = lineCosts({ dish, batches, rows }, book, use);
  return { dish, course, batches, rows, lines, cost: costs(rows) };
};

/** What each line of the dish's own recipe costs; a component's line has its part of every recipe below it. */
const lineCosts = (
  { dish, batches, rows }: Pick<Worked, 'dish' | 'batches' | 'rows'>,
  book: Workbook,
  use: Fraction[][],
) => {
  const recipe = book.recipes.find((one) => one.key === dish.recipe)!;
  const costOf = (key: string) => costs(rows.filter((row) => row.recipe === key));
  return recipe.lines.map((line) => {
    if ('ingredient' in line.item) {
      const row = rows.find((one) => one.recipe === recipe.key && one.line === line.key)!;
      return { line: line.key, cost: row.need?.cost ?? nothing };
    }
    const { component: key } = line.item;
    const component = book.recipes.find((one) => one.key === key)!;
    const part = partOfBatch(line.amount!, line.unit, component, cupOf(recipe, book), book);
    const taken = part.mul(batches.get(recipe.key)!);
    const below = use[book.recipes.indexOf(component)]!;
    const parts = [...batches].map(([one, all]) => {
      const needed = taken.mul(below[book.recipes.findIndex((r) => r.key === one)]!);
      return costOf(one).mul(needed).div(all);
    });
    return { line: line.key, cost: total(parts) };
  });
};

const dishAnswer = (worked: Worked, minor: number, event: Event, book: Workbook) => {
  const { dish, course, batches, rows, lines, cost } = worked;
  const shown = allocate(
    minor,
    lines.map((line) => line.cost),
  );
  const { byPiece } = book.recipes.find((one) => one.key === dish.recipe)!;
  return {
    course,
    portions: text(portionsOf(dish, event, byPiece)),
    factor: text(batches.get(dish.recipe)!),
    cost: text(cost),
    minor,
    lines: lines.map((line, i) => ({ line: line.line, cost: text(line.cost), minor: shown[i]! })),
    batches: Object.fromEntries([...batches].map(([key, factor]) => [key, text(factor)])),
    needs: rows.map(({ need, ...row }) => ({ ...row, ...needAnswer(need) })),
    allergens: matrixRow(dish.recipe, book),
  };
};

const needAnswer = (need: Need | undefined) =>
  need
    ? { prepared: text(need.prepared), bought: text(need.bought), unit: need.unit, cost: text(need.cost) }
    : { toTaste: true };

const eventAnswer = (event: Event, book: Workbook, use: Fraction[][]) => {
  const worked = event.courses.flatMap((course) =>
    course.dishes.map((dish) => workDish(dish, course.key, event, book, use)),
  );
  const dishCosts = worked.map((one) => one.cost);
  const exact = total(dishCosts);
  const minor = roundHalfUp(exact);
  const guests = event.groups.reduce((all, group) => all + group.guests, 0);
  const aGuest = exact.div(guests);
  const shares = allocate(minor, dishCosts);
  const batches = new Map<string, Fraction>();
  for (const one of worked)
    for (const [key, factor] of one.batches) batches.set(key, factor.add(batches.get(key) ?? 0));
  return {
    guests,
    cost: { exact: text(exact), minor, aGuest: text(aGuest), aGuestMinor: roundHalfUp(aGuest) },
    dishes: Object.fromEntries(
      worked.map((one, i) => [one.dish.key, dishAnswer(one, shares[i]!, event, book)]),
    ),
    ingredients: ingredientTotals(worked.flatMap((one) => one.rows)),
    coverage: coverageOf(event, book),
    prep: prepOf(event, batches, book),
  };
};

const ingredientTotals = (rows: Row[]) => {
  const keys = [...new Set(rows.filter((row) => row.need).map((row) => row.ingredient))].sort();
  return Object.fromEntries(
    keys.map((key) => {
      const needs = rows.filter((row) => row.ingredient === key).flatMap((row) => row.need ?? []);
      const sum = (pick: (need: Need) => Fraction) => text(total(needs.map(pick)));
      const { unit } = needs[0]!;
      return [
        key,
        { prepared: sum((n) => n.prepared), bought: sum((n) => n.bought), unit, cost: sum((n) => n.cost) },
      ];
    }),
  );
};

type WorkedEvent = ReturnType<typeof eventAnswer> & { whole: ReturnType<typeof wholeOf> };

/** Every event of a kitchen, by key: weights prepared in grams, amounts bought in the unit of the preferred pack. */
export const workedByHand = (book: Workbook) => {
  const use = fullUse(book);
  const all = Object.fromEntries(book.events.map((event) => [event.key, eventAnswer(event, book, use)]));
  const whole = (event: Event) => [event.key, { ...all[event.key]!, whole: wholeOf(event, all, book) }];
  return Object.fromEntries(book.events.map(whole)) as Record<string, WorkedEvent>;
};
