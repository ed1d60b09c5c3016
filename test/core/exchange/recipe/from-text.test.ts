import { expect, test } from 'vitest';
import { readRecipes } from '../../../../src/core/exchange/recipe/read-recipes.js';

const draftsOf = (text: string) => {
  const read = readRecipes(text);
  if ('sentence' in read) throw new Error(read.sentence);
  return read.drafts.map((draft) => ({
    name: draft.name,
    source: draft.source,
    made: [draft.yield.portions, draft.yield.portionsTo],
    times: draft.times,
    lines: draft.sections.map(({ title, lines }) => [title, ...lines.map(({ read: one }) => one.food)]),
    steps: draft.steps.map(({ minutes, oven }) => [minutes, oven?.heat ?? null]),
    note: draft.note,
    unsure: draft.unsure,
  }));
};

test('a pasted recipe: title, yield, times, sections, method and notes', () => {
  expect(
    draftsOf(`Squash and lentil soup

A soup for cold evenings.

Serves 4–6 | Prep: 20 min | Cook: 45 minutes

Ingredients
700 g squash, peeled and diced
2 x 400 g tins chopped tomatoes
salt and pepper

For the topping:
2 tbsp pumpkin seeds
a handful of parsley, chopped

Method
1. Preheat the oven to 200C/180C fan/gas 6. Roast the squash for 30 minutes.
2. Add the tomatoes and simmer for 25–30 minutes.
3. Blend until smooth.

Notes
Freezes well.`),
  ).toEqual([
    {
      name: 'Squash and lentil soup',
      source: 'text',
      made: ['4', '6'],
      times: { prep: 20, cook: 45, total: null },
      lines: [
        ['', 'squash', 'chopped tomatoes', 'salt and pepper'],
        ['For the topping', 'pumpkin seeds', 'parsley'],
      ],
      steps: [
        [30, 200],
        [25, null],
        [null, null],
      ],
      note: 'A soup for cold evenings.\nFreezes well.',
      unsure: ['A range of portions is stated; a recipe goes by one of its figures.'],
    },
  ]);
});

test('without marked parts the first amount begins the list and the first sentence the method, and that is said', () => {
  const [draft] = draftsOf(`PLUM CAKE
makes 12 slices

225g/8oz butter
4 eggs
500g plums, halved and stoned
Topping
2 tbsp sugar

Grease the tin and heat the oven to 180C.
Beat the butter and eggs for about 5 minutes. Scatter the plums over.
Bake for 50 mins to 1 hour until a skewer comes out clean.`);
  expect(draft).toMatchObject({
    name: 'PLUM CAKE',
    made: ['12', null],
    lines: [
      ['', 'butter', 'eggs', 'plums'],
      ['Topping', 'sugar'],
    ],
    unsure: [
      '"Topping" is read as a heading.',
      'Where the ingredients end and the method begins is not marked.',
    ],
  });
  expect(draft!.steps.at(-1)).toEqual([50, 180]);
});

test('several recipes in a text, cut at a ruled line or at a second list', () => {
  const salad = '# Green salad\n\nServes 6\n\n## Ingredients\n- 2 lettuces\n\n## Method\nToss and serve.';
  const lamb =
    '# Lamb\n\nServes 4\n\n## Ingredients\n**For the sauce**\n- 1 kg lamb\n\n## Method\n1. Roast at 160°C for 4 hours.';
  for (const text of [`${salad}\n---\n${lamb}`, `${salad}\n\n${lamb}`]) {
    const drafts = draftsOf(text);
    expect(drafts.map(({ name, made, lines, steps }) => ({ name, made, lines, steps }))).toEqual([
      { name: 'Green salad', made: ['6', null], lines: [['', 'lettuces']], steps: [[null, null]] },
      { name: 'Lamb', made: ['4', null], lines: [['For the sauce', 'lamb']], steps: [[240, 160]] },
    ]);
  }
});

test('a list in one line, and lines that only go on', () => {
  expect(
    draftsOf('Pancakes\nIngredients: 200 g flour, 2 eggs, salt\nMethod: Stand for 30 minutes.')[0],
  ).toMatchObject({
    lines: [['', 'flour', 'eggs', 'salt']],
    steps: [[30, null]],
  });
  const wrapped = readRecipes(
    'Stew\nIngredients\n2 onions, peeled,\nhalved and sliced\n3 carrots\nMethod\nStew it.',
  );
  if ('sentence' in wrapped) throw new Error(wrapped.sentence);
  expect(wrapped.drafts[0]!.sections[0]!.lines.map(({ text }) => text)).toEqual([
    '2 onions, peeled, halved and sliced',
    '3 carrots',
  ]);
});

test('what is missing is said', () => {
  expect(draftsOf('Ingredients\n2 eggs')[0]!.unsure).toEqual([
    'The recipe has no name.',
    'What it makes is not said.',
    'No method was found.',
  ]);
  expect(readRecipes('Just some words about dinner.')).toHaveProperty('sentence');
});

test('a line of the method that says how long it bakes is no line of times, with or without a heading', () => {
  const list = 'Makes 12\n450 g flour\n2 eggs';
  const bake = 'Rub in the butter. Add milk. Bake at 425°F for 12 min.';
  for (const text of [`Scones\n${list}\n${bake}`, `Scones\n${list}\nDirections: ${bake}`]) {
    const [draft] = draftsOf(text);
    expect(draft).toMatchObject({
      lines: [['', 'flour', 'eggs']],
      steps: [[12, 218]],
    });
    expect(draft!.times.cook).toBeNull();
  }
  const [said] = draftsOf('Scones\nMakes 12. Prep 20 min. Best on the day they are made.\n450 g flour');
  expect(said).toMatchObject({ made: ['12', null], times: { prep: 20 } });
  expect(said!.note).toContain('Best on the day they are made.');
});

test('numbered steps begin the method, a full stop behind the figure or not', () => {
  for (const mark of ['', '.', ')']) {
    const steps = ['Mix everything.', 'Prove for 2 hours.', 'Bake at 220C for 25 minutes.'];
    const text = steps.map((words, at) => `${at + 1}${mark} ${words}`).join('\n');
    const read = readRecipes(`Focaccia\n500 g flour\n${text}`);
    expect('drafts' in read && read.drafts[0]!.steps[0]!.words).toBe('Mix everything.');
    const [draft] = draftsOf(`Focaccia\nMakes 1 loaf\n500 g flour\n1 egg, beaten\n${text}`);
    expect(draft, mark).toMatchObject({
      lines: [['', 'flour', 'egg']],
      steps: [
        [null, null],
        [120, null],
        [25, 220],
      ],
    });
  }
});
