import { expect, test } from 'vitest';
import { readLines } from '../../../src/core/exchange/lines/read-lines.js';
import { readRecipes } from '../../../src/core/exchange/recipe/read-recipes.js';

const full = (text: string) => text.repeat(Math.ceil(10_000_000 / text.length)).slice(0, 10_000_000);
const half = (text: string) => full(text).slice(0, 7_900_000);
const list = 'Ingredients\n2 x 400 g tins tomatoes, drained\nMethod\nSimmer for 20 minutes.\n';
const recipe = {
  '@type': 'Recipe',
  name: 'A',
  recipeIngredient: ['2 eggs'],
  recipeInstructions: 'Bake for 20 minutes.',
};

/** 10 MB, and what is just below the limits, so that it is read and not refused. */
test.each<[string, (text: string) => unknown, string]>([
  ['lines', readLines, full('2 x 400 g tins chopped tomatoes, drained\n')],
  ['lines, one long', readLines, full('a')],
  ['lines at the limit', readLines, '2 x 400 g tins of tomatoes\n'.repeat(19_999)],
  ...['a, ', '1 lb 1 oz / ', '½-', 'a (2 cups) ', 'juice of '].map(
    (part): [string, (text: string) => unknown, string] => [
      `lines of "${part}" at the limit`,
      readLines,
      `${part.repeat(400).slice(0, 399)}\n`.repeat(1499),
    ],
  ),
  ['blank lines', readLines, full('\n')],
  ['digits', readLines, full('1 ')],
  ['text', readRecipes, full(list)],
  ['text at the limit', readRecipes, list.repeat(6500)],
  ['text, one line', readRecipes, full('simmer for 20 minutes. ').slice(0, 499_000)],
  ['text, one word', readRecipes, 'a'.repeat(499_000)],
  ['text of blanks', readRecipes, `x${' '.repeat(499_000)}x`],
  ['text of full stops', readRecipes, '.'.repeat(499_000)],
  ['text of brackets', readRecipes, '('.repeat(499_000)],
  ['text of quoting marks', readRecipes, '> '.repeat(249_000)],
  ['text of one numbered line', readRecipes, `Ingredients\n2 eggs\nMethod\n1. ${'a. 2. 3. '.repeat(55_000)}`],
  ['text of bold marks', readRecipes, '**'.repeat(249_000)],
  ['text of raised figures', readRecipes, '¹'.repeat(499_000)],
  ['text of dashes', readRecipes, `${'- '.repeat(249_000)}x`],
  ['page', readRecipes, full('<p>2 eggs</p>')],
  ['page of cells', readRecipes, half('<td>2 eggs')],
  ['page at the limit', readRecipes, half('<p>2 eggs</p>\n')],
  ['page, deep', readRecipes, half('<div>')],
  ['page, deep and never closed', readRecipes, half('<b></i>')],
  ['page of angles', readRecipes, `<p>${half('<')}`.slice(0, 7_900_000)],
  ['page, one attribute', readRecipes, `<p a="${half('x')}`.slice(0, 7_900_000)],
  ['page, many attributes', readRecipes, `<p ${half('ab c="1" ')}`.slice(0, 7_900_000)],
  ['page of entities', readRecipes, `<p>${half('&amp;')}`.slice(0, 7_900_000)],
  [
    'page of properties',
    readRecipes,
    `<div itemscope itemtype="https://schema.org/Recipe">${half('<b itemprop="recipeIngredient">2 eggs')}`.slice(
      0,
      7_900_000,
    ),
  ],
  [
    'page, one script of blanks',
    readRecipes,
    `<p><script type="application/ld+json">${half(' ')}`.slice(0, 7_900_000),
  ],
  ['page, many scripts', readRecipes, half('<script type="application/ld+json">{"@type":"Recipe"</script>')],
  ['data, deep lists', readRecipes, half('[')],
  ['data, deep objects', readRecipes, half('{"a":')],
  ['data, quotes', readRecipes, `{"${half('"')}`.slice(0, 7_900_000)],
  [
    'data, many recipes',
    readRecipes,
    `[${Array.from({ length: 60_000 }, (_, n) => JSON.stringify({ ...recipe, name: `A${n}` })).join(',')}]`,
  ],
  [
    'data, many lines',
    readRecipes,
    JSON.stringify({ ...recipe, recipeIngredient: Array(400_000).fill('2 x 400 g tins') }),
  ],
  [
    'data, many steps',
    readRecipes,
    JSON.stringify({ ...recipe, recipeInstructions: Array(200_000).fill('Bake for 20 minutes.') }),
  ],
  [
    'data, one long step',
    readRecipes,
    JSON.stringify({ ...recipe, recipeInstructions: half('bake for 20 minutes, then ') }),
  ],
])('%s: answered or refused within 2 s', (name, read, text) => {
  const before = process.cpuUsage();
  const memory = process.memoryUsage().rss;
  const answer = read(text) as object;
  const { user, system } = process.cpuUsage(before);
  const seconds = (user + system) / 1e6;
  const grown = Math.round((process.memoryUsage().rss - memory) / 1e6);
  console.log(
    `${name}, ${(text.length / 1e6).toFixed(1)} MB: ${seconds.toFixed(2)} s of processor, ${grown} MB more, ${'sentence' in answer ? 'refused' : 'answered'}`,
  );
  expect(seconds).toBeLessThan(2);
  expect(grown).toBeLessThan(600);
});
