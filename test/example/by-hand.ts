import Fraction from 'fraction.js';
import type { Dish, Event } from '../../src/core/facts/event.js';
import type { Workbook } from '../../src/core/facts/facts.js';
import { matrixRow } from './by-hand/allergens.js';
import { allocate, type Need, needOf, roundHalfUp } from './by-hand/cost.js';
import { coverageOf } from './by-hand/coverage.js';
import { prepOf } from './by-hand/prep.js';
import { cupOf, factorOf, fullUse, portionsOf, total } from './by-hand/tree.js';

/**
 * The sheets of the example worked a second time, in another way than the program does: the recipe tree is one table
 * of what each recipe takes of each other, multiplied out, and every figure a plain formula over it. Takes nothing
 * from the program but the types of the facts.
 */
type Row = { recipe: string; line: string; ingredient: string; need: Need | undefined };
type Worked = { dish: Dish; course: string; batches: Map<string, Fraction>; rows: Row[]; cost: Fraction };

const workDish = (dish: Dish, course: string, event: Event, book: Workbook, use: Fraction[][]): Worked => {
  const own = use[book.recipes.findIndex((one) => one.key === dish.recipe)]!;
  const factor = factorOf(dish, event, book);
  const batches = new Map<string, Fraction>();
  const rows: Row[] = [];
  for (const [i, recipe] of book.recipes.entries()) {
    if (own[i]!.equals(0)) continue;
    batches.set(recipe.key, factor.mul(own[i]!));
    for (const line of recipe.lines) {
      if (!('ingredient' in line.item)) continue;
      const need = needOf(line, batches.get(recipe.key)!, cupOf(recipe, book), book);
      rows.push({ recipe: recipe.key, line: line.key, ingredient: line.item.ingredient, need });
    }
  }
  return { dish, course, batches, rows, cost: total(rows.map((row) => row.need?.cost ?? new Fraction(0))) };
};

const text = (figure: Fraction) => figure.toFraction();

const dishAnswer = (
  { dish, course, batches, rows, cost }: Worked,
  minor: number,
  event: Event,
  book: Workbook,
) => {
  const lines = allocate(
    minor,
    rows.map((row) => row.need?.cost ?? new Fraction(0)),
  );
  const { byPiece } = book.recipes.find((one) => one.key === dish.recipe)!;
  return {
    course,
    portions: text(portionsOf(dish, event, byPiece)),
    factor: text(batches.get(dish.recipe)!),
    cost: text(cost),
    minor,
    batches: Object.fromEntries([...batches].map(([key, factor]) => [key, text(factor)])),
    lines: rows.map(({ need, ...row }, i) => ({
      ...row,
      ...needAnswer(need),
      ...(need && { minor: lines[i] }),
    })),
    allergens: matrixRow(dish.recipe, book),
  };
};

const needAnswer = (need: Need | undefined) =>
  need
    ? {
        prepared: text(need.prepared),
        bought: text(need.bought),
        unit: need.unit,
        cost: text(need.cost),
      }
    : { toTaste: true };

const eventAnswer = (event: Event, book: Workbook, use: Fraction[][]) => {
  const worked = event.courses.flatMap((course) =>
    course.dishes.map((dish) => workDish(dish, course.key, event, book, use)),
  );
  const exact = total(worked.map((one) => one.cost));
  const minor = roundHalfUp(exact);
  const guests = event.groups.reduce((all, group) => all + group.guests, 0);
  const shares = allocate(
    minor,
    worked.map((one) => one.cost),
  );
  const batches = new Map<string, Fraction>();
  for (const one of worked)
    for (const [key, factor] of one.batches) batches.set(key, factor.add(batches.get(key) ?? 0));
  return {
    guests,
    cost: {
      exact: text(exact),
      minor,
      aGuest: text(exact.div(guests)),
      aGuestMinor: roundHalfUp(exact.div(guests)),
    },
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

/** Every event of a kitchen, by key: weights prepared in grams, amounts bought in the unit of the preferred pack. */
export const workedByHand = (book: Workbook) => {
  const use = fullUse(book);
  return Object.fromEntries(book.events.map((event) => [event.key, eventAnswer(event, book, use)]));
};
