import { describe, expect, it } from 'vitest';
import words from '../../shared/label-words.json' with { type: 'json' };
import { allergenIds } from '../../src/core/allergens.js';
import { marksOf } from '../../src/core/label-marks.js';
import { readLabel } from '../../src/core/label-text.js';

/** "milk, wheat; may: nuts; settle: chestnut": what a text marks, contains first, and what it leaves to settle. */
const read = (text: string): string => {
  const reading = readLabel(text);
  const marks = [...marksOf(reading).values()];
  const of = (state: string) =>
    marks
      .filter((mark) => mark.state === state)
      .map(({ id }) => id)
      .sort()
      .join(', ');
  const settle = reading.unsettled.map(({ words }) => words).join(', ');
  return [of('contains'), of('may') && `may: ${of('may')}`, settle && `settle: ${settle}`]
    .filter(Boolean)
    .join('; ');
};
const table = (rows: [string, string][]) =>
  it.each(rows)('%s', (text, said) => expect(read(text)).toBe(said));

describe('in bold or capitals: Regulation (EU) No 1169/2011, article 21(1)(b)', () => {
  table([
    ['**Wheat** flour, sugar, **egg**, salt', 'eggs, wheat'],
    ['<b>Wheat</b> flour, <strong>skimmed milk</strong> powder', 'milk, wheat'],
    ['WHEAT flour (with calcium), water, BARLEY malt, yeast', 'barley, wheat'],
    ['Coconut **milk** powder', 'milk'],
    ['sugar, **chestnut**, cream', 'milk; settle: chestnut'],
    ['water, **LAIT**, sucre', 'settle: LAIT'],
    ['sugar, UHT cream, salt, MSG', 'milk'],
    ['WHEAT FLOUR, SUGAR, MILK', 'milk, wheat'],
    ['For allergens, including cereals containing gluten, see ingredients in bold.', ''],
    ['**Ingredients:** sugar, salt. **Allergy advice:** see above', ''],
    ['sugar, **', ''],
    ['whole**milk**powder, salt', 'settle: wholemilkpowder'],
    ['water, soyaLECITHIN, WHEATflour', 'settle: soyaLECITHIN, WHEATflour'],
  ]);
});

describe('a statement: Federal Food, Drug, and Cosmetic Act, section 403(w)(1)(A)', () => {
  table([
    ['Contains: milk, soya', 'milk, soya'],
    ['Contains wheat, egg and tree nuts (almonds).', 'almond, eggs, wheat'],
    ['Contains almonds and other nuts.', 'almond, nuts'],
    ['Contains: milk, glarb', 'milk; settle: glarb'],
    ['Contains: coconut', 'settle: coconut'],
    ['Contains caffeine.', ''],
    ['Salt. Contains less than 2% of: sugar, yeast', ''],
    ['CONTAINS CRUSTACEAN SHELLFISH (SHRIMP)', 'crustaceans'],
  ]);
});

describe('a may contain', () => {
  table([
    ['May contain traces of nuts', 'may: nuts'],
    ['May contain: nuts, peanuts and sesame. Contains milk.', 'milk; may: nuts, peanuts, sesame'],
    ['Ingredients: almonds, sugar. May contain other nuts.', 'almond; may: nuts'],
    ['Sugar. Made in a factory that handles wheat, milk and nuts.', 'may: milk, nuts, wheat'],
    ['Produced in a facility that also processes soy', 'may: soya'],
    ['Produced on shared equipment with peanuts', 'may: peanuts'],
    ['Made on equipment also used for peanuts', 'may: peanuts'],
    ['Made in our kitchen with butter, eggs and wheat flour', 'eggs, milk, wheat'],
    ['Baked in our bakery from milk and eggs', 'eggs, milk'],
    ['Prepared in our kitchen: milk, eggs', 'eggs, milk'],
    ['Packed in our facility, milk, egg', 'eggs, milk'],
    ['Not free from milk', 'may: milk'],
    ['Not suitable for people with a milk allergy', 'may: milk'],
    ['We cannot guarantee that this is free from nuts', 'may: nuts'],
    ['Filling (may contain nuts), wheat flour', 'wheat; may: nuts'],
    ['May contain nuts\nIngredients: milk', 'milk; may: nuts'],
    ['May contain nuts,\nmilk', 'may: milk, nuts'],
    ['Wheat flour. May contain wheat.', 'wheat'],
    ['MAY CONTAIN: **MILK**', 'may: milk'],
  ]);
});

