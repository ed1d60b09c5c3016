import { expect, test } from 'vitest';
import { decodeText } from '../../../../src/core/exchange/csv/decode.js';
import { readRecipes } from '../../../../src/core/exchange/recipe/read-recipes.js';
import { readYield } from '../../../../src/core/exchange/recipe/yield.js';

/** Name, portions, times, lines and steps of each recipe, for reading at a glance. */
const brief = (text: string) => {
  const read = readRecipes(text);
  if ('sentence' in read) throw new Error(read.sentence);
  return read.drafts.map(({ name, yield: made, times, sections, steps }) => ({
    name,
    made: [made.portions, made.portionsTo],
    times: [times.prep, times.cook, times.total],
    lines: sections.flatMap(({ lines }) =>
      lines.map(({ read: { quantity, unit, food } }) => `${quantity ?? ''} ${unit ?? ''} ${food}`.trim()),
    ),
    steps: steps.map(({ words }) => words),
  }));
};

test('a mail that was passed on: marks of quoting, head, greeting and signature are none of the recipe', () => {
  const recipe = `Rice pudding
Serves 4

100g pudding rice
1 litre milk

Put all in a pan and simmer gently for 45 minutes, stirring often.`;
  const read = {
    name: 'Rice pudding',
    made: ['4', null],
    times: [null, null, null],
    lines: ['100 g pudding rice', '1 l milk'],
    steps: ['Put all in a pan and simmer gently for 45 minutes, stirring often.'],
  };
  expect(brief(recipe)).toEqual([read]);
  expect(brief(`Hi Jo,\n\nhere it is!\n\n${recipe}\n\nLove,\nM.`)).toEqual([read]);
  const quoted = `From: a friend\nSubject: Fwd: pudding\n\n${recipe}`.replace(/^/gm, '> ');
  expect(brief(quoted)).toEqual([read]);
  expect(brief(quoted.replace(/^/gm, '> ').replaceAll('\n', '\r\n'))).toEqual([read]);
});

test('bold words, facts in sentences, a list of equipment and steps that run on in one line', () => {
  const [draft] = brief(`**Recipe: Lamb koftas**
(for 4 people)
Preparation: 20 minutes. Cooking: 10 minutes.

**Ingredients:**
- 500g lamb mince
- 1 onion

Equipment: 12 skewers

**Method:**
1. Mix everything. 2. Shape onto skewers. 3. Grill for 10 minutes.`);
  expect(draft).toEqual({
    name: 'Lamb koftas',
    made: ['4', null],
    times: [20, 10, null],
    lines: ['500 g lamb mince', '1 each onion'],
    steps: ['Mix everything.', 'Shape onto skewers.', 'Grill for 10 minutes.'],
  });
});

test('a page: rows of a table are lines, and what readers said of it is no step', () => {
  const page = `<h1>Rolls</h1><p>Makes 12 rolls</p><h2>Ingredients</h2><table><tr><td>500 g</td><td>flour</td></tr>
<tr><td>300 ml</td><td>water</td></tr></table><h2>Method</h2><p>Knead for 10 minutes.</p><h3>Comments (2)</h3><p>Lovely!</p>`;
  expect(brief(page)[0]).toMatchObject({
    lines: ['500 g flour', '300 ml water'],
    steps: ['Knead for 10 minutes.'],
  });
});

test('data: both names of the list, and steps in the order of their positions', () => {
  const step = (position: number, text: string) => ({ '@type': 'HowToStep', position, text });
  const data = {
    '@type': 'Recipe',
    name: 'Soup',
    recipeYield: 4,
    recipeIngredient: ['1 leek', '2 carrots'],
    ingredients: ['2 carrots', '1 l stock'],
    recipeInstructions: [step(2, 'Blend.'), step(1, 'Boil.')],
  };
  expect(brief(JSON.stringify(data))[0]).toMatchObject({
    lines: ['1 each leek', '2 each carrots', '1 l stock'],
    steps: ['Boil.', 'Blend.'],
  });
});

test('for how many stands in the title or over the list; a second list that nothing announces is said', () => {
  const method = 'Boil the leek in the stock for 20 minutes, then blend until smooth.';
  for (const text of [
    `Soup (serves 4)\n\n1 leek\n1 l stock\n\n${method}`,
    `Soup\n\nIngredients for 4:\n1 leek\n1 l stock\n\nMethod\n${method}`,
    `Soup\n\nIngredients (for 4 people)\n1 leek\n1 l stock\n\nMethod\n${method}`,
  ])
    expect(brief(text)).toMatchObject([
      { name: 'Soup', made: ['4', null], lines: ['1 each leek', '1 l stock'] },
    ]);
  const two = readRecipes(
    `Jam\n1kg plums\n1kg sugar\nBoil fast for 10 minutes, then pot in warm jars.\n\nJelly\n2kg damsons\n1 l water\nBoil.`,
  );
  expect('drafts' in two && two.drafts[0]!.unsure).toContain('Another list may stand in the method.');
});

test('data: a yield with its least and most, mark-up written as entities', () => {
  const data = {
    '@type': 'Recipe',
    name: '&lt;b&gt;Stew&lt;/b&gt;',
    recipeYield: { '@type': 'QuantitativeValue', minValue: 4, maxValue: 6 },
    recipeIngredient: ['1 leek'],
  };
  expect(brief(JSON.stringify(data))[0]).toMatchObject({ name: 'Stew', made: ['4', '6'] });
});

test.each([
  ['Makes 1 loaf (10 slices)', '10', true],
  ['Makes one 20cm cake, serves 8', '8', false],
  ['Serves 6', '6', false],
])('%s', (text, portions, byPiece) => {
  expect(readYield(text).yield).toMatchObject({ text, portions, byPiece });
});

test('1.5 litres for six keeps both', () => {
  expect(readYield('Makes about 1.5 litres (serves 6)').yield).toMatchObject({
    portions: '6',
    volume: { amount: '1.5', unit: 'l' },
  });
});

test('files of older programs', () => {
  const words = 'Crème – ½ l, “200°C”, 3 €';
  expect(decodeText(Buffer.from(`\ufeff${words}`, 'utf16le')).text).toBe(words);
  expect(decodeText(Buffer.from(words)).text).toBe(words);
  const bytes = Buffer.from(
    words.replace('–', '\x96').replace('“', '\x93').replace('”', '\x94').replace('€', '\x80'),
    'latin1',
  );
  expect(decodeText(bytes).text).toBe(words);
});
