import allergens from '../../shared/allergens.json' with { type: 'json' };
import published from '../../shared/diets.json' with { type: 'json' };
import { type State, stated, stateOf, unwritten, ways } from './allergens.js';
import type { Known } from './facts/common.js';
import type { Guest } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import type { Ingredient, Trait } from './facts/ingredient.js';
import type { Recipe } from './facts/recipe.js';
import { once } from './lookup.js';

/** A diet is a rule over facts: what it avoids. */
export type Diet = {
  id: string;
  name: string;
  kind: string;
  avoidsTraits: Trait[];
  avoidsAllergens: string[];
  source: string;
  schemaOrg: string | null;
};

export const diets: readonly Diet[] = published as Diet[];
const byId = new Map(diets.map((diet) => [diet.id, diet]));

export const dietName = (id: string): string => byId.get(id)?.name ?? id;
export const isDiet = (id: string): boolean => byId.has(id);

/** Substances and groups of them that some diet turns on, whatever list is in force. */
export const askedByDiets: ReadonlySet<string> = new Set(
  diets.flatMap(({ avoidsAllergens }) => avoidsAllergens),
);

/** no: something in it is avoided; unknown: a fact is missing; may: traces or a may-contain; yes: nothing stands against it. */
export type Verdict = 'no' | 'unknown' | 'may' | 'yes';

export type Reason = {
  verdict: Verdict;
  diet: string;
  ingredient: Ingredient;
  through: Recipe[];
  because: string;
};
export type Judged = { verdict: Verdict; reasons: Reason[] };

const rank: Record<Verdict, number> = { yes: 0, may: 1, unknown: 2, no: 3 };
const harder = (a: Verdict, b: Verdict): Verdict => (rank[b] > rank[a] ? b : a);

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

const verdictOfTrait: Record<Known, Verdict> = { yes: 'no', unknown: 'unknown', no: 'yes' };

const groups = new Set(allergens.groups.map((group) => group.id));
const substancesOf = new Map(
  diets.map((diet) => [diet, diet.avoidsAllergens.filter((id) => !groups.has(id))]),
);

type Found = { verdict: Verdict; because: string };

/** What the label says: all substances together, for a group's own entry ("nuts") speaks for the group as a whole. */
const byLabel = (diet: Diet, ingredient: Ingredient): Found => {
  const substances = substancesOf.get(diet)!;
  const { state, unknown } = stateOf(ingredient, substances);
  const entry = (wanted: State) =>
    diet.avoidsAllergens.find((id) => ingredient.allergens[id]?.state === wanted);
  const contained = entry('contains');
  if (contained || state === 'contains') return { verdict: 'no', because: contained ?? '' };
  const traces = entry('may');
  if (unknown) {
    const open = substances.find((id) => stated(ingredient, id) === 'unknown');
    return { verdict: 'unknown', because: open ?? traces ?? '' };
  }
  return traces || state === 'may'
    ? { verdict: 'may', because: traces ?? '' }
    : { verdict: 'yes', because: '' };
};

const byTraits = (diet: Diet, ingredient: Ingredient): Found =>
  diet.avoidsTraits
    .map((trait) => ({ verdict: verdictOfTrait[traitOf(ingredient, trait)], because: trait }))
    .reduce((a, b) => (rank[b.verdict] > rank[a.verdict] ? b : a), { verdict: 'yes', because: '' } as Found);

const kept = new Map(diets.map((diet) => [diet, new WeakMap<Ingredient, Found>()]));

/**
 * A diet against one ingredient, and the fact it turns on. A choice or a faith turns on what is in a dish: of its label
 * only "contains" counts, not traces. An allergy turns on the label alone.
 */
const judge = (diet: Diet, ingredient: Ingredient): Found => {
  const answers = kept.get(diet)!;
  const known = answers.get(ingredient);
  if (known) return known;
  const found = workOut(diet, ingredient);
  answers.set(ingredient, found);
  return found;
};

const workOut = (diet: Diet, ingredient: Ingredient): Found => {
  const label = byLabel(diet, ingredient);
  if (diet.kind !== 'choice' && diet.kind !== 'religious') return label;
  return label.verdict === 'no' ? label : byTraits(diet, ingredient);
};

/**
 * Several diets against a recipe, through any depth: the hardest verdict, with every reason that is not a yes. Where a
 * recipe has no lines nobody is told yes, nor by a diet this workbook doesn't know.
 */
export const judgeRecipe = (wanted: readonly string[], recipe: Recipe, facts: Facts): Judged => {
  const judged = wanted.map((id) => judgeDiet(id, recipe, facts));
  if (judged.length === 1) return judged[0]!;
  const reasons = judged.flatMap((one) => one.reasons).sort(hardestFirst);
  return { verdict: judged.reduce((v, one) => harder(v, one.verdict), 'yes' as Verdict), reasons };
};

const hardestFirst = (a: Reason, b: Reason): number => rank[b.verdict] - rank[a.verdict];

const answersOf = once((_recipe: Recipe, _facts: Facts) => new Map<string, Judged>());

const judgeDiet = (id: string, recipe: Recipe, facts: Facts): Judged => {
  const answers = answersOf(recipe, facts);
  const known = answers.get(id);
  if (known) return known;
  const judged = judgeAll(id, recipe, facts);
  answers.set(id, judged);
  return judged;
};

const judgeAll = (id: string, recipe: Recipe, facts: Facts): Judged => {
  const diet = byId.get(id);
  if (!diet) return { verdict: 'unknown', reasons: [] };
  const reasons: Reason[] = [];
  let verdict: Verdict = unwritten(recipe, facts).length > 0 ? 'unknown' : 'yes';
  for (const { ingredient, through } of ways(recipe, facts)) {
    const { verdict: one, because } = judge(diet, ingredient);
    if (one === 'yes') continue;
    verdict = harder(verdict, one);
    reasons.push({ verdict: one, diet: id, ingredient, through, because });
  }
  return { verdict, reasons: reasons.sort(hardestFirst) };
};

/** A guest against a recipe: one who hasn't answered, or has a wish in their own words, is never told yes. */
export const judgeGuest = (guest: Guest, recipe: Recipe, facts: Facts): Judged => {
  if (!guest.answered) return { verdict: 'unknown', reasons: [] };
  const judged = judgeRecipe(guest.diets, recipe, facts);
  return guest.other ? { ...judged, verdict: harder(judged.verdict, 'unknown') } : judged;
};
