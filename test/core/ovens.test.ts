import { describe, expect, test } from 'vitest';
import type { Event } from '../../src/core/facts/event.js';
import type { Facts } from '../../src/core/facts/facts.js';
import { place } from '../../src/core/facts/place.js';
import { latestSteps } from '../../src/core/latest.js';
import { ovenAsks, ovenProblems } from '../../src/core/ovens.js';
import { requirementsOf } from '../../src/core/requirements.js';
import { dish, factsOf, food, party, steps } from './small.js';

const said = (event: Event, facts: Facts) => {
  const days = latestSteps(event, requirementsOf(event, facts), facts);
  return ovenProblems(event, ovenAsks(event, days, facts), facts).map(({ sentence }) => sentence);
};
const kitchen = (...shelves: number[]) =>
  place.parse({
    key: 'home',
    name: 'Home',
    kind: 'home',
    ovens: shelves.map((n, at) => ({ key: `o${at}`, name: `Oven ${at + 1}`, shelves: n, hottest: 250 })),
  });
const hall = place.parse({ key: 'hall', name: 'The hall', kind: 'venue', drive: 20 });

/** Dishes of 10 guests, each 60 minutes in the oven up to service: "ham 180 10 2" at 180 °C ± 10 on 2 shelves. */
const asks = (texts: string[], places = [kitchen(4)], more: object = {}) => {
  const dishes = texts.map((text) => {
    const [key, heat, tolerance, shelves] = text.split(' ');
    const oven = { heat: Number(heat), tolerance: Number(tolerance ?? 0) };
    const portionsPerShelf = shelves ? `10/${shelves}` : null;
    const baked = { minutes: 60, attended: false, oven, portionsPerShelf, ...more };
    return dish(key!, '10 portions', ['1 kg leek'], steps(baked));
  });
  const facts = factsOf([...dishes, food('leek')], {}, places);
  const at = places.length > 1 ? { place: 'hall' } : {};
  return said(
    party(
      10,
      dishes.map(({ key }) => key),
      at,
    ),
    facts,
  );
};

describe('heats', () => {
  test('two heats at once in one oven clash, within the tolerances they don’t', () => {
    expect(asks(['ham 180 5 1', 'pie 200 5 1'])).toEqual([
      'Oven 1, 17:00 to 18:00: asked at once for Ham at 180 °C and Pie at 200 °C.',
    ]);
    expect(asks(['ham 180 10 1', 'pie 200 10 1'])).toEqual([]);
    expect(asks(['ham 180 10 1', 'pie 200 10 1', 'tart 215 5 1'])).toHaveLength(1);
  });

  test('two ovens take two heats, not three', () => {
    expect(asks(['ham 180 0 1', 'pie 200 0 1'], [kitchen(2, 2)])).toEqual([]);
    expect(asks(['ham 180 0 1', 'pie 200 0 1', 'tart 220 0 1'], [kitchen(2, 2)])).toEqual([
      'Home, ovens, 17:00 to 18:00: asked at once for Ham at 180 °C, Pie at 200 °C and Tart at 220 °C.',
    ]);
  });

  test('a heat no oven reaches, and no oven at all', () => {
    expect(asks(['pizza 300 0 1'])).toEqual([
      'Oven 1, 17:00 to 18:00: no oven goes to 300 °C, asked for by Pizza.',
    ]);
    expect(asks(['pizza 220 0 1', 'ham 180 0 1'], [kitchen()])).toEqual([
      'Home has no oven, and Pizza at 220 °C and Ham at 180 °C need one.',
    ]);
  });
});

describe('shelves', () => {
  test('more shelves than there are', () => {
    expect(asks(['ham 180 0 3', 'pie 180 0 2'])).toEqual([
      'Oven 1, 17:00 to 18:00: Ham and Pie ask for 5 shelves, there are 4.',
    ]);
    expect(asks(['ham 180 0 2', 'pie 180 0 2'])).toEqual([]);
  });

  // Three trays of ham fill one oven and half the other, at one heat; with a pie at another heat they do not.
  test('a dish may fill several ovens, at its own heat', () => {
    expect(asks(['ham 180 0 3', 'pie 180 0 1'], [kitchen(2, 2)])).toEqual([]);
    expect(asks(['ham 180 0 3', 'pie 220 0 1'], [kitchen(2, 2)])).toEqual([
      "Home, ovens, 17:00 to 18:00: Ham at 180 °C (3 of 4 shelves) and Pie at 220 °C (1 of 4 shelves) can't all be in at once.",
    ]);
  });

  // Only the cooler oven goes to 60 °C; the ham takes what the meringues leave there and one shelf of the other.
  test('a dish takes part of a shelf count so that another fits', () => {
    const ovens = [
      { key: 'a', name: 'A', shelves: 2, coolest: 50, hottest: 100 },
      { key: 'b', name: 'B', shelves: 2, coolest: 80, hottest: 250 },
    ];
    const two = place.parse({ key: 'home', name: 'Home', kind: 'home', ovens });
    expect(asks(['ham 90 30 3', 'meringue 60 0 1'], [two])).toEqual([]);
  });

  test('where a recipe does not say what a shelf holds, it counts for one', () => {
    expect(asks(['ham 180', 'pie 180', 'tart 180', 'cake 180'])).toEqual([]);
    expect(asks(['ham 180', 'pie 180', 'tart 180', 'cake 180', 'bread 180'])).toHaveLength(1);
  });
});

test('one after the other, the same oven does for both', () => {
  const facts = factsOf(
    [
      dish('ham', '10 portions', ['1 kg leek'], steps({ minutes: 60, oven: { heat: 180 } }, { minutes: 60 })),
      dish('pie', '10 portions', ['1 kg leek'], steps({ minutes: 60, oven: { heat: 220 } })),
      food('leek'),
    ],
    {},
    [kitchen(1)],
  );
  expect(said(party(10, ['ham', 'pie']), facts)).toEqual([]);
});

test('the oven of the place where a step is done is asked', () => {
  expect(asks(['ham 180 0 1', 'pie 220 0 1'], [kitchen(2, 2), hall])).toEqual([]);
  expect(asks(['ham 180 0 1'], [kitchen(2), hall], { where: 'venue' })).toEqual([
    'The hall has no oven, and Ham at 180 °C needs one.',
  ]);
});

test('many dishes and ovens are no work', () => {
  const started = performance.now();
  const many = Array.from({ length: 12 }, (_, i) => `d${i} ${150 + 10 * i} 4 1`);
  expect(asks(many, [kitchen(3, 3, 3, 3)])).toHaveLength(1);
  expect(performance.now() - started).toBeLessThan(1000);
});
