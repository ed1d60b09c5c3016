import type { RecipeDraft, RecipesRead } from './draft.js';
import { fromNode } from './from-node.js';
import { fromText } from './from-text.js';
import { recipeNodes } from './json-ld.js';
import { type Node, resolver } from './nodes.js';
import { readPage } from './page.js';
import { severalIn } from './several.js';

/** More than a saved page or a pasted recipe holds; beyond it nothing is read, so that an answer never takes long. */
export const mostPage = 8_000_000;
export const mostText = 500_000;
const mostRecipes = 200;
const mostBlocks = 500;
const mostLines = 20_000;

/**
 * Reads what was pasted or saved: a web page, recipe data in JSON-LD, or a recipe in words, as drafts with what is in
 * doubt. It never throws; what is too much, or holds no recipe, is answered with a sentence.
 */
export const readRecipes = (text: string): RecipesRead => {
  if (text.length > mostPage)
    return { sentence: 'This is larger than a saved page. Paste the recipe alone.' };
  const start = text.slice(0, 2000).trimStart();
  const drafts = /^[{[]/.test(start) ? fromData([text]) : isPage(text) ? fromPage(text) : fromWords(text);
  if ('sentence' in drafts) return drafts;
  if (drafts.drafts.length === 0)
    return { sentence: 'No recipe was found. Paste its ingredients and method, or the whole saved page.' };
  return drafts;
};

const isPage = (text: string): boolean =>
  /<(?:!doctype|html|head|body|script|div|p|li|ul|ol|h1|h2|span|table|article|section|meta|main|br)\b/i.test(
    text.slice(0, 200_000),
  );

const fromData = (blocks: readonly string[]): RecipesRead => {
  const read = blocks.slice(0, mostBlocks).map(recipeNodes);
  const all = read.flatMap((one) => one?.all ?? []);
  const nodes = distinct(read.flatMap((one) => one?.recipes ?? []));
  if (nodes.length > mostRecipes)
    return { sentence: `This holds ${nodes.length} recipes. Paste at most ${mostRecipes} at a time.` };
  const resolve = resolver(all);
  const drafts: RecipeDraft[] = [];
  let lines = 0;
  for (const node of nodes) {
    const draft = fromNode(node, 'json-ld', resolve);
    lines += draft.sections.reduce((sum, one) => sum + one.lines.length, 0) + draft.steps.length;
    if (lines > mostLines)
      return { sentence: 'These are more lines than recipes hold. Paste one recipe at a time.' };
    // A mere mention of another recipe has a name and nothing more.
    if (draft.sections.length > 0 || draft.steps.length > 0) drafts.push(draft);
  }
  if (blocks.length > mostBlocks || read.some((one) => one === undefined))
    for (const draft of drafts) draft.unsure.push('Some recipe data on the page could not be read.');
  return { drafts };
};

/** A page may tell the same recipe in two blocks. */
const distinct = (nodes: readonly Node[]): Node[] => {
  const seen = new Set<string>();
  return nodes.filter((node) => {
    const text = JSON.stringify([
      node.name,
      node.recipeIngredient ?? node.ingredients,
      node.recipeInstructions,
    ]);
    if (seen.has(text)) return false;
    seen.add(text);
    return true;
  });
};

const fromPage = (html: string): RecipesRead => {
  const page = readPage(html);
  if (!page) return { sentence: 'This page is nested too deeply to be read. Paste the recipe as text.' };
  const data = fromData(page.blocks);
  if ('sentence' in data || data.drafts.length > 0) return data;
  const marked = page.marked
    .slice(0, mostRecipes)
    .map((node) => fromNode(node, 'microdata', (value) => value))
    .filter((draft) => draft.sections.length > 0);
  if (marked.length > 0) return { drafts: marked };
  if (page.text.length > mostText) return tooLong;
  const draft = fromText(page.text, 'page', page.title);
  if (!draft) return { drafts: [] };
  draft.unsure.push("The page holds no recipe data: it was read from the page's words.");
  return { drafts: [draft] };
};

const tooLong = { sentence: 'This is more text than a recipe holds. Paste one recipe at a time.' };

/** Marks of a mail that was passed on. */
const quoted = /^(?:>[ \t]?)+/gm;

const fromWords = (text: string): RecipesRead => {
  if (text.length > mostText) return tooLong;
  const plain = text
    .replace(/\r\n?/g, '\n')
    .replace(/^\ufeff/, '')
    .replace(quoted, '');
  const drafts = severalIn(plain)
    .map((one) => fromText(one, 'text'))
    .filter((draft) => draft !== undefined);
  return { drafts };
};
