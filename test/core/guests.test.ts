import { describe, expect, test } from 'vitest';
import { dietName, isDiet, judgeGuest } from '../../src/core/diets.js';
import { type Guest, guest } from '../../src/core/facts/event.js';
import { traits } from '../../src/core/facts/traits.js';
import { dish, factsOf, food, labelled } from './small.js';

const plain = { traits: Object.fromEntries(traits.map((trait) => [trait, 'no'])) };
const said = (more: object) => ({ ...labelled(), traits: { ...plain.traits, ...more } });
const read = (labelText: string) => ({ labelText, labelDate: '2026-01-05' });
const own = [
  { key: 'no-onion', name: 'no onion', kind: 'medical', avoidsIngredients: ['onion'] },
  { key: 'no-tree-nuts', name: 'no tree nuts', kind: 'allergen', avoidsAllergens: ['nuts'] },
  { key: 'dry', name: 'dry', kind: 'medical', avoidsTraits: ['alcohol'], avoidsAllergens: ['milk'] },
];
const facts = factsOf(
  [
    ...[
      'onion',
      'jar',
      'stock',
      'wine',
      'chicken',
      'almonds',
      'crisp',
      'honey',
      'leek',
      'former',
      'pear',
      'salt',
    ].map((one) => dish(`${one}-dish`, '1 portion', [`1 g ${one}`])),
    dish('deep', '1 portion', ['1 portion @onion-dish']),
    dish('both', '1 portion', ['1 g crisp', '1 g jar']),
    food('onion', { ...said({}), name: 'Onions, red' }),
    food('jar'),
    food('stock', { ...said({}), ...read('water, salt, ONION powder, **celery**') }),
    food('wine', said({ alcohol: 'yes' })),
    food('chicken', said({ meat: 'yes', poultry: 'yes' })),
    food('almonds', { ...said({}), ...labelled({ contains: ['almond'] }) }),
    food('crisp', { ...said({}), ...labelled({ may: ['milk'] }) }),
    food('honey', said({ honey: 'yes' })),
    food('leek', { ...said({}), ...read('leeks, spring onions too') }),
    food('salt', plain),
    food('former', { ...said({}), labelText: 'water, salt', labelDate: null }),
    food('pear', { ...said({}), allergens: { milk: { state: 'free', source: 'cook', by: 'R.T.' } } }),
  ],
  { diets: own },
);
const ana = (more: object): Guest => guest.parse({ key: 'ana', name: 'Ana', group: 'adults', ...more });
const judged = (more: object, recipe: string) =>
  judgeGuest(ana(more), facts.recipes.get(recipe) ?? facts.recipes.get(`${recipe}-dish`)!, facts);
const verdict = (more: object, recipe: string) => judged(more, recipe).verdict;

describe('dislikes', () => {
  const noOnion = { avoids: ['onion'] };
  test('an ingredient, through any depth, and one that a label names by its name', () => {
    expect([verdict(noOnion, 'onion'), verdict(noOnion, 'deep'), verdict(noOnion, 'stock')]).toEqual([
      'no',
      'no',
      'no',
    ]);
    expect(judged(noOnion, 'deep').reasons).toMatchObject([
      { diet: '', because: 'onion', through: [{ key: 'deep' }, { key: 'onion-dish' }] },
    ]);
    expect(verdict(noOnion, 'leek')).toBe('no');
    expect(verdict(noOnion, 'wine')).toBe('yes');
  });
  test('nobody knows what is in a jar of which nothing was ever said', () => {
    expect(verdict(noOnion, 'jar')).toBe('unknown');
  });
  test('nor what is in a pack of which only the words of a pack before are kept', () => {
    expect(verdict(noOnion, 'former')).toBe('unknown');
    expect(verdict({ diets: ['no-onion'] }, 'former')).toBe('unknown');
  });
  test('traces do not count', () => {
    expect(verdict({ avoids: ['onion'] }, 'crisp')).toBe('yes');
  });
});

describe('diets of the kitchen’s own', () => {
  test('ingredients, a group of allergens with each of its substances, and traits', () => {
    expect([verdict({ diets: ['no-onion'] }, 'onion'), verdict({ diets: ['no-onion'] }, 'jar')]).toEqual([
      'no',
      'unknown',
    ]);
    expect(verdict({ diets: ['no-tree-nuts'] }, 'almonds')).toBe('no');
    expect(verdict({ diets: ['no-tree-nuts'] }, 'jar')).toBe('unknown');
    expect(verdict({ diets: ['dry'] }, 'wine')).toBe('no');
    expect(verdict({ diets: ['dry'] }, 'crisp')).toBe('may');
    expect(verdict({ diets: ['dry', 'no-tree-nuts'] }, 'onion')).toBe('yes');
  });
  test('a label marked for the law’s allergens says nothing of others that could harm', () => {
    expect(verdict({ diets: ['no-onion'] }, 'wine')).toBe('unknown');
    expect(verdict({ diets: ['no-onion'] }, 'salt')).toBe('unknown');
    expect(verdict({ avoids: ['onion'] }, 'wine')).toBe('yes');
    expect(verdict({ diets: ['no-onion'] }, 'pear')).toBe('yes');
  });
  test('known by name in their kitchen alone', () => {
    expect([dietName('dry', facts.kitchen), isDiet('dry', facts.kitchen), isDiet('dry')]).toEqual([
      'dry',
      true,
      false,
    ]);
    expect(
      judgeGuest(
        ana({ diets: ['dry'] }),
        facts.recipes.get('onion-dish')!,
        factsOf([...facts.recipes.values(), ...facts.ingredients.values()]),
      ).verdict,
    ).toBe('unknown');
  });
});

describe('traces', () => {
  test('to whom they do not matter a may contain is a yes that keeps its reasons', () => {
    const { verdict: found, reasons } = judged({ diets: ['no-milk'], traces: false }, 'crisp');
    expect(found).toBe('yes');
    expect(reasons).toMatchObject([{ verdict: 'may', ingredient: { key: 'crisp' } }]);
    expect(verdict({ diets: ['no-milk'] }, 'crisp')).toBe('may');
  });
  test('what is not known stays so', () => {
    expect(verdict({ diets: ['no-milk'], traces: false }, 'both')).toBe('unknown');
    expect(verdict({ diets: ['no-milk'], traces: false, other: 'soft' }, 'crisp')).toBe('unknown');
  });
});

describe('what the facts cannot settle', () => {
  test('halal meat is for the client to accept; pork, lard and alcohol are out', () => {
    expect(verdict({ diets: ['halal'] }, 'chicken')).toBe('unknown');
    expect([verdict({ diets: ['halal'] }, 'wine'), verdict({ diets: ['halal'] }, 'onion')]).toEqual([
      'no',
      'yes',
    ]);
  });
  test('pregnancy and young children turn on the facts kept here alone; the rest is a caution in words', () => {
    expect([verdict({ diets: ['pregnancy'] }, 'wine'), verdict({ diets: ['pregnancy'] }, 'crisp')]).toEqual([
      'no',
      'yes',
    ]);
    expect([verdict({ diets: ['infant'] }, 'honey'), verdict({ diets: ['young-child'] }, 'honey')]).toEqual([
      'no',
      'yes',
    ]);
    expect(verdict({ diets: ['pregnancy'] }, 'jar')).toBe('unknown');
  });
});
