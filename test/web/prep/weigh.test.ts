import { expect, test } from 'vitest';
import { byKey } from '../../../src/core/facts/facts.js';
import { inWords } from '../../../src/core/quantity/show.js';
import { requirementsOf } from '../../../src/core/requirements.js';
import { weighLines } from '../../../src/web/prep/lines.js';
import { dish, factsOf, food, party } from '../../core/small.js';

// 40 guests of a recipe for 10: 8–12 cloves; 5 kg of roast lamb come from 8.6 kg, salt is tasted first; water at 65 %
// of 2 kg of flour.
test('what is weighed out is said with both ends, once cooked, from what, and what to taste first', () => {
  const lines = [
    '2-3 clove garlic',
    '1250 g lamb once roasted',
    '5 g salt',
    '500 g flour flour',
    '65 percent water',
  ];
  const facts = factsOf([
    dish('roast', '10 portions', lines),
    food('garlic'),
    food('lamb', { cookedYields: [{ name: 'roasted', yield: '0.584', from: 'bought' }] }),
    food('salt'),
    food('flour'),
    food('water', { notBought: true }),
  ]);
  const [need] = requirementsOf(party(40, ['roast']), facts)[0]!.dishes[0]!.recipes;
  const said = weighLines(need!.lines, need!.recipe, { ...facts, recipes: byKey([need!.recipe]) }).map(
    ({ amount, name, preparation, from }) => [
      amount && inWords(amount),
      name,
      preparation,
      from && inWords(from),
    ],
  );
  expect(said).toEqual([
    ['8–12 cloves', 'Garlic', '', undefined],
    ['5.0 kg', 'Lamb', 'once roasted', '8.6 kg'],
    ['20 g', 'Salt', 'hold some back and taste', undefined],
    ['2.0 kg', 'Flour', '', undefined],
    ['1.3 kg', 'Water', '', undefined],
  ]);
});
