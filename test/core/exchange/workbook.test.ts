import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseWorkbook, workbookSchema, workbookText } from '../../../src/core/exchange/workbook.js';
import { anyWorkbook } from '../../arbitraries/index.js';
import { smallKitchen } from '../../store/world.js';

type Fields = { [name: string]: unknown };

/** The small kitchen with another value at one place, a path of names and keys; undefined takes the field out. */
const spoilt = (path: string, value: unknown): string => {
  const kitchen = structuredClone(smallKitchen()) as unknown as Fields;
  const steps = path.split(' ');
  const last = steps.pop() ?? '';
  let here: Fields = kitchen;
  for (const step of steps)
    here = (Array.isArray(here) ? here.find(({ key }) => key === step) : here[step]) as Fields;
  here[last] = value;
  return JSON.stringify(kitchen);
};

const faultsOf = (text: string) => {
  const parsed = parseWorkbook(text);
  return 'faults' in parsed ? parsed.faults : [];
};

const leek = smallKitchen().ingredients[1];

describe('each fault is named with its place', () => {
  test.each([
    ['recipes tart lines l1 amount', '-3', 'recipes, tart, lines, l1, amount', 'An exact figure'],
    ['recipes tart lines l1 amount', 3, 'recipes, tart, lines, l1, amount', 'in quotes'],
    ['recipes tart lines l1 item', { ingredent: 'leek' }, 'recipes, tart, lines, l1, item', 'does not fit'],
    ['recipes tart lines l1 colour', 'red', 'recipes, tart, lines, l1, colour', 'no field of this name'],
    ['recipes tart lines l1 ammount', '3', 'recipes, tart, lines, l1, ammount', 'did you mean "amount"?'],
    ['recipes tart yield', {}, 'recipes, tart, yield', 'portions, weight or volume'],
    ['recipes tart lines', 'none', 'recipes, tart, lines', 'a list in brackets'],
    ['events party date', '2026-13-01', 'events, party, date', 'A calendar day'],
    ['events party name', undefined, 'events, party, name', 'missing'],
    ['events party groups', [], 'events, party, groups', 'least'],
    ['places home kind', 'house', 'places, home, kind', '"home" or "venue"'],
    ['places home rings', -1, 'places, home, rings', 'at least 0'],
    ['version', 2, 'version', '1'],
    ['events', undefined, 'events', 'missing'],
    // and of sense, once the shape is right
    ['recipes tart lines l1 item', { ingredient: 'no-such' }, 'recipes, tart, lines, l1, item', '"no-such"'],
    [
      'recipes pastry lines l1 item',
      { component: 'tart' },
      'recipes, pastry, lines, l1, item',
      'Shortcrust → Leek tart → Shortcrust',
    ],
    ['events party place', 'moon', 'events, party, place', '"moon"'],
    ['ingredients flour name', 'LEEKS ', 'ingredients, leek, name', 'another name'],
    ['ingredients', [leek, leek], 'ingredients, leek, key', 'twice'],
    ['kitchen timeZone', 'Europe/Atlantis', 'kitchen, timeZone', 'time zone'],
    ['places home kind', 'venue', 'kitchen', 'home kitchen'],
  ])('%s = %j', (path, value, place, words) => {
    const found = faultsOf(spoilt(path, value)).find((fault) => fault.place === place);
    expect(found?.sentence).toContain(words);
  });

  test('all faults of a file are named, not the first alone', () => {
    const text = spoilt('recipes tart lines l1 amount', '-3').replace('"rings":0', '"rings":"none"');
    expect(faultsOf(text)).toHaveLength(2);
  });

  test.each(['', '{', 'PK\u0003\u0004', '[]', 'null', '{"format":"something-else"}'])(
    '%j is no workbook',
    (text) => {
      expect(faultsOf(text).length).toBeGreaterThan(0);
      expect(JSON.stringify(faultsOf(text))).not.toMatch(/invalid|oops/i);
    },
  );
});

test('a file with its fields and documents in any order gives one text', () => {
  const shuffled = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(shuffled);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(
      Object.entries(value)
        .map(([name, one]) => [name, shuffled(one)] as const)
        .toReversed(),
    );
  };
  fc.assert(
    fc.property(anyWorkbook, (workbook) => {
      const other = shuffled({
        ...workbook,
        places: workbook.places.toReversed(),
        ingredients: workbook.ingredients.toReversed(),
        recipes: workbook.recipes.toReversed(),
        events: workbook.events.toReversed(),
      });
      expect(workbookText(other as typeof workbook)).toBe(workbookText(workbook));
    }),
    { numRuns: 50 },
  );
});

test('what is written is read back as it was', () => {
  fc.assert(
    fc.property(anyWorkbook, (workbook) => {
      const text = workbookText(workbook);
      const parsed = parseWorkbook(text);
      expect('workbook' in parsed && workbookText(parsed.workbook)).toBe(text);
    }),
    { numRuns: 50 },
  );
});

describe('the JSON Schema', () => {
  const schema = workbookSchema();
  const check = new Ajv2020({
    strict: false,
    formats: { 'date-time': true, date: /^\d{4}-\d\d-\d\d$/ },
  }).compile(schema);

  test('passes the example kitchen and refuses what the workbook refuses', () => {
    expect(check(smallKitchen())).toBe(true);
    expect(check(JSON.parse(spoilt('recipes tart lines l1 amount', '-3')))).toBe(false);
    expect(check(JSON.parse(spoilt('recipes tart lines l1 colour', 'red')))).toBe(false);
    expect(check(JSON.parse(spoilt('recipes tart yield', {})))).toBe(false);
  });

  test('lets a stranger leave out what has a usual value', () => {
    const { places, kitchen, ...rest } = smallKitchen();
    const short = {
      ...rest,
      kitchen: { name: 'K', currency: 'GBP', timeZone: 'UTC' },
      places: [{ key: 'h', name: 'H', kind: 'home' }],
    };
    expect(check({ ...short, events: [] })).toBe(true);
    expect(faultsOf(JSON.stringify({ ...short, events: [] }))).toEqual([]);
  });
});
