import { expect, test } from 'vitest';
import { edit } from '../../src/store/changes.js';
import { read } from '../../src/store/documents.js';
import { eventFacts, loadFacts } from '../../src/store/facts.js';
import { undo } from '../../src/store/undo.js';
import { exampleKitchen } from '../world.js';
import { counter } from './counter.js';
import { useKitchen } from './kitchen.js';
import { by } from './world.js';

const kitchen = useKitchen(exampleKitchen);
const example = exampleKitchen();

test('an event comes with every component through any depth, every ingredient and its places, and nothing else', async () => {
  for (const event of example.events) {
    const { events, facts, stored } = (await eventFacts(kitchen.db, [event.key]))!;
    expect(events).toEqual([event]);
    expect(stored[0]?.revision).toBeGreaterThan(0);
    const recipes = new Set(event.courses.flatMap(({ dishes }) => dishes.map(({ recipe }) => recipe)));
    for (const key of recipes)
      for (const { item } of facts.recipes.get(key)!.lines)
        if ('component' in item) recipes.add(item.component);
    expect([...facts.recipes.keys()]).toEqual([...recipes].toSorted());
    const ingredients = example.recipes
      .filter(({ key }) => recipes.has(key))
      .flatMap(({ lines }) => lines.flatMap(({ item }) => ('ingredient' in item ? [item.ingredient] : [])));
    expect([...facts.ingredients.keys()]).toEqual([...new Set(ingredients)].toSorted());
    expect([...facts.places.values()].every(({ key, kind }) => kind === 'home' || key === event.place)).toBe(
      true,
    );
    expect(facts.places.has(event.place)).toBe(true);
    expect(facts.kitchen).toEqual(example.kitchen);
  }
});

test('events come in the order asked for, unknown ones are left out', async () => {
  const keys = example.events.map(({ key }) => key).toReversed();
  const found = await eventFacts(kitchen.db, [...keys, 'no-such']);
  expect(found?.events.map(({ key }) => key)).toEqual(keys);
});

test('an event that is done keeps what was served; an edit of a recipe does not reach it; reopened, it follows again', async () => {
  const { db } = kitchen;
  const { key } = example.events[0]!;
  const stored = (await read(db, 'event', key))!;
  const today = await eventFacts(db, [key]);
  const state = (state: 'done' | 'confirmed', revision: number) =>
    edit(db, 'event', key, { ...by, revision, change: (doc) => ({ ...doc, state }) });
  const done = await state('done', stored.revision);
  if (done.outcome !== 'saved') throw new Error(done.outcome);
  expect(done.doc.served).toEqual({
    date: '2026-11-20',
    kitchen: today?.facts.kitchen,
    places: [...today!.facts.places.values()],
    ingredients: [...today!.facts.ingredients.values()],
    recipes: [...today!.facts.recipes.values()],
  });

  const dish = done.doc.courses[0]!.dishes[0]!.recipe;
  const recipe = (await read(db, 'recipe', dish))!;
  await edit(db, 'recipe', dish, {
    ...by,
    revision: recipe.revision,
    change: (doc) => ({ ...doc, note: 'New.' }),
  });
  const kept = await read(db, 'event', key);
  expect(kept?.doc.served?.recipes.find((one) => one.key === dish)?.note).toBe(recipe.doc.note);

  const outsider = example.recipes.find(
    (one) => !done.doc.served?.recipes.some(({ key }) => key === one.key),
  );
  if (outsider) {
    const courses = done.doc.courses.map((course, n) =>
      n === 0
        ? { ...course, dishes: course.dishes.map((one) => ({ ...one, recipe: outsider.key })) }
        : course,
    );
    const changed = await edit(db, 'event', key, {
      ...by,
      revision: done.revision,
      change: (doc) => ({ ...doc, courses }),
    });
    expect(changed.outcome === 'refused' && changed.problems[0]?.code).toBe('not-served');
  }

  const reopened = await state('confirmed', done.revision);
  expect(reopened).toMatchObject({ outcome: 'saved', doc: { served: null } });
  if (reopened.outcome === 'saved') await undo(db, reopened.changeId!, by);
  expect((await read(db, 'event', key))?.doc).toEqual(done.doc);
});

test('an event with all its facts takes at most eight queries, its transaction counted', async () => {
  const queries = counter();
  await eventFacts(kitchen.db.withPlugin(queries), [example.events[0]!.key]);
  expect(queries.count + 2).toBeLessThanOrEqual(8);
});

test('there are no facts while there is no recipe asked for, but the kitchen and its home', async () => {
  const facts = await loadFacts(kitchen.db, { recipes: [] });
  expect(facts?.recipes.size).toBe(0);
  expect([...facts!.places.values()].map(({ kind }) => kind)).toEqual(['home']);
});
