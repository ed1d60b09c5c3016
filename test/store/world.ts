import { event } from '../../src/core/facts/event.js';
import type { Workbook } from '../../src/core/facts/facts.js';
import { workbook } from '../../src/core/facts/facts.js';

/** A small kitchen: leeks and flour, a tart on its pastry, one party of forty with the tart. */
export const smallKitchen = (): Workbook =>
  workbook.parse({
    format: 'catering-workbook',
    version: 1,
    kitchen: { name: 'Mill Lane', currency: 'GBP', timeZone: 'Europe/London' },
    places: [
      { key: 'barn', name: 'Barn', kind: 'venue' },
      { key: 'home', name: 'Home kitchen', kind: 'home' },
    ],
    ingredients: [
      { key: 'flour', name: 'Plain flour' },
      {
        key: 'leek',
        name: 'Leeks',
        packs: [
          {
            key: 'sack',
            size: { amount: '5', unit: 'kg' },
            preferred: true,
            prices: [
              { key: 'p1', date: '2026-10-01', price: 900 },
              { key: 'p2', date: '2026-11-01', price: 950 },
            ],
          },
        ],
      },
    ],
    recipes: [
      {
        key: 'pastry',
        name: 'Shortcrust',
        yield: { weight: { amount: '1', unit: 'kg' } },
        lines: [{ key: 'l1', amount: '600', unit: 'g', item: { ingredient: 'flour' } }],
      },
      {
        key: 'tart',
        name: 'Leek tart',
        yield: { portions: '8' },
        lines: [
          { key: 'l1', amount: '3/4', unit: 'kg', item: { ingredient: 'leek' } },
          { key: 'l2', amount: '400', unit: 'g', item: { component: 'pastry' } },
        ],
        steps: [{ key: 's1', words: 'Bake.' }],
      },
    ],
    events: [
      event.parse({
        key: 'party',
        name: 'Party in the barn',
        client: 'A. Winter',
        date: '2026-11-28',
        place: 'barn',
        groups: [{ key: 'adults', name: 'Adults', guests: 40 }],
        guests: [{ key: 'moss', name: 'Moss', group: 'adults', diets: ['vegan'] }],
        courses: [{ key: 'main', name: 'Main', time: '18:30', dishes: [{ key: 'd1', recipe: 'tart' }] }],
      }),
    ],
  });

export const by = { who: 'Ines', at: new Date('2026-11-20T09:00:00Z') };
export const other = { who: 'Otto', at: new Date('2026-11-20T10:00:00Z') };
