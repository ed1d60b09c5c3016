import { expect, test } from 'vitest';
import { ingredient } from '../../src/core/facts/ingredient.js';
import { figuresOf, foodOf, foods, foodsLike, namesOf, wholeDespite } from '../../src/core/foods.js';

const namesLike = (name: string) => foodsLike(name).map((food) => food.name);

test('there are at least 250 foods, and no name means two of them', () => {
  expect(foods.length).toBeGreaterThanOrEqual(250);
  const names = foods.flatMap((food) => namesOf(food).map((name) => name.toLowerCase()));
  expect(names.filter((name, at) => names.indexOf(name) !== at)).toEqual([]);
});

test('an ingredient finds the reference food of its name', () => {
  expect(namesLike('Leek')[0]).toBe('Leek');
  expect(namesLike('Leeks, trimmed')[0]).toBe('Leek');
  expect(namesLike('Carrots')[0]).toBe('Carrot');
  expect(namesLike('Stardust')).toEqual([]);
});

test('slips, plurals and the first letters find it', () => {
  for (const [typed, name] of [
    ['plain flower', 'Plain flour'],
    ['courgettes', 'Courgette'],
    ['cour', 'Courgette'],
    ['zuchini', 'Courgette'],
    ['spring onion', 'Spring onion'],
    ['tomatoe', 'Tomato'],
    ['gruyere', 'Gruyère'],
  ] as const)
    expect(namesLike(typed)[0], typed).toBe(name);
  expect(namesLike('c')).toEqual([]);
});

test('cooks of all four Englishes find their own word', () => {
  for (const [typed, id] of [
    ['zucchini', 'courgette'],
    ['eggplant', 'aubergine'],
    ['cilantro', 'coriander-fresh'],
    ['scallions', 'spring-onion'],
    ['capsicum', 'pepper-sweet-red'],
    ['bell pepper', 'pepper-sweet-red'],
    ["confectioners' sugar", 'sugar-icing'],
    ['confectioners sugar', 'sugar-icing'],
    ['all-purpose flour', 'flour-plain'],
    ['rutabaga', 'swede'],
    ['rockmelon', 'melon'],
    ['arugula', 'rocket'],
    ['silverbeet', 'chard'],
    ['kumara', 'sweet-potato'],
    ['bicarb soda', 'bicarbonate-of-soda'],
    ['cornstarch', 'cornflour'],
    ['heavy cream', 'cream-double'],
    ['ground beef', 'beef-mince'],
    ['minced lamb', 'lamb-mince'],
    ['shrimp', 'prawns'],
    ['garbanzo beans', 'chickpeas-dried'],
    ['snow peas', 'sugar-snaps'],
  ] as const)
    expect(foodsLike(typed)[0]?.id, typed).toBe(id);
});

test('the figures carry their item number, and leave out what is not published', () => {
  const leek = figuresOf(foodOf('leek')!);
  expect(leek.edibleYield).toEqual({
    yield: '0.44',
    source: 'USDA SR28 11246, less tops, root end and skin',
  });
  expect(figuresOf(foodOf('almonds')!).edibleYield).toBeNull();
});

test('cooked yields say what they start from', () => {
  expect(figuresOf(foodOf('lamb-leg')!).cookedYields).toEqual([
    {
      name: 'roasted',
      yield: '0.584',
      from: 'bought',
      source: 'USDA SR28 17012, piece, cooked, excluding refuse (yield from 1 lb raw meat with refuse) 265 g',
    },
  ]);
  expect(figuresOf(foodOf('cod')!).cookedYields[0]).toMatchObject({
    from: 'prepared',
    source: 'USDA SR28 15016, fillet 180 g of 231 g raw (15015)',
  });
});

test('a leek entered as eaten whole is worth a look; butter and a leek at 44 % are not', () => {
  const at = (name: string, share: string) =>
    wholeDespite(ingredient.parse({ key: 'x', name, edibleYield: { yield: share } }))?.item;
  expect(at('Leeks', '1')).toBe('11246');
  expect(at('Eggplants', '1')).toBe('11209');
  expect(at('Leek', '0.44')).toBeUndefined();
  expect(at('Butter, unsalted', '1')).toBeUndefined();
});

test('every food makes figures that an ingredient can keep', () => {
  for (const food of foods)
    expect(ingredient.safeParse({ key: 'x', name: food.name, ...figuresOf(food) }).error).toBeUndefined();
});
