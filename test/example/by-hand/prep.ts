import type Fraction from 'fraction.js';
import type { Event } from '../../../src/core/facts/event.js';
import type { Workbook } from '../../../src/core/facts/facts.js';
import type { Recipe } from '../../../src/core/facts/recipe.js';

const back = (date: string, days: number) =>
  new Date(Date.parse(`${date}T00:00:00Z`) - days * 86_400_000).toISOString().slice(0, 10);

const mostAhead = (recipe: Recipe) => Math.max(0, ...recipe.steps.map((step) => step.daysAhead));

/** The days of an event's steps with the batches made; `batches` holds each recipe's total over the event's dishes. */
export const prepOf = (event: Event, batches: Map<string, Fraction>, book: Workbook) => {
  const used = book.recipes.filter((recipe) => batches.has(recipe.key));
  // The day each recipe must be ready: counted back over and over until nothing moves any more.
  const due = new Map<string, string>();
  for (const course of event.courses)
    for (const dish of course.dishes) due.set(dish.recipe, back(event.date, course.dayAfter ? -1 : 0));
  for (let moved = true; moved; ) {
    moved = false;
    for (const user of used) {
      const day = due.get(user.key);
      if (!day) continue;
      const first = back(day, mostAhead(user));
      for (const { item } of user.lines) {
        if (!('component' in item) || (due.get(item.component) ?? '9999') <= first) continue;
        due.set(item.component, first);
        moved = true;
      }
    }
  }
  const rows = used.flatMap((recipe) =>
    recipe.steps.map((step) => ({
      date: back(due.get(recipe.key)!, step.daysAhead),
      recipe: recipe.key,
      step: step.key,
      batches: batches.get(recipe.key)!.toFraction(),
    })),
  );
  const dates = [...new Set(rows.map((row) => row.date))].sort();
  return Object.fromEntries(
    dates.map((day) => [day, rows.filter((row) => row.date === day).map(({ date: _, ...row }) => row)]),
  );
};
