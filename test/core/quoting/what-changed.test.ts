import { describe, expect, test } from 'vitest';
import { whatChanged } from '../../../src/core/quoting/what-changed.js';
import { dish, factsOf, food, pack } from '../small.js';
import { kitchenAt, quoteOf, supper, ways } from './quoted.js';

const issued = kitchenAt(2500);
const quoted = quoteOf(supper(), issued);

// 46 guests eat 4.6 kg of salmon: at 25.00 a kilo 115.00, all else 717.42: 832.42 of 1,196.00 leave 30.40 per cent. At
// 27.00, up 8 per cent, it is 9.20 more, 841.62, which leaves 29.63.
describe('a price that moves after a quote was issued', () => {
  const changed = whatChanged(quoted, supper(), kitchenAt(2700));

  test('is said with what it does to the margin, and what was issued stands', () => {
    expect(changed.then).toMatchObject({ net: 119600, cost: { total: 83242 } });
    expect(changed.then?.margin?.toFixed(2)).toBe('30.40');
    expect(changed.now.cost.total).toBe(84162);
    expect(changed.now.margin?.toFixed(2)).toBe('29.63');
    expect(changed.moved.map(({ name, percent, by }) => [name, percent?.toString(), by.toString()])).toEqual([
      ['Salmon', '8', '920'],
    ]);
    expect(changed.sentences).toEqual(['Salmon is up 8 % since quote 2; margin 30.4 is now 29.6.']);
    expect(changed.needsQuote).toBe(false);
  });

  test('may fall, by a part of a per cent, or not be known any more', () => {
    expect(whatChanged(quoted, supper(), kitchenAt(2490)).sentences[0]).toMatch(
      /^Salmon is down 0\.4 % since/,
    );
    const open = kitchenAt(2500);
    const salmon = { ...open.ingredients.get('salmon')!, packs: [] };
    const gone = whatChanged(quoted, supper(), { ...open, ingredients: new Map([['salmon', salmon]]) });
    expect(gone).toMatchObject({ moved: [], now: { margin: undefined }, sentences: [] });
    expect(gone.now.cost.complete).toBe(false);
  });
});

// 46 guests eat 4.6 kg of salmon and 0.46 kg of butter: 1.00 more a kilo of salmon is 4.60, 2.00 more of butter 0.92. Dill
// by the bunch was priced by weight: no per cent says that. What moves the cost most comes first, butter by 20 per cent last.
test('of several prices those come first that move the cost most', () => {
  const at = (salmon: string, butter: string, dill: string) =>
    factsOf(
      [
        dish('poached-salmon', '1 portion', ['100 g salmon', '10 g butter', '1 g dill']),
        food('salmon', pack(salmon)),
        food('butter', pack(butter)),
        food('dill', { ...pack(dill), weights: [{ unit: 'bunch', grams: '20', of: 'bought' }] }),
      ],
      ways,
    );
  const before = at('1 kg at 2500', '1 kg at 1000', '1 kg at 2000');
  const after = at('1 kg at 2600', '500 g at 600', '1 bunch at 100');
  const { moved, sentences } = whatChanged(quoteOf(supper(), before), supper(), after);
  expect(moved.map(({ ingredient, by }) => [ingredient, by.toString()])).toEqual([
    ['salmon', '460'],
    ['dill', '138'],
    ['butter', '92'],
  ]);
  expect(sentences[0]).toMatch(
    /^Salmon is up 4 %, Dill is priced in another way and Butter is up 20 % since quote 2;/,
  );
});

// Wages are no ingredient: 20.00 more for all else leaves 28.7 per cent.
test('a margin that other costs move is said alone', () => {
  const costs = [{ key: 'all', name: 'All else', kind: 'other', by: { fixed: 73742 } }];
  expect(whatChanged(quoted, supper(46, { costs }), issued).sentences).toEqual(['Margin 30.4 is now 28.7.']);
  expect(whatChanged(quoted, supper(), issued)).toMatchObject({ needsQuote: false, sentences: [] });
});

describe('a party that is no longer what was quoted', () => {
  const of = (event: object, quote = quoted, facts = issued) => {
    const { needsQuote, sentences } = whatChanged(quote, { ...supper(), ...event }, facts);
    return [needsQuote, sentences[0]];
  };
  const menu = (...recipes: string[]) => ({
    courses: [
      {
        ...supper().courses[0]!,
        dishes: recipes.map((recipe) => ({ ...supper().courses[0]!.dishes[0]!, key: recipe, recipe })),
      },
    ],
  });

  test('in guests: more need another quote, fewer within its terms do not', () => {
    expect(of(supper(52))).toEqual([true, '52 guests now, 46 in quote 2: quote 3 is needed.']);
    expect(of(supper(43))).toEqual([true, '43 guests now, 46 in quote 2: quote 3 is needed.']);
    expect(of(supper(44))).toEqual([false, '44 guests now, 46 in quote 2: its terms name the price.']);
    const draft = { ...quoted, state: 'draft' as const, basis: null };
    expect(of(supper(52), draft)).toEqual([false, '52 guests now, 46 in quote 2.']);
  });

  test('in groups, menu and day', () => {
    const [adults, children] = supper().groups;
    const groups = [
      { ...adults!, guests: 40 },
      { ...children!, guests: 6 },
    ];
    expect(of({ groups })[1]).toBe('40 adults and 6 children now, 46 adults in quote 2: quote 3 is needed.');
    expect(of(menu('leek-tart'))[1]).toBe(
      'Leek tart is new on the menu; Poached salmon is no longer on it: quote 3 is needed.',
    );
    expect(of({ date: '2026-12-05' })[1]).toBe(
      'The day is 5 Dec 2026 now, 28 Nov 2026 in quote 2: quote 3 is needed.',
    );
  });

  test('what was on the menu keeps its cost of then, also when its recipe is another now', () => {
    const recipes = new Map(issued.recipes).set(
      'poached-salmon',
      dish('poached-salmon', '1 portion', ['200 g salmon']),
    );
    const { then, now } = whatChanged(quoted, supper(), { ...issued, recipes });
    expect([then?.cost.total, now.cost.total]).toEqual([83242, 94742]);
    const salmon = food('salmon', { ...pack('1 kg at 2500'), edibleYield: { yield: '1/2' } });
    const trimmed = whatChanged(quoted, supper(), { ...issued, ingredients: new Map([['salmon', salmon]]) });
    expect([trimmed.moved, trimmed.now.cost.total]).toEqual([[], 94742]);
  });

  test('a client who took another menu is not told that the first one is gone', () => {
    const [option] = quoted.offer.options;
    const options = [
      option!,
      { ...option!, key: 'other', lines: [{ words: 'guests', count: 46, each: 2000 }] },
    ];
    const other = { ...quoted, taken: 'other', offer: { ...quoted.offer, options } };
    expect(of(menu('leek-tart'), other)).toEqual([false, undefined]);
    const { then, now } = whatChanged(other, supper(), issued);
    expect([then, now.net]).toEqual([undefined, 92000]);
  });
});
