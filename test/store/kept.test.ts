import { expect, test } from 'vitest';
import type { Recipe } from '../../src/core/facts/recipe.js';
import { edit, editIn } from '../../src/store/changes.js';
import { preparedOn } from '../../src/store/coming.js';
import { read } from '../../src/store/documents.js';
import { consistently, eventFacts, loadFacts } from '../../src/store/facts.js';
import { remove } from '../../src/store/removal.js';
import { add, saving } from '../../src/store/saves.js';
import type { Db } from '../../src/store/schema.js';
import { importWorkbook } from '../../src/store/workbook.js';
import { counter } from './counter.js';
import { useKitchen } from './kitchen.js';
import { undisturbed } from './undisturbed.js';
import { by, smallKitchen } from './world.js';

/*
 * What sheets are calculated from is kept in memory between two pages. Pastry of 600 g flour is kept; whatever then
 * becomes of it, the next page shows what stands in the database, never what is kept.
 */
const kitchen = useKitchen();

const flourIn = async (db: Db = kitchen.db) => {
  const facts = await loadFacts(db, { recipes: ['tart'] });
  return facts?.recipes.get('pastry')?.lines.map(({ amount }) => amount);
};
const withFlour = (amount: string) => (doc: Recipe) => ({
  ...doc,
  lines: doc.lines.map((line) => ({ ...line, amount })),
});
const save = async (db: Parameters<typeof editIn>[0], amount: string) =>
  editIn(db, 'recipe', 'pastry', {
    ...by,
    revision: (await read(db, 'recipe', 'pastry'))!.revision,
    change: withFlour(amount),
  });

test('what did not change is not read again', async () => {
  const cold = counter();
  const first = await loadFacts(kitchen.db.withPlugin(cold), { recipes: ['tart'] });
  const warm = counter();
  const second = await loadFacts(kitchen.db.withPlugin(warm), { recipes: ['tart'] });
  expect(cold.count - warm.count).toBe(2);
  expect(second?.recipes.get('pastry')).toBe(first?.recipes.get('pastry'));
  expect(second?.ingredients.get('leek')).toBe(first?.ingredients.get('leek'));
});

test('while nothing is saved an event is not read again; after any save, what changed alone is', async () => {
  const asked = async () => {
    const queries = counter();
    const found = await eventFacts(kitchen.db.withPlugin(queries), ['party']);
    return { queries: queries.count, flour: found!.facts.recipes.get('pastry')!.lines[0]!.amount, found };
  };
  const first = await asked();
  const again = await undisturbed(kitchen.db, async () => [await asked(), await asked()][1]!);
  expect([first.flour, again.flour, again.queries]).toEqual(['600', '600', 1]);
  expect(again.found!.facts.recipes.get('pastry')).toBe(first.found!.facts.recipes.get('pastry'));
  // What is worked out from facts is kept with them, and every page works out its own.
  expect(again.found!.facts).not.toBe(first.found!.facts);
  await saving(kitchen.db, (trx) => save(trx, '700'));
  const after = await asked();
  expect(after.flour).toBe('700');
  expect(first.queries - after.queries).toBe(1);
  expect(after.found!.facts.ingredients.get('leek')).toBe(first.found!.facts.ingredients.get('leek'));
});

test('an event, the kitchen and its places are read again when they are saved, and nobody changes what was read', async () => {
  const { db } = kitchen;
  const shown = async () => {
    const { events, facts } = (await eventFacts(db, ['party']))!;
    return [events[0]!.name, facts.kitchen.name, facts.places.get('barn')!.name];
  };
  expect(await shown()).toEqual(['Party in the barn', 'Mill Lane', 'Barn']);
  for (const [entity, key] of [
    ['event', 'party'],
    ['kitchen', 'kitchen'],
    ['place', 'barn'],
  ] as const) {
    const { revision } = (await read(db, entity, key))!;
    await edit(db, entity, key, { ...by, revision, change: (doc) => ({ ...doc, name: `New ${key}` }) });
  }
  expect(await shown()).toEqual(['New party', 'New kitchen', 'New barn']);
  const { events, stored } = (await eventFacts(db, ['party']))!;
  expect(() => events[0]!.courses.pop()).toThrow(TypeError);
  expect(() => events.pop()).toThrow(TypeError);
  expect(() => Object.assign(stored[0]!, { revision: 0 })).toThrow(TypeError);
});

