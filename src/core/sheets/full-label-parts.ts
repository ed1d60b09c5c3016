import { cellsOf, stated } from '../allergens.js';
import { makes } from '../batch.js';
import type { Facts } from '../facts/facts.js';
import type { Ingredient } from '../facts/ingredient.js';
import type { Recipe } from '../facts/recipe.js';
import { groups } from '../label-entries.js';
import { normalName } from '../names.js';
import { notPlain } from '../plain-produce.js';
import type { Problem } from '../problem.js';
import { Rational } from '../quantity/rational.js';
import { type LineNeed, scale } from '../scaling.js';
import { labelTooLong, ownListOpen, placeOpen, toTaste } from './full-label-problems.js';
import { joined, ownList, plainly, type Run, setApart } from './label-list.js';

/** One entry of a list of ingredients: by its weight at the time of use, with its own list where it is a compound. */
export type LabelPart = {
  ingredient: Ingredient | undefined;
  component: Recipe | undefined;
  name: string;
  /** Grams in one batch as they go in; undefined where that is not known. */
  grams: Rational | undefined;
  toTaste: boolean;
  runs: Run[];
};

// A deep web of components would fill pages that nobody reads.
const mostSigns = 6000;

/** The entries of a recipe's list, heaviest first; what is missing of any is added to `problems`. */
export const labelParts = (
  recipe: Recipe,
  facts: Facts,
  problems: Problem[],
  written = new Map<string, Run[]>(),
): LabelPart[] => {
  const need = scale(recipe, Rational.one, facts).value[0]!;
  const merged = mergedNeeds(need.lines);
  const grams = withWater(recipe, merged, facts);
  const parts = merged.map((some): LabelPart => {
    const { ingredient, component } = some[0]!;
    const isToTaste = some.every(({ line }) => line.amount === null);
    const weight = grams.get(some);
    const name = (ingredient ?? component)!.name;
    if (isToTaste) problems.push(toTaste(recipe, some[0]!.line.key, name));
    else if (!weight) problems.push(placeOpen(recipe, some[0]!.line.key, name));
    const runs = component
      ? componentRuns(component, facts, problems, written)
      : ingredientRuns(ingredient!, facts, problems);
    return { ingredient, component, name, grams: weight, toTaste: isToTaste, runs };
  });
  // Water that is boiled away is in the food no more.
  return parts.filter(({ grams }) => !grams?.isZero).toSorted(byWeight);
};

/** Heaviest first; what has no weight last, in the order of the recipe. */
const byWeight = (a: LabelPart, b: LabelPart): number => {
  if (a.grams && b.grams) return b.grams.compare(a.grams);
  return a.grams ? -1 : b.grams ? 1 : Number(a.toTaste) - Number(b.toTaste);
};

/** Lines of one ingredient or component are one entry. */
const mergedNeeds = (lines: readonly LineNeed[]): LineNeed[][] => {
  const all = new Map<string, LineNeed[]>();
  for (const need of lines) {
    const key = need.component ? `component ${need.component.key}` : need.ingredient!.key;
    all.set(key, [...(all.get(key) ?? []), need]);
  }
  return [...all.values()];
};

/** What each entry weighs; water by what is left of it in the finished food, where that is known. */
const withWater = (
  recipe: Recipe,
  merged: readonly LineNeed[][],
  facts: Facts,
): Map<LineNeed[], Rational> => {
  const grams = new Map<LineNeed[], Rational>();
  for (const some of merged) {
    const known = some.filter(({ line }) => line.amount !== null).map(({ prepared }) => prepared);
    if (known.length > 0 && known.every((one) => one !== undefined))
      grams.set(
        some,
        known.reduce((sum: Rational, one) => sum.plus(one!), Rational.zero),
      );
  }
  const finished = makes(recipe, facts).g;
  const water = merged.find(([need]) => need!.ingredient && isWater(need!.ingredient));
  const used = water && grams.get(water);
  if (!finished || !used || merged.some((some) => !grams.has(some) && some.some(({ line }) => line.amount)))
    return grams;
  const others = [...grams].reduce(
    (sum, [some, one]) => (some === water ? sum : sum.plus(one)),
    Rational.zero,
  );
  const left = finished.minus(others);
  const least = left.sign < 0 ? Rational.zero : left;
  return grams.set(water, least.compare(used) < 0 ? least : used);
};

const isWater = ({ name, notBought }: Ingredient): boolean => notBought && /\bwater\b/i.test(name);

const componentRuns = (
  component: Recipe,
  facts: Facts,
  problems: Problem[],
  written: Map<string, Run[]>,
): Run[] => {
  const known = written.get(component.key);
  if (known) return known;
  const parts = labelParts(component, facts, problems, written);
  const inside = joined(parts.map(({ runs }) => runs));
  const runs = tooLong(inside)
    ? [plainly(`${component.name} (…)`)]
    : [plainly(`${component.name} (`), ...inside, plainly(')')];
  if (tooLong(inside)) problems.push(labelTooLong(component));
  written.set(component.key, runs);
  return runs;
};

export const tooLong = (runs: readonly Run[]): boolean =>
  runs.reduce((sum, { text }) => sum + text.length, 0) > mostSigns;

const ingredientRuns = (ingredient: Ingredient, facts: Facts, problems: Problem[]): Run[] => {
  const { name, labelText, labelDate } = ingredient;
  const ids = contained(ingredient, facts);
  const list = labelDate === null ? '' : ownList(labelText);
  const open = list === '' && (notPlain(ingredient) !== '' || labelText !== '' || ids.length > 1);
  if (open && isCompound(ingredient, ids)) problems.push(ownListOpen(ingredient));
  const runs =
    list === '' || normalName(list) === normalName(name)
      ? setApart(name, ids)
      : [plainly(`${name} (`), ...setApart(list, ids), plainly(')')];
  return isOpenIn(ingredient, facts) ? [...runs, plainly(' (not checked: ask us)')] : runs;
};

const isOpenIn = (ingredient: Ingredient, facts: Facts): boolean =>
  cellsOf([{ ingredient, through: [] }], facts).some(({ unknown, state }) => unknown && state !== 'contains');

/** Something that is made of several things, as far as its name, its label or its allergens tell. */
const isCompound = (ingredient: Ingredient, ids: readonly string[]): boolean =>
  ingredient.labelText !== '' || ids.length > 1 || notPlain(ingredient).startsWith('Read its label');

/** What of the list in force an ingredient contains, by the substances named, else by the group. */
const contained = (ingredient: Ingredient, facts: Facts): string[] => {
  const cells = cellsOf([{ ingredient, through: [] }], facts).filter(({ state }) => state === 'contains');
  return [
    ...new Set(
      cells.flatMap(({ item }) => {
        const named = item.members.filter((id) => stated(ingredient, id) === 'contains');
        const group = groups.find(
          ({ id }) => ingredient.allergens[id]?.state === 'contains' && item.id === id,
        );
        return named.length > 0 || !group ? named : [group.id];
      }),
    ),
  ];
};
