import { cupOf, makes } from '../batch.js';
import { isNamed } from '../content.js';
import type { Facts } from '../facts/facts.js';
import type { Substitute } from '../facts/ingredient.js';
import type { Line, Recipe, Step } from '../facts/recipe.js';
import { keyFrom } from '../keys.js';
import { lineNeed } from '../line-need.js';
import { recipeOf } from '../lookup.js';
import { normalName } from '../names.js';
import { exact } from '../quantity/amount.js';
import { Rational } from '../quantity/rational.js';
import { quantity } from '../quantity/units.js';

/** What is done about one ingredient, or about one component, wherever a dish has it. */
export type Treatment =
  | { do: 'leave-out'; ingredient: string; name: string }
  | { do: 'swap'; ingredient: string; name: string; substitute: Substitute; by: string }
  | { do: 'apart'; component: string; name: string };

/** A recipe done otherwise: itself first, then the components that had to be done otherwise too. */
export type Made = { recipe: Recipe; components: Recipe[] };

/** "oil spread for butter", "without egg", "gravy served apart". */
export const treatedWords = (treatments: readonly Treatment[]): string =>
  treatments
    .map((one) => {
      if (one.do === 'swap') return `${one.by.toLowerCase()} for ${one.name.toLowerCase()}`;
      return one.do === 'apart' ? `${one.name.toLowerCase()} apart` : `without ${one.name.toLowerCase()}`;
    })
    .join(', ');

const mostLetters = 120;
const mostWords = 2000;

/** Names and keys that no recipe bears; asked anew for each recipe made, so that no two get the same. */
export type Namer = { name(wanted: string): string; key(name: string): string };

/** Names, as they compare, and keys that recipes of the kitchen have. */
export type Taken = { names: readonly string[]; keys: readonly string[] };

export const takenIn = ({ recipes }: Facts): Taken => ({
  names: [...recipes.values()].map(({ name }) => normalName(name)),
  keys: [...recipes.keys()],
});

export const namerFor = (taken: Taken): Namer => {
  const names = new Set(taken.names);
  const keys = new Set(taken.keys);
  return {
    name: (wanted) => {
      for (let n = 1; ; n++) {
        const mark = n === 1 ? '' : ` ${n}`;
        const name = `${wanted.slice(0, mostLetters - mark.length).trim()}${mark}`;
        if (names.has(normalName(name))) continue;
        names.add(normalName(name));
        return name;
      }
    },
    key: (name) => {
      const key = keyFrom(name, (one) => keys.has(one));
      keys.add(key);
      return key;
    },
  };
};

/**
 * A recipe with some of its ingredients left out, swapped for a substitute by its ratio, or a component left apart,
 * through components of any depth: each that has such a line becomes a variant of its own. Weights are exact. Undefined
 * where a swap cannot be weighed, where nothing would be left, or where a substitute is made of what it goes into.
 */
export const treated = (
  recipe: Recipe,
  treatments: readonly Treatment[],
  facts: Facts,
  namer: Namer,
): Made | undefined => {
  const done = new Map<string, Recipe>();
  const components: Recipe[] = [];
  const remake = (one: Recipe): Recipe | undefined => {
    const known = done.get(one.key);
    if (known) return known;
    const lines: Line[] = [];
    for (const line of one.lines) {
      const treatment = treatments.find((t) => isFor(t, line));
      const next = treatment ? lineBy(treatment, line, one, facts) : through(line);
      if (next === undefined) return undefined;
      if (next) lines.push(next);
    }
    if (lines.every((line, at) => line === one.lines[at]) && lines.length === one.lines.length) {
      done.set(one.key, one);
      return one;
    }
    if (lines.length === 0) return undefined;
    const name = namer.name(`${one.name}, ${treatedWords(treatments)}`);
    const steps = one.steps.map((step) => stepBy(treatments, step));
    const made = { ...variant(one, namer.key(name), name, lines), steps };
    done.set(one.key, made);
    if (one !== recipe) components.push(made);
    return made;
  };
  const through = (line: Line): Line | undefined => {
    if (!('component' in line.item)) return line;
    const below = recipeOf(line.item.component, facts);
    const made = remake(below);
    if (!made) return undefined;
    return made === below ? line : { ...line, item: { component: made.key } };
  };
  const made = remake(recipe);
  return made && made !== recipe ? { recipe: made, components } : undefined;
};

const variant = (base: Recipe, key: string, name: string, lines: Line[]): Recipe => ({
  ...base,
  key,
  name,
  lines,
  variantOf: base.key,
  archived: false,
  origin: 'own',
});

/** A step that names what is treated says so, lest it go in all the same: "Rub in the butter. (oil spread for butter)" */
const stepBy = (treatments: readonly Treatment[], step: Step): Step => {
  const named = treatments.filter(({ name }) => isNamed(name, step.words));
  if (named.length === 0) return step;
  const note = ` (${treatedWords(named)})`.slice(0, 300);
  return { ...step, words: `${step.words.slice(0, mostWords - note.length)}${note}` };
};

const isFor = (treatment: Treatment, { item }: Line): boolean =>
  treatment.do === 'apart'
    ? 'component' in item && item.component === treatment.component
    : 'ingredient' in item && item.ingredient === treatment.ingredient;

/** The line in its place; null where it goes, undefined where it cannot be worked out. */
const lineBy = (treatment: Treatment, line: Line, recipe: Recipe, facts: Facts): Line | null | undefined =>
  treatment.do === 'swap' ? swapped(line, treatment.substitute, recipe, facts) : null;

/** A line with its substitute, by the weight that the old one puts in, exact; a line to taste stays to taste. */
const swapped = (line: Line, { item, ratio }: Substitute, recipe: Recipe, facts: Facts): Line | undefined => {
  if ('component' in item && uses(item.component, recipe.key, facts)) return undefined;
  const plain = { ...line, item, stated: 'prepared' as const, cooked: '', preparation: '' };
  if (line.amount === null) return { ...plain, stated: 'usual' };
  const grams = gramsOf(line, recipe, facts);
  const amount = grams && amountOf(grams.times(exact(ratio)));
  if (!amount || ('component' in item && !makes(recipeOf(item.component, facts), facts).g)) return undefined;
  const scales = line.scales === 'flour' || line.scales === 'batch' ? line.scales : 'straight';
  return { ...plain, amount, amountTo: null, unit: 'g', scales };
};

/** Grams that a line puts into one batch; undefined when its weight is not known. */
export const gramsOf = (line: Line, recipe: Recipe, facts: Facts): Rational | undefined => {
  const { prepared, amount, unit } = lineNeed(line, recipe, Rational.one, facts);
  if (prepared) return prepared;
  const asked = amount && quantity(amount, unit, cupOf(recipe, facts));
  return asked?.base === 'g' ? asked.value : undefined;
};

const uses = (key: string, wanted: string, facts: Facts): boolean =>
  key === wanted ||
  recipeOf(key, facts).lines.some(({ item }) => 'component' in item && uses(item.component, wanted, facts));

/** An amount as it can be kept: exact where its figures are few enough, else to a thousandth of a gram. */
const amountOf = (grams: Rational): string | undefined => {
  const text = grams.toString();
  const kept = /^(\d{1,12}(\.\d{1,9})?|\d{1,9}\/[1-9]\d{0,8})$/.test(text) ? text : grams.toFixed(3);
  return grams.sign > 0 && Number(kept) !== 0 ? kept : undefined;
};
