import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { allergensOf } from '../../src/core/allergens.js';
import { costOfEvent } from '../../src/core/costing.js';
import { coverageOf } from '../../src/core/coverage.js';
import { prepFor } from '../../src/core/prep.js';
import type { Rational } from '../../src/core/quantity/rational.js';
import { boughtIn } from '../../src/core/weighing.js';
import { answers, book, facts } from './answers.js';

// The program against the answers that were worked another way: every figure of the example, to the last digit.
const plain = (figure: Rational | undefined) =>
  figure && new Fraction(`${figure.n}/${figure.d}`).toFraction();
const sorted = <T>(list: T[], by: (one: T) => string) =>
  list.toSorted((a, b) => (by(a) < by(b) ? -1 : by(a) > by(b) ? 1 : 0));

describe.each(book.events.map((event) => ({ event, answer: answers[event.key]! })))(
  '$event.key',
  ({ event, answer }) => {
    const { value: cost } = costOfEvent(event, facts);
    const dishes = cost.courses.flatMap((course) => course.dishes);

    test('portions, batches and every line prepared and as bought', () => {
      expect(dishes.map(({ need }) => need.dish.key)).toEqual(Object.keys(answer.dishes));
      for (const { need } of dishes) {
        const expected = answer.dishes[need.dish.key]!;
        expect(plain(need.portions)).toBe(expected.portions);
        expect(plain(need.recipes[0]!.factor)).toBe(expected.factor);
        const batches = need.recipes.map(({ recipe, factor }) => [recipe.key, plain(factor)]);
        expect(Object.fromEntries(batches)).toEqual(expected.batches);
        const lines = need.recipes.flatMap(({ recipe, lines }) =>
          lines
            .filter((line) => line.ingredient && line.amount)
            .map((line) => {
              const { unit } = expected.needs.find(
                (one) => one.recipe === recipe.key && one.line === line.line.key,
              )!;
              const bought = boughtIn(line.ingredient!, line.bought!, unit!);
              return {
                recipe: recipe.key,
                line: line.line.key,
                prepared: plain(line.prepared),
                bought: plain(bought as Rational),
                unit,
              };
            }),
        );
        const wanted = expected.needs
          .filter((one) => one.prepared !== undefined)
          .map(({ recipe, line, prepared, bought, unit }) => ({ recipe, line, prepared, bought, unit }));
        const place = (one: { recipe: string; line: string }) => `${one.recipe} ${one.line}`;
        expect(sorted(lines, place)).toEqual(sorted(wanted, place));
      }
    });

    test('cost of every line, dish, the event and a guest', () => {
      expect(plain(cost.exact)).toBe(answer.cost.exact);
      expect([cost.guests, cost.total, cost.aGuest]).toEqual([
        answer.guests,
        answer.cost.minor,
        answer.cost.aGuestMinor,
      ]);
      expect(cost.complete).toBe(true);
      for (const dish of dishes) {
        const expected = answer.dishes[dish.need.dish.key]!;
        expect([plain(dish.exact), dish.cost]).toEqual([expected.cost, expected.minor]);
        const lines = dish.recipes[0]!.lines.map(({ need, cost: one }, i) => ({
          line: need.line.key,
          cost: plain(one) ?? '0',
          minor: dish.lines[i],
        }));
        expect(lines).toEqual(expected.lines);
      }
    });

    test('allergens of every dish, with all that brings them in and every way it comes', () => {
      for (const { need } of dishes) {
        const cells = allergensOf(need.recipe, facts).map(({ item, state, unknown, brings }) => {
          const from = brings.map(({ ingredient, state, through }) => ({
            ingredient: ingredient.key,
            state,
            via: through.slice(1).map((recipe) => recipe.key),
          }));
          const inOrder = sorted(from, (one) => `${one.ingredient} ${one.via.join()}`);
          return [item.id, { state, unknown, from: inOrder }];
        });
        expect(Object.fromEntries(cells), need.dish.key).toEqual(answer.dishes[need.dish.key]!.allergens);
      }
    });

    test('who can eat what, and what each course leaves them', () => {
      const { rows, notAnswered } = coverageOf(event, facts);
      expect(notAnswered).toBe(answer.coverage.notAnswered);
      const found = rows.map(({ guest, cells, courses }) => {
        const dishesOf = (course: string) =>
          cells.filter((cell) => cell.course === course).map((cell) => [cell.dish, cell.verdict]);
        const inCourses = courses.map(({ course, has }) => [
          course,
          { has, dishes: Object.fromEntries(dishesOf(course)) },
        ]);
        return [guest!.key, Object.fromEntries(inCourses)];
      });
      expect(Object.fromEntries(found)).toEqual(answer.coverage.guests);
    });

    test('prep by day, with the batches of each step', () => {
      const { value: days } = prepFor([event], facts);
      const found = days.map(({ date, stations }) => {
        const jobs = stations.flatMap((station) => station.jobs);
        return [
          date,
          jobs.map(({ recipe, step, batches }) => `${recipe.key} ${step?.key} ${plain(batches)}`).sort(),
        ];
      });
      const wanted = Object.entries(answer.prep).map(([date, jobs]) => [
        date,
        jobs.map(({ recipe, step, batches }) => `${recipe} ${step} ${batches}`).sort(),
      ]);
      expect(Object.fromEntries(found)).toEqual(Object.fromEntries(wanted));
    });
  },
);
