import { type State, stated, stateOf, unwritten, ways } from './allergens.js';
import { type Content, contentOf } from './content.js';
import { type Diet, dietOf, isGroup, mindsTraces } from './diet-list.js';
import type { Known } from './facts/common.js';
import type { Guest } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import type { Ingredient, Trait } from './facts/ingredient.js';
import type { Recipe } from './facts/recipe.js';
import { once } from './lookup.js';

export { askedByDiets, type Diet, dietName, dietOf, diets, dietsOf, isDiet } from './diet-list.js';

/** no: something in it is avoided; unknown: a fact is missing; may: traces or a may-contain; yes: nothing stands against it. */
export type Verdict = 'no' | 'unknown' | 'may' | 'yes';

/** `because` is the fact it turns on: a trait, an allergen, or the ingredient's own key; `diet` is empty for a dislike. */
export type Reason = {
  verdict: Verdict;
  diet: string;
  ingredient: Ingredient;
  through: Recipe[];
  because: string;
};
export type Judged = { verdict: Verdict; reasons: Reason[] };

const rank: Record<Verdict, number> = { yes: 0, may: 1, unknown: 2, no: 3 };

/** The harder of two verdicts: no, then not known, then may contain. */
export const harder = (a: Verdict, b: Verdict): Verdict => (rank[b] > rank[a] ? b : a);

/** What an allergen's state also says of a trait: milk named on the label is dairy, milk not listed is none. */
const shownBy: Partial<Record<Trait, string[]>> = {
  dairy: ['milk'],
  egg: ['eggs'],
  fish: ['fish'],
  shellfish: ['crustaceans', 'molluscs'],
};
const kindsOfMeat: Trait[] = ['pork', 'beef', 'poultry'];

/**
 * A fact of an ingredient that diets turn on: as stated, else as its other facts settle it (any pork is meat, no meat
 * is no pork, an allergen stated for dairy, egg, fish or shellfish), else unknown. A label that names it outdoes a no.
 */
export const traitOf = (ingredient: Ingredient, trait: Trait): Known => {
  const members = shownBy[trait];
  const label = members && stateOf(ingredient, members);
  if (label?.state === 'contains') return 'yes';
  const said = ingredient.traits[trait];
  if (said && said !== 'unknown') return said;
  if (trait === 'meat' && kindsOfMeat.some((kind) => ingredient.traits[kind] === 'yes')) return 'yes';
  if (kindsOfMeat.includes(trait) && ingredient.traits.meat === 'no') return 'no';
  return !label || label.unknown ? 'unknown' : 'no';
};

type Found = { verdict: Verdict; because: string };
const yes: Found = { verdict: 'yes', because: '' };
const hardest = (all: readonly Found[]): Found =>
  all.reduce((a, b) => (rank[b.verdict] > rank[a.verdict] ? b : a), yes);

const substances = new WeakMap<Diet, string[]>();
const substancesOf = (diet: Diet): string[] => {
  const found = substances.get(diet) ?? diet.avoidsAllergens.filter((id) => !isGroup(id));
  substances.set(diet, found);
  return found;
};

/** What the label says: all substances together, for a group's own entry ("nuts") speaks for the group as a whole. */
const byLabel = (diet: Diet, ingredient: Ingredient): Found => {
  const asked = substancesOf(diet);
  const { state, unknown } = stateOf(ingredient, asked);
  const entry = (wanted: State) =>
    [...diet.avoidsAllergens, ...diet.avoidsNamed].find((id) => ingredient.allergens[id]?.state === wanted);
  const contained = entry('contains');
  if (contained || state === 'contains') return { verdict: 'no', because: contained ?? '' };
  const traces = entry('may');
  if (unknown) {
    const open = asked.find((id) => stated(ingredient, id) === 'unknown');
    return { verdict: 'unknown', because: open ?? traces ?? '' };
  }
  return traces || state === 'may' ? { verdict: 'may', because: traces ?? '' } : yes;
};

const avoided: Record<Known, Verdict> = { yes: 'no', unknown: 'unknown', no: 'yes' };
const open: Record<Known, Verdict> = { yes: 'unknown', unknown: 'unknown', no: 'yes' };

const byTraits = ({ avoidsTraits, asksTraits }: Diet, ingredient: Ingredient): Found[] => [
  ...avoidsTraits.map((trait) => ({ verdict: avoided[traitOf(ingredient, trait)], because: trait })),
  ...asksTraits.map((trait) => ({ verdict: open[traitOf(ingredient, trait)], because: trait })),
];

const answers = new WeakMap<Diet, WeakMap<Ingredient, Found>>();

