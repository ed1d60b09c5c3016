import { expect, test } from 'vitest';
import type { RecipeDraft } from '../../../../src/core/exchange/recipe/draft.js';
import { readRecipes } from '../../../../src/core/exchange/recipe/read-recipes.js';

const draftsOf = (text: string): RecipeDraft[] => {
  const read = readRecipes(text);
  if ('sentence' in read) throw new Error(read.sentence);
  return read.drafts;
};

/** The figures of a draft in a few words, for reading at a glance. */
const brief = (draft: RecipeDraft) => ({
  name: draft.name,
  portions: draft.yield.portions,
  lines: draft.sections.flatMap(({ title, lines }) =>
    lines.map(({ read }) =>
      `${title ? `${title}: ` : ''}${read.quantity ?? ''} ${read.unit ?? ''} ${read.food}`.trim(),
    ),
  ),
  steps: draft.steps.map(
    ({ part, words, minutes }) => `${part ? `${part}: ` : ''}${words}${minutes ? ` (${minutes})` : ''}`,
  ),
});

const base = {
  '@context': 'https://schema.org',
  '@type': 'Recipe',
  name: 'Leek tart',
  recipeYield: '6',
  recipeIngredient: ['500 g leeks', '3 eggs'],
  recipeInstructions: 'Slice the leeks.\nBake at 180C for 35 minutes.',
};
const plain = {
  name: 'Leek tart',
  portions: '6',
  lines: ['500 g leeks', '3 each eggs'],
  steps: ['Slice the leeks.', 'Bake at 180C for 35 minutes. (35)'],
};
const script = (json: string, type = 'application/ld+json') => `<script type="${type}">${json}</script>`;
const page = (body: string) =>
  `<!doctype html><html><head><title>A page</title></head><body>${body}</body></html>`;

test('a saved page: comments, commas too many, raw line breaks and broken mark-up round the data', () => {
  const json = JSON.stringify(base);
  const all = (html: string) => draftsOf(page(html)).map(brief);
  expect(all(script(json))).toEqual([plain]);
  expect(all(script(`\n<!--\n${json}\n//-->\n`))).toEqual([plain]);
  expect(all(script(`/*<![CDATA[*/ ${json} /*]]>*/`))).toEqual([plain]);
  expect(all(script(`${json.slice(0, -1)},};`))).toEqual([plain]);
  expect(all(script(json.replaceAll('\\n', '\n')))).toEqual([plain]);
  expect(all(script(json, 'application/ld+json; charset=utf-8'))).toEqual([plain]);
  expect(all(`<div><p>Never closed <b>${script(json)}`)).toEqual([plain]);
  expect(all(`${script('{"@type":')}${script(json)}`)).toEqual([plain]);
  expect(all(script(json) + script(json))).toEqual([plain]);
});

test('several recipes of a page are several drafts, and a mention of one is none', () => {
  const other = { ...base, name: 'Leek soup', isRelatedTo: { '@type': 'Recipe', name: 'Bread' } };
  const drafts = draftsOf(page(script(JSON.stringify([base, other]))));
  expect(drafts.map(({ name }) => name)).toEqual(['Leek tart', 'Leek soup']);
});

test('marked-up elements', () => {
  const html = `<div itemscope itemtype="https://schema.org/Recipe"><h1 itemprop="name">Leek tart</h1>
    Serves <span itemprop="recipeYield">6</span>, <time itemprop="cookTime" datetime="PT35M">35 min</time>
    <ul><li itemprop="recipeIngredient">500 g leeks<li itemprop="recipeIngredient">3 eggs</ul>
    <div itemprop="recipeInstructions" itemscope itemtype="https://schema.org/HowToStep"><p itemprop="text">Slice the leeks.</p></div>
    <div itemprop="recipeInstructions">Bake at 180C for 35 minutes.</div></div>`;
  const [draft] = draftsOf(page(html));
  expect(brief(draft!)).toEqual(plain);
  expect([draft!.source, draft!.times.cook]).toEqual(['microdata', 35]);
  const rdfa = html
    .replaceAll('itemprop=', 'property=')
    .replaceAll('itemscope itemtype="https://schema.org/', 'vocab="https://schema.org/" typeof="');
  expect(brief(draftsOf(page(rdfa))[0]!)).toEqual(plain);
});

test('a page without data is read from its words, and says so', () => {
  const [draft] = draftsOf(
    page(
      '<nav>Home Recipes</nav><h1>Leek tart</h1><p>Serves 6</p><h2>Ingredients</h2><ul><li>500 g leeks</li><li>3 eggs</li></ul><h2>Method</h2><ol><li>Slice the leeks.</li><li>Bake at 180C for 35 minutes.</li></ol><footer>Made here</footer>',
    ),
  );
  expect(brief(draft!)).toEqual(plain);
  expect(draft!.source).toBe('page');
  expect(draft!.unsure).toEqual(["The page holds no recipe data: it was read from the page's words."]);
});

test('what holds no recipe is answered with what to do', () => {
  const sentence = 'No recipe was found. Paste its ingredients and method, or the whole saved page.';
  expect(readRecipes('')).toEqual({ sentence });
  expect(readRecipes(page('<p>Hello</p>'))).toEqual({ sentence });
  expect(readRecipes('{"@type":"Person","name":"A cook"}')).toEqual({ sentence });
});
