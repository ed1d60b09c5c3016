import { describe, expect, test } from 'vitest';
import { dietName, isDiet, judgeRecipe, traitOf } from '../../src/core/diets.js';
import { traits } from '../../src/core/facts/ingredient.js';
import { type AllergenListId, allergenLists } from '../../src/core/facts/kitchen.js';
import { dish, factsOf, food, labelled } from './small.js';

/** Every trait said to be no, but for those named. */
const said = (more: Record<string, string> = {}) => ({
  traits: { ...Object.fromEntries(traits.map((trait) => [trait, 'no'])), ...more },
});
const verdict = (diet: string, ...foods: object[]) => {
  const eaten = foods.map((more, at) => food(`food${at}`, more));
  const facts = factsOf([
    dish(
      'plate',
      '1 portion',
      eaten.map(({ key }) => `1 g ${key}`),
    ),
    ...eaten,
  ]);
  return judgeRecipe([diet], facts.recipes.get('plate')!, facts).verdict;
};

describe('an allergy turns on the label', () => {
  test.each([
    ['no-milk', labelled({ contains: ['milk'] }), 'no'],
    ['no-milk', labelled({ may: ['milk'] }), 'may'],
    ['no-milk', labelled(), 'yes'],
    ['no-milk', {}, 'unknown'],
    ['coeliac', labelled({ contains: ['oats'] }), 'no'],
    ['no-wheat', labelled({ contains: ['rye'] }), 'yes'],
    ['no-wheat', labelled({ contains: ['triticale'] }), 'no'],
    ['no-wheat', { allergens: { gluten: { state: 'contains' } } }, 'no'],
    ['no-nuts', { allergens: { nuts: { state: 'may' } } }, 'unknown'],
    ['no-nuts', { allergens: { nuts: { state: 'contains' } } }, 'no'],
    ['no-nuts', labelled({ may: ['almond'] }), 'may'],
    ['no-nuts', { allergens: { nuts: { state: 'free' } } }, 'unknown'],
    ['no-nuts', labelled({ contains: ['pine-nut'] }), 'no'],
    ['no-sulphites', labelled({ contains: ['sulphites-at-10'] }), 'no'],
    ['no-sulphites', labelled({ may: ['sulphites-at-10'] }), 'may'],
  ])('%s, %o: %s', (diet, more, expected) => {
    expect(verdict(diet, more)).toBe(expected);
  });
});

// Canada, and Australia and New Zealand, begin at 10 mg: their card says sulphites, and so must what a guest is told.
test('what the list in force asks at exactly 10 mg is asked for who eats no sulphites', () => {
  const { 'sulphites-at-10': _, ...above } = labelled().allergens;
  const facts = factsOf([dish('plate', '1 portion', ['1 g raisins']), food('raisins', { allergens: above })]);
  const under = (allergenList: AllergenListId) =>
    judgeRecipe(['no-sulphites'], facts.recipes.get('plate')!, {
      ...facts,
      kitchen: { ...facts.kitchen, allergenList },
    }).verdict;
  expect(allergenLists.map((list) => [list, under(list)])).toEqual([
    ['eu', 'yes'],
    ['us', 'yes'],
    ['ca', 'unknown'],
    ['anz', 'unknown'],
  ]);
});

// ISO 23662:2021 does not speak of allergens: traces and unread labels don't count against a choice.
describe('a choice or a faith turns on what is in the dish', () => {
  test.each([
    ['vegan', { ...said(), ...labelled({ may: ['milk', 'eggs'] }) }, 'yes'],
    ['vegan', said(), 'yes'],
    ['vegan', { ...said(), ...labelled({ contains: ['milk'] }) }, 'no'],
    ['vegan', { ...labelled(), ...said({ honey: 'unknown' }) }, 'unknown'],
    ['vegan', { ...said({ dairy: 'unknown' }), ...labelled() }, 'yes'],
    ['vegetarian', said({ rennet: 'yes' }), 'no'],
    ['pescatarian', said({ fish: 'yes' }), 'yes'],
    ['no-pork', said({ gelatine: 'unknown' }), 'unknown'],
    ['no-alcohol', said({ alcohol: 'yes' }), 'no'],
    ['vegan', {}, 'unknown'],
  ])('%s, %#: %s', (diet, more, expected) => {
    expect(verdict(diet, more)).toBe(expected);
  });
});

test('the hardest verdict of everything in the dish stands: no, then not known, then may contain', () => {
  const [contains, may] = [labelled({ contains: ['milk'] }), labelled({ may: ['milk'] })];
  expect(verdict('no-milk', labelled(), may, {}, contains)).toBe('no');
  expect(verdict('no-milk', labelled(), may, {})).toBe('unknown');
  expect(verdict('no-milk', labelled(), may)).toBe('may');
});

describe('what one fact says of another', () => {
  const of = (more: object) => food('food', more);
  test('pork is meat, no meat is no pork, and a label that names milk outdoes a no', () => {
    expect(traitOf(of({ traits: { pork: 'yes' } }), 'meat')).toBe('yes');
    expect(traitOf(of({ traits: { meat: 'no' } }), 'poultry')).toBe('no');
    expect(traitOf(of({ traits: { meat: 'no' } }), 'lard')).toBe('unknown');
    expect(traitOf(of({ ...labelled({ contains: ['milk'] }), traits: { dairy: 'no' } }), 'dairy')).toBe(
      'yes',
    );
    expect(traitOf(of(labelled()), 'shellfish')).toBe('no');
    expect(traitOf(of({ allergens: { crustaceans: { state: 'free' } } }), 'shellfish')).toBe('unknown');
  });
});

test('a diet nobody knows, and a recipe without lines, are never told yes', () => {
  const facts = factsOf([
    dish('plate', '1 portion', ['1 g leek']),
    dish('cake', '1 portion', []),
    food('leek', { ...labelled(), ...said() }),
  ]);
  const judged = (diets: string[], recipe: string) =>
    judgeRecipe(diets, facts.recipes.get(recipe)!, facts).verdict;
  expect(judged(['moonlight'], 'plate')).toBe('unknown');
  expect([judged(['vegan'], 'cake'), judged(['no-milk'], 'cake')]).toEqual(['unknown', 'unknown']);
  expect([judged([], 'cake'), judged(['vegan', 'no-milk'], 'plate')]).toEqual(['yes', 'yes']);
  expect([isDiet('moonlight'), dietName('no-milk')]).toEqual([false, 'no milk']);
});

test('the reasons name what stands against it and the way it comes in', () => {
  const facts = factsOf([
    dish('plate', '1 portion', ['1 portion @sauce', '1 g leek']),
    dish('sauce', '1 portion', ['1 g cream']),
    food('cream', { ...labelled({ contains: ['milk'] }), ...said({ dairy: 'yes' }) }),
    food('leek', { ...labelled(), ...said() }),
  ]);
  const { reasons } = judgeRecipe(['vegan'], facts.recipes.get('plate')!, facts);
  expect(
    reasons.map(({ ingredient, because, through }) => [
      ingredient.key,
      because,
      through.map(({ key }) => key),
    ]),
  ).toEqual([['cream', 'milk', ['plate', 'sauce']]]);
});
