import fc from 'fast-check';
import { expect, test } from 'vitest';
import { coverageOf } from '../../../src/core/coverage.js';
import type { Event, Guest } from '../../../src/core/facts/event.js';
import { passList } from '../../../src/core/sheets/pass-list.js';
import { facts, guest, made, supper } from '../few-portions.js';

const names = ['ana', 'bo', 'cy', 'di'];
const anySupper = fc
  .record({
    dishes: fc.array(
      fc.record({
        recipe: fc.constantFrom('stew', 'lentil-pie', 'gratin', 'crisps'),
        guests: fc.integer({ min: 0, max: 5 }),
        keptFor: fc.subarray(names, { maxLength: 2 }),
      }),
      { minLength: 1, maxLength: 4 },
    ),
    diets: fc.array(fc.subarray(['vegan', 'vegetarian', 'no-milk', 'no-nuts'], { maxLength: 2 }), {
      minLength: 4,
      maxLength: 4,
    }),
    counts: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 4, maxLength: 4 }),
  })
  .map(({ dishes, diets, counts }) =>
    supper(
      dishes.map(({ recipe, guests, keptFor }) => made(recipe, guests, ...keptFor)),
      ...names.map((name, at) => guest(name, counts[at]!, ...diets[at]!)),
    ),
  );

type Can = (who: Guest, dish: string) => boolean;
type Portion = { dish: string; names: string[] | undefined };

/** Every portion by itself: for whom it is kept, as far as they could eat it. */
const portionsIn = (event: Event, can: Can): Portion[] =>
  event.courses[0]!.dishes.flatMap(({ key, keptFor, eaters }) => {
    const size = 'counts' in eaters ? eaters.counts[0]!.guests : 0;
    const named = event.guests.filter((one) => keptFor.includes(one.key) && can(one, key));
    const heads = named.reduce((n, { count }) => n + count, 0);
    return Array.from({ length: size }, (_, at) => ({
      dish: key,
      names: at < heads ? named.map((one) => one.key) : undefined,
    }));
  });

/** How many heads can be fed at most, each a portion: heads make room for each other until nobody more can. */
const mostFed = (heads: readonly Guest[], portions: readonly Portion[], can: Can): number => {
  const taken = new Map<number, number>();
  const feed = (head: number, tried: Set<number>): boolean =>
    portions.some((portion, at) => {
      const who = heads[head]!;
      if (tried.has(at) || !can(who, portion.dish) || !(portion.names?.includes(who.key) ?? true))
        return false;
      tried.add(at);
      const before = taken.get(at);
      if (before !== undefined && !feed(before, tried)) return false;
      taken.set(at, head);
      return true;
    });
  return heads.filter((_, head) => feed(head, new Set())).length;
};

test('as many are fed as by trying, and what all are told at the pass never asks for more than is made', () => {
  let dealt = 0;
  fc.assert(
    fc.property(anySupper, (event) => {
      const coverage = coverageOf(event, facts);
      const can = (who: Guest, key: string) =>
        coverage.rows
          .find((row) => row.guest!.key === who.key)!
          .cells.some((cell) => cell.dish === key && (cell.verdict === 'yes' || cell.verdict === 'may'));
      const { dishes } = event.courses[0]!;
      const choosy = event.guests.filter(
        (one) => one.diets.length > 0 && dishes.some(({ key }) => can(one, key)),
      );
      const heads = choosy.flatMap((one) => Array.from({ length: one.count }, () => one));
      const hungry = coverage.short.reduce((n, one) => n + one.guests - one.portions, 0);
      expect(heads.length - mostFed(heads, portionsIn(event, can), can)).toBe(hungry);

      const { value } = passList(event, facts);
      expect(passList(structuredClone(event), facts).value.courses).toEqual(value.courses);
      if (coverage.short.length > 0) return;
      const asked = new Map<string, number>();
      for (const { guest: who, gets, may, others } of value.courses.flatMap(({ tables }) =>
        tables.flatMap(({ guests }) => guests),
      )) {
        const open = [...gets, ...may];
        if (others.length > 0) dealt += 1;
        if (open.length + others.length === 0) continue;
        expect(open.reduce((n, one) => n + (one.portions ?? who.count), 0)).toBeGreaterThanOrEqual(who.count);
        for (const { name, portions } of open)
          asked.set(name, (asked.get(name) ?? 0) + (portions ?? who.count));
      }
      const there = new Map<string, number>();
      for (const { recipe, eaters } of dishes) {
        const { name } = facts.recipes.get(recipe)!;
        there.set(name, (there.get(name) ?? 0) + ('counts' in eaters ? eaters.counts[0]!.guests : 0));
      }
      for (const [name, portions] of asked) expect(portions).toBeLessThanOrEqual(there.get(name)!);
    }),
    { numRuns: 3000 },
  );
  expect(dealt).toBeGreaterThan(100);
});
