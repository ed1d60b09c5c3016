import { mostPage, readRecipes } from '../core/exchange/recipe/read-recipes.js';
import { refuse, standardInput } from './standard-input.js';

/** Reads a page, recipe data or a text from standard input and prints the drafts it found. */
const text = await standardInput(4 * mostPage);
const read = text === undefined ? undefined : readRecipes(text);
if (!read) refuse('This is larger than a saved page. Paste the recipe alone.');
else if ('sentence' in read) refuse(read.sentence);
else process.stdout.write(`${JSON.stringify(read.drafts, null, 2)}\n`);