describe('names on labels: common practice, no source, where the lists have none', () => {
  table([
    ['casein, whey powder, ghee, lactose', 'milk'],
    ['semolina', 'wheat'],
    ['spelt', 'wheat'],
    ['burghul', 'wheat'],
    ['malt extract', 'barley'],
    ['tahini', 'sesame'],
    ['albumen', 'eggs'],
    ['emulsifier: lecithin (soya)', 'soya'],
    ['groundnut oil', 'peanuts'],
    ['Brassica juncea, Apium graveolens', 'celery, mustard'],
    ['anchovies, prawns, mussels', 'crustaceans, fish, molluscs'],
    ['celeriac', 'celery'],
    [
      'milkpowder, eggwhite, mustardflour, codfish, beechnuts',
      'settle: milkpowder, eggwhite, mustardflour, codfish, beechnuts',
    ],
    ['flour, water, yeast, salt', 'settle: flour'],
    ['breadcrumbs, garlic', 'settle: breadcrumbs'],
    ['breadcrumbs (wheat flour, salt), garlic', 'wheat'],
    ['hummus, pesto, sesame, milk', 'milk, sesame'],
    ['pasta, egg. May contain wheat.', 'eggs; may: wheat; settle: pasta'],
    ['milk, milkpowder, nutrition, batch code, goat', 'milk'],
    ['ha\u00adzel\u200bnuts', 'hazelnut'],
    ['filberts, Queensland nuts, pine kernels', 'hazelnut, macadamia, pine-nut'],
    ['crème fraîche', 'milk'],
    ['shellfish', 'crustaceans, molluscs'],
    ...['220', '221', '222', '223', '224', '225', '226', '227', '228'].map((n): [string, string] => [
      `preservative E${n}`,
      'sulphites-above-10',
    ]),
    ['E 220, e-224', 'sulphites-above-10'],
    ['preservatives (202, 220)', 'sulphites-above-10'],
    ['preservative 223', 'sulphites-above-10'],
    ['sulfur dioxide', 'sulphites-above-10'],
    ['E202, E330, 220 g', ''],
  ]);
});

describe('what only sounds like an allergen', () => {
  table([
    ['no added milk', ''],
    ['free from nuts', ''],
    ['Free from milk, eggs and nuts.', ''],
    ['milk-free, nut free, non-dairy', ''],
    ['does not contain gluten', ''],
    ['not milk-free, isn’t egg free', 'eggs, milk'],
    ['sugar, free from milk, eggs', 'eggs'],
    ['eggs free range', 'eggs'],
    ['free range eggs', 'eggs'],
    ['lactose-free milk', 'milk'],
    ['gluten free oats', 'oats'],
    ['free from **milk**', 'settle: milk'],
    ['coconut milk, creamed coconut', ''],
    ['butternut squash, nutmeg, water chestnut, eggplant', ''],
    ['peanut butter', 'peanuts'],
    ['cocoa butter, shea butter', ''],
    ['oat milk', 'oats'],
    ['almond milk', 'almond'],
    ['rice flour, buckwheat', ''],
    ['lactic acid, cream of tartar', ''],
    ['butter beans, oyster mushrooms, crab apple', ''],
    ['cocoa, butter', 'milk'],
    ['Coconut\nMilk\nSugar', 'milk'],
    ['oat\nmilk', 'milk, oats'],
    ['sulphur\ndioxide', 'sulphites-above-10'],
    ['Milk\nfree range eggs', 'eggs, milk'],
    ['Free from colours, whole milk', 'milk'],
    ['Free from gluten: rice, milk powder', 'milk'],
    ['Free from: gluten, milkpowder', ''],
    ['Free from nuts, made with milk', 'milk'],
    ['Suitable for vegetarians, wheat flour', 'wheat'],
    ['Prepared with wheat flour in our bakery', 'wheat'],
    ['Made with milk in a factory that handles nuts', 'milk; may: nuts'],
    ['egg free flowing powder', 'eggs'],
    ['vegetable stock', ''],
    ['vegan cheese', ''],
    ['doughnut, coconut, nutrition', ''],
  ]);
});

describe('what a reading says beside the marks', () => {
  it('names the words, how they were meant, and what is common practice only', () => {
    const { named } = readLabel('Sugar, whey. May contain nuts.');
    expect(named).toEqual([
      {
        id: 'milk',
        state: 'contains',
        led: [{ words: 'whey', said: '', emphasised: false, why: 'by common practice' }],
      },
      { id: 'nuts', state: 'may', led: [{ words: 'nuts', said: 'May contain', emphasised: false, why: '' }] },
    ]);
  });

  it('says what it set aside, and what a name leaves open unless its own list follows', () => {
    expect(readLabel('cocoa butter, vegetable stock').aside).toEqual([
      { words: 'cocoa butter', why: 'the fat of the cocoa bean: no milk' },
      { words: 'vegetable stock', why: expect.stringContaining('its name does not say') },
    ]);
    expect(readLabel('vegetable stock (water, carrot)').aside).toEqual([]);
  });

  it('knows every allergen by name, and marks nothing that can’t be recorded', () => {
    const known = new Set(words.names.map(({ is }) => is));
    for (const id of allergenIds) if (id !== 'sulphites-at-10') expect(known, id).toContain(id);
    for (const id of known) expect(allergenIds).toContain(id);
    for (const { is, law, practice } of words.names)
      for (const word of [...law, ...practice]) expect(read(word), word).toContain(is);
  });

  it('marks nothing for any word of the tables of what is set aside or left open', () => {
    for (const { words: all } of [...words.asides, ...words.open])
      for (const word of all) expect(readLabel(word).named, word).toEqual([]);
  });
});