test('a page that began before a save shows all of it as it stood then, the next one what was saved', async () => {
  const { db, engine } = kitchen;
  // The embedded engine has one connection: nothing can be saved while a page reads.
  const meanwhile = engine === 'postgresql';
  const saved = () => saving(db, (trx) => save(trx, '800'));
  const [before, after] = await consistently(db, async (trx) => {
    const first = await flourIn(trx);
    if (meanwhile) await saved();
    if (meanwhile) expect(await flourIn()).toEqual(['800']);
    return [first, await flourIn(trx)];
  });
  expect([before, after]).toEqual([['600'], ['600']]);
  if (!meanwhile) await saved();
  expect(await consistently(db, (trx) => flourIn(trx))).toEqual(['800']);
});

test('a save is seen by the next page, within its own transaction too, and one that fails leaves nothing', async () => {
  expect(await flourIn()).toEqual(['600']);
  const failed = saving(kitchen.db, async (trx) => {
    await save(trx, '700');
    expect(await flourIn(trx)).toEqual(['700']);
    throw new Error('the rest of this save fails');
  });
  await expect(failed).rejects.toThrow('the rest of this save fails');
  expect(await flourIn()).toEqual(['600']);
  // The same revision number as the failed one had, and other facts.
  await saving(kitchen.db, (trx) => save(trx, '800'));
  expect(await flourIn()).toEqual(['800']);
});

test('who is prepared when follows a step that may now be done earlier', async () => {
  const { db } = kitchen;
  const on = (date: string) => preparedOn(db, { from: date, to: date });
  await edit(db, 'event', 'party', {
    ...by,
    revision: (await read(db, 'event', 'party'))!.revision,
    change: (doc) => ({ ...doc, state: 'confirmed' as const }),
  });
  expect([await on('2026-11-28'), await on('2026-11-25')]).toEqual([['party'], []]);
  await edit(db, 'recipe', 'tart', {
    ...by,
    revision: (await read(db, 'recipe', 'tart'))!.revision,
    change: (doc) => ({ ...doc, steps: doc.steps.map((step) => ({ ...step, daysAhead: 3 })) }),
  });
  expect([await on('2026-11-25'), await on('2026-11-24')]).toEqual([['party'], []]);
});

test('what is removed and added again under its key is the new one', async () => {
  const { db } = kitchen;
  const crust = { ...(await read(db, 'recipe', 'pastry'))!.doc, key: 'crust', name: 'Crust' };
  const added = (amount: string) => saving(db, (trx) => add(trx, 'recipe', withFlour(amount)(crust), by));
  const shown = async () =>
    (await loadFacts(db, { recipes: ['crust'] }))?.recipes.get('crust')?.lines.map(({ amount }) => amount);
  await added('610');
  expect(await shown()).toEqual(['610']);
  const { revision } = (await read(db, 'recipe', 'crust'))!;
  expect(await remove(db, 'recipe', 'crust', { ...by, revision })).toMatchObject({ outcome: 'removed' });
  expect(await shown()).toBeUndefined();
  await added('620');
  expect(await shown()).toEqual(['620']);
});

test('a row that another program writes is read again, whatever its revision', async () => {
  await flourIn();
  await kitchen.db.updateTable('recipe').set({ name: 'Rough puff' }).where('key', '=', 'pastry').execute();
  const facts = await loadFacts(kitchen.db, { recipes: ['tart'] });
  expect(facts?.recipes.get('pastry')?.name).toBe('Rough puff');
});

test('an imported kitchen takes the place of the one kept', async () => {
  await flourIn();
  const { recipes, ...rest } = smallKitchen();
  const other = {
    ...rest,
    recipes: recipes.map((one) => (one.key === 'pastry' ? withFlour('550')(one) : one)),
  };
  await importWorkbook(kitchen.db, other, { ...by, dataDir: kitchen.dataDir });
  expect(await flourIn()).toEqual(['550']);
});

test('nobody can change what is kept', async () => {
  const facts = await loadFacts(kitchen.db, { recipes: ['tart'] });
  expect(() => facts!.recipes.get('pastry')!.lines.pop()).toThrow(TypeError);
  expect(() => Object.assign(facts!.ingredients.get('leek')!.packs[0]!, { preferred: false })).toThrow(
    TypeError,
  );
});
