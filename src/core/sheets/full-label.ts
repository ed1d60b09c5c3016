import { allergensOf, type Cell, unwritten } from '../allergens.js';
import { addDays } from '../calendar.js';
import type { Facts } from '../facts/facts.js';
import type { Ingredient } from '../facts/ingredient.js';
import type { Recipe } from '../facts/recipe.js';
import type { Answer, Problem } from '../problem.js';
import { noLines } from '../problems.js';
import { worstFirst } from '../requirements.js';
import { labelDates, unreadIn } from './allergen-matrix.js';
import { type LabelPart, labelParts, tooLong } from './full-label-parts.js';
import { keepingOpen, labelTooLong } from './full-label-problems.js';
import { joined, type Run } from './label-list.js';
import { mayBeside } from './table-cards.js';

export type { LabelPart } from './full-label-parts.js';

export type FullLabel = {
  recipe: Recipe;
  facts: Facts;
  parts: LabelPart[];
  runs: Run[];
  /** What may be in it, by the labels of what is in it. */
  may: string[];
  /** Of what some is not known; such a label says "not checked: ask us". */
  notChecked: Ingredient[];
  /** Whether every place, own list and label is known. */
  complete: boolean;
  made: string;
  useBy: string | undefined;
  labels: { first: string; last: string } | undefined;
};

/**
 * The label of a recipe for food packed before it is ordered: its name, all ingredients in descending order of weight
 * at the time of use (Regulation (EU) No 1169/2011, article 18(1)), a compound's own list in brackets after its name,
 * allergens in bold capitals, and the use-by date by the cook's own keeping days. Water stands by what is left of it in
 * the finished food where the weight of that is known (Annex VII, part A, 1); what goes in to taste stands last (under
 * 2 % in any order, Annex VII, part A, 6). What is not known makes the label say that it is not complete.
 */
// Article 18(1) and row 1 read in copies; that the rule of 2 % is row 6 is from memory, after five rows read.
export const fullLabel = (recipe: Recipe, made: string, facts: Facts): Answer<FullLabel> => {
  const problems: Problem[] = unwritten(recipe, facts).map(noLines);
  const parts = labelParts(recipe, facts, problems);
  const runs = joined(parts.map((part) => part.runs));
  if (tooLong(runs)) problems.push(labelTooLong(recipe));
  const cells = allergensOf(recipe, facts);
  const unread = unreadIn([recipe], facts);
  const days = recipe.keepingDays;
  if (days === null) problems.push(keepingOpen(recipe));
  return {
    value: {
      recipe,
      facts,
      parts,
      runs: tooLong(runs) ? [] : runs,
      may: mayIn(cells),
      notChecked: notChecked(cells),
      complete: [...problems, ...unread].every(({ weight }) => weight === 'check'),
      made,
      useBy: days === null ? undefined : addDays(made, days),
      labels: labelDates([recipe], facts),
    },
    problems: worstFirst([...unread, ...problems]),
  };
};

const mayIn = (cells: readonly Cell[]): string[] => [
  ...cells.filter(({ state }) => state === 'may').map(({ item }) => item.short.toLowerCase()),
  ...cells.flatMap(mayBeside),
];

const notChecked = (cells: readonly Cell[]): Ingredient[] => [
  ...new Map(
    cells
      .flatMap(({ brings }) => brings)
      .filter(({ unknown, state }) => unknown && state !== 'contains')
      .map(({ ingredient }) => [ingredient.key, ingredient]),
  ).values(),
];
