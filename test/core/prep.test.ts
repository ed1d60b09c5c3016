import { describe, expect, test } from 'vitest';
import type { Event } from '../../src/core/facts/event.js';
import type { Facts } from '../../src/core/facts/facts.js';
import { prepFor } from '../../src/core/prep.js';
import { dish, factsOf, food, party, steps } from './small.js';

const jobsOf = (events: Event[], facts: Facts) =>
  prepFor(events, facts).value.flatMap(({ stations }) => stations.flatMap(({ jobs }) => jobs));
const base = [
  dish('pie', '12 portions', ['3 kg @ragu'], steps({ daysAhead: 1 }, { daysAhead: 0 })),
  dish('ragu', '4 kg', ['600 ml @sauce'], steps({ daysAhead: 1 })),
  dish('sauce', '2 l', ['500 ml @stock'], steps({ daysAhead: 0 })),
  dish('stock', '3 l', ['8 kg bones'], steps({ daysAhead: 2 })),
  food('bones'),
];

describe('several events', () => {
  const facts = factsOf(base);
  const two = [party(12, ['pie'], { key: 'a' }), party(24, ['pie'], { key: 'b' })];

  // 12 and 24 guests are 1 and 2 batches of pie on the same day: 3 together, with the share of each.
  test('one step on one day is one job, with each event’s share', () => {
    const filling = jobsOf(two, facts).find(
      ({ step, recipe }) => recipe.key === 'pie' && step?.key === 's0',
    )!;
    expect(filling.batches!.toString()).toBe('3');
    expect(filling.shares.map(({ event, batches }) => `${event.key} ${batches}`)).toEqual(['a 1', 'b 2']);
    expect(filling.lines[0]).toMatchObject({ line: { key: 'l0' } });
    expect(filling.lines[0]!.batches!.toString()).toBe('2.25'); // of ragù: 3 × 3/4
  });

  // The done event was served from a pie of another recipe under the same key: its job is its own.
  test('a done event’s jobs are not mixed with the recipes of today', () => {
    const old = dish('pie', '6 portions', ['1 kg bones', '1 kg bones'], steps({ daysAhead: 1 }));
    const { kitchen, places, ingredients } = facts;
    const served = {
      date: '2026-11-28',
      kitchen,
      places: [...places.values()],
      ingredients: [...ingredients.values()],
      recipes: [old],
    };
    const events = [two[0]!, { ...two[1]!, state: 'done' as const, served }];
    const filling = jobsOf(events, facts).filter(
      ({ step, recipe }) => recipe.key === 'pie' && step?.key === 's0',
    );
    expect(filling.map(({ batches, lines }) => `${batches} ${lines.length}`).sort()).toEqual(['1 1', '4 2']);
  });
});

test('trays, minutes and the use-by day', () => {
  const oven = { oven: { heat: 180 }, portionsPerShelf: '12', minutes: 40, attended: false };
  const tart = dish('tart', '24 portions', ['1 kg leek'], {
    ...steps({ minutes: 20 }, oven, {}),
    keepingDays: 2,
  });
  const facts = factsOf([tart, food('leek')]);
  const [day] = prepFor([party(40, ['tart'])], facts).value;
  const [bench, hot, cold] = day!.stations;
  expect([bench!.attended, bench!.untimed, day!.attended, day!.untimed]).toEqual([20, 0, 20, 1]);
  expect([cold!.station, cold!.again, cold!.untimed]).toEqual(['Bench', true, 1]);
  expect([hot!.station, hot!.jobs[0]!.trays, hot!.jobs[0]!.useBy]).toEqual(['Oven', 4, '2026-11-30']);
  expect(hot!.jobs[0]!.makes).toMatchObject({ base: 'portion' });
  expect(hot!.jobs[0]!.makes!.value.toString()).toBe('40');
});

test('without steps a recipe is listed whole on the day it is used, and said so', () => {
  const facts = factsOf([dish('soup', '10 portions', ['1 kg leek']), food('leek')]);
  const { value, problems } = prepFor([party(10, ['soup'])], facts);
  expect(value[0]).toMatchObject({ date: '2026-11-28', jobs: 1, untimed: 1 });
  expect(problems.map(({ code }) => code)).toContain('no-steps');
});

test('what goes in to taste, or is eaten by nobody, is listed without a quantity', () => {
  const facts = factsOf([
    dish('soup', '10 portions', ['1 kg leek', 'taste @aioli']),
    dish('aioli', '500 g', ['1 kg leek']),
    food('leek'),
  ]);
  const aioli = jobsOf([party(10, ['soup'])], facts).find(({ recipe }) => recipe.key === 'aioli')!;
  expect(aioli.makes).toBeUndefined();
  expect(jobsOf([party(0, ['soup'])], facts).map(({ makes }) => makes)).toEqual([undefined, undefined]);
});

test('components stand before what uses them', () => {
  const facts = factsOf([
    dish('pie', '12 portions', ['3 kg @ragu', '100 ml @stock']),
    dish('ragu', '4 kg', ['600 ml @stock']),
    dish('stock', '3 l', ['8 kg bones']),
    food('bones'),
  ]);
  const order = jobsOf([party(12, ['pie'])], facts).map(({ recipe }) => recipe.key);
  expect(order).toEqual(['stock', 'ragu', 'pie']);
});