/**
 * A diet against one ingredient, and the fact it turns on. A choice or a faith turns on what is in a dish: of its label
 * only "contains" counts, not traces. An allergy and a medical diet turn on traces too.
 */
const judge = (diet: Diet, ingredient: Ingredient): Found => {
  const kept = answers.get(diet) ?? new WeakMap<Ingredient, Found>();
  answers.set(diet, kept);
  const known = kept.get(ingredient);
  if (known) return known;
  const label = byLabel(diet, ingredient);
  const counts = mindsTraces(diet) || label.verdict === 'no';
  const found = hardest([counts ? label : yes, ...byTraits(diet, ingredient)]);
  kept.set(ingredient, found);
  return found;
};

const ofContent: Record<Content, Verdict> = { in: 'no', unknown: 'unknown', 'not-in': 'yes' };

const byContent = (ingredient: Ingredient, keys: readonly string[], facts: Facts, asList = false): Found => ({
  verdict: ofContent[contentOf(ingredient, keys, facts, asList)],
  because: ingredient.key,
});

/** Everything below a recipe against one rule; where a recipe has no lines, nobody is told yes. */
const judgeAll = (
  diet: string,
  recipe: Recipe,
  facts: Facts,
  rule: (ingredient: Ingredient) => Found,
): Judged => {
  const reasons: Reason[] = [];
  let verdict: Verdict = unwritten(recipe, facts).length > 0 ? 'unknown' : 'yes';
  for (const { ingredient, through } of ways(recipe, facts)) {
    const { verdict: one, because } = rule(ingredient);
    if (one === 'yes') continue;
    verdict = harder(verdict, one);
    reasons.push({ verdict: one, diet, ingredient, through, because });
  }
  return { verdict, reasons: reasons.sort(hardestFirst) };
};

const hardestFirst = (a: Reason, b: Reason): number => rank[b.verdict] - rank[a.verdict];

const answersOf = once((_recipe: Recipe, _facts: Facts) => new Map<string, Judged>());

const keptFor = (id: string, recipe: Recipe, facts: Facts, work: () => Judged): Judged => {
  const kept = answersOf(recipe, facts);
  const judged = kept.get(id) ?? work();
  kept.set(id, judged);
  return judged;
};

const judgeDiet = (id: string, recipe: Recipe, facts: Facts): Judged =>
  keptFor(id, recipe, facts, () => {
    const diet = dietOf(id, facts.kitchen);
    if (!diet) return { verdict: 'unknown', reasons: [] };
    const rule = (ingredient: Ingredient): Found => judge(diet, ingredient);
    if (diet.avoidsIngredients.length === 0) return judgeAll(id, recipe, facts, rule);
    return judgeAll(id, recipe, facts, (ingredient) =>
      hardest([rule(ingredient), byContent(ingredient, diet.avoidsIngredients, facts, mindsTraces(diet))]),
    );
  });

const judgeDislike = (key: string, recipe: Recipe, facts: Facts): Judged =>
  keptFor(`dislikes ${key}`, recipe, facts, () =>
    judgeAll('', recipe, facts, (ingredient) => byContent(ingredient, [key], facts)),
  );

/**
 * Several diets against a recipe, through any depth: the hardest verdict, with every reason that is not a yes. Where a
 * recipe has no lines nobody is told yes, nor by a diet this workbook doesn't know.
 */
export const judgeRecipe = (wanted: readonly string[], recipe: Recipe, facts: Facts): Judged =>
  together(wanted.map((id) => judgeDiet(id, recipe, facts)));

const together = (judged: readonly Judged[]): Judged => {
  if (judged.length === 1) return judged[0]!;
  const reasons = judged.flatMap((one) => one.reasons).sort(hardestFirst);
  return { verdict: judged.reduce((v, one) => harder(v, one.verdict), 'yes' as Verdict), reasons };
};

/**
 * A guest against a recipe, with all their diets and dislikes: one who hasn't answered, or has a wish in their own
 * words, is never told yes. To a guest who said that traces do not matter a may-contain is a yes that keeps its
 * reasons; what is not known stays so.
 */
export const judgeGuest = (guest: Guest, recipe: Recipe, facts: Facts): Judged => {
  if (!guest.answered) return { verdict: 'unknown', reasons: [] };
  const judged = together([
    ...guest.diets.map((id) => judgeDiet(id, recipe, facts)),
    ...guest.avoids.map((key) => judgeDislike(key, recipe, facts)),
  ]);
  const verdict = judged.verdict === 'may' && !guest.traces ? 'yes' : judged.verdict;
  if (guest.other) return { ...judged, verdict: harder(verdict, 'unknown') };
  return verdict === judged.verdict ? judged : { ...judged, verdict };
};
