import { expect, test } from 'vitest';
import { inOrder, placesInOrder } from '../../src/web/listing.js';

const named = (...names: string[]) => names.map((name) => ({ name }));

test('names stand in the order of the kitchen’s language, figures by their worth', () => {
  const order = (locale: string) =>
    inOrder(named('Öl', 'Zander', 'Oven 10', 'Oven 2'), locale).map(({ name }) => name);
  expect(order('de-DE')).toEqual(['Öl', 'Oven 2', 'Oven 10', 'Zander']);
  expect(order('sv-SE')).toEqual(['Oven 2', 'Oven 10', 'Zander', 'Öl']);
});

test('the home kitchen leads the places, whatever its name', () => {
  const places = [
    { name: 'Barn', kind: 'venue' as const },
    { name: 'Zoë’s', kind: 'home' as const },
    { name: 'Abbey', kind: 'venue' as const },
  ];
  expect(placesInOrder(places, 'en-GB').map(({ name }) => name)).toEqual(['Zoë’s', 'Abbey', 'Barn']);
});
