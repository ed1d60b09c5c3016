import type { Recipe } from '../facts/recipe.js';
import type { Known, KnownRecipe } from '../known.js';
import { Rational } from '../quantity/rational.js';
import { baseOf } from '../quantity/units.js';
import { flourRules, lineRules } from './line.js';
import { loopFrom, loopInWords } from './loops.js';
import { isZero, ownKeys, ownName, type Refuse } from './refuse.js';
import { tinRules } from './tin.js';

/** The keys of the recipes that a recipe's lines name. */
export const componentsOf = (recipe: Recipe): string[] =>
  recipe.lines.flatMap(({ item }) => ('component' in item ? [item.component] : []));

/** What a recipe shows to the rules of others. */
export const asKnown = (recipe: Recipe): KnownRecipe => ({
  name: recipe.name,
  components: componentsOf(recipe),
  variantOf: recipe.variantOf,
});

/** Why a recipe cannot be saved. */
export const recipeRules = (recipe: Recipe, known: Known, refuse: Refuse): void => {
  ownName('a recipe', known.namesake, refuse);
  ownKeys('lines', recipe.lines, refuse);
  ownKeys('steps', recipe.steps, refuse);
  makesSomething(recipe, refuse);
  leavesSomething(recipe, refuse);
  tinRules(recipe, refuse);
  for (const line of recipe.lines) lineRules(line, known, refuse);
  flourRules(recipe, refuse);
  stepRules(recipe, refuse);
  containsItself(recipe, known, refuse);
};

const makesSomething = ({ yield: makes }: Recipe, refuse: Refuse): void => {
  const parts = { portions: makes.portions, weight: makes.weight?.amount, volume: makes.volume?.amount };
  for (const [name, amount] of Object.entries(parts))
    if (amount && isZero(amount))
      refuse(`yield/${name}`, 'makes-nothing', 'A recipe makes more than 0: type what one batch makes.');
  if (makes.weight && baseOf(makes.weight.unit) !== 'g')
    refuse('yield/weight', 'not-a-weight', `${makes.weight.unit} is no weight: type one such as 1.5 kg.`);
  if (makes.volume && baseOf(makes.volume.unit) !== 'ml')
    refuse('yield/volume', 'not-a-volume', `${makes.volume.unit} is no volume: type one such as 2 l.`);
};

const hundred = Rational.of(100);

const leavesSomething = ({ cookingLoss }: Recipe, refuse: Refuse): void => {
  if (cookingLoss !== null && Rational.parse(cookingLoss).compare(hundred) >= 0)
    refuse(
      'cookingLoss',
      'loss-of-all',
      `A loss of ${cookingLoss} per cent would leave nothing: type a loss below 100.`,
    );
};

const stepRules = ({ steps }: Recipe, refuse: Refuse): void => {
  const earlier = new Set<string>();
  for (const step of steps) {
    const at = `steps/${step.key}`;
    for (const { step: key, least, most } of step.after) {
      if (!earlier.has(key))
        refuse(
          `${at}/after`,
          'not-earlier',
          `A step comes after earlier steps only, and "${key}" is not one.`,
        );
      if (most !== null && most < least)
        refuse(
          `${at}/after`,
          'gap',
          `The longest gap, ${most} min, is shorter than the least, ${least} min.`,
        );
    }
    if (step.minutesLongest !== null && step.minutesLongest < (step.minutes ?? 0))
      refuse(
        `${at}/minutesLongest`,
        'longest-shorter',
        `At longest ${step.minutesLongest} min is shorter than the usual ${step.minutes} min.`,
      );
    if (step.portionsPerShelf !== null && isZero(step.portionsPerShelf))
      refuse(
        `${at}/portionsPerShelf`,
        'shelf-zero',
        'A shelf holds more than 0 portions, or it is not known.',
      );
    if (step.pan !== null && isZero(step.pan))
      refuse(`${at}/pan`, 'pan-zero', 'A batch fills more than 0 litres of a pan, or it is not known.');
    earlier.add(step.key);
  }
};

const containsItself = (recipe: Recipe, known: Known, refuse: Refuse): void => {
  const own = asKnown(recipe);
  const at = (key: string) => (key === recipe.key ? own : known.recipes.get(key));
  const made = loopFrom(recipe.key, (key) => at(key)?.components ?? []);
  if (made) {
    const line = recipe.lines.find(({ item }) => 'component' in item && item.component === made[1]);
    const words = loopInWords(made, at);
    refuse(`lines/${line?.key}/item`, 'contains-itself', `${recipe.name} would contain itself: ${words}.`);
  }
  if (recipe.variantOf === null) return;
  if (!known.recipes.has(recipe.variantOf) && recipe.variantOf !== recipe.key)
    refuse('variantOf', 'no-such-recipe', `There is no recipe with the key "${recipe.variantOf}".`);
  const varied = loopFrom(recipe.key, (key) => [at(key)?.variantOf ?? []].flat());
  if (varied)
    refuse(
      'variantOf',
      'variant-of-itself',
      `${recipe.name} would be a variant of itself: ${loopInWords(varied, at)}.`,
    );
};
