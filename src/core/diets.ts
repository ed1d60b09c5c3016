import allergens from '../../shared/allergens.json' with { type: 'json' };
import published from '../../shared/diets.json' with { type: 'json' };
import { stateOf, ways } from './allergens.js';
import type { Known } from './facts/common.js';
import type { Guest } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import type { Ingredient, Trait } from './facts/ingredient.js';
import type { Recipe } from './facts/recipe.js';

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
 * is no pork, an allergen stated for dairy, egg, fish or shellfish), else unknown.
 */
export const traitOf = (ingredient: Ingredient, trait: Trait): Known => {
  const said = ingredient.traits[trait];
  if (said && said !== 'unknown') return said;
  if (trait === 'meat' && kindsOfMeat.some((kind) => ingredient.traits[kind] === 'yes')) return 'yes';
  if (kindsOfMeat.includes(trait) && ingredient.traits.meat === 'no') return 'no';
  const members = shownBy[trait];
  if (!members) return 'unknown';
  const { state, unknown } = stateOf(ingredient, members);
  if (state === 'contains') return 'yes';
  return state === 'unknown' || unknown ? 'unknown' : 'no';
};

const verdictOfTrait: Record<Known, Verdict> = { yes: 'no', unknown: 'unknown', no: 'yes' };

const avoidedBy = (diet: Diet): string[] =>
  diet.avoidsAllergens.flatMap((id) => allergens.groups.find((group) => group.id === id)?.members ?? [id]);

/** A diet against one ingredient: the hardest verdict of all that the diet avoids, and the fact it turns on. */
const judge = (diet: Diet, ingredient: Ingredient): { verdict: Verdict; because: string } => {
  let verdict: Verdict = 'yes';
  let because = '';
  const weighUp = (found: Verdict, fact: string) => {
    if (rank[found] <= rank[verdict]) return;
    verdict = found;
    because = fact;
  };
  for (const trait of diet.avoidsTraits) weighUp(verdictOfTrait[traitOf(ingredient, trait)], trait);
  for (const id of new Set(avoidedBy(diet))) weighUp(verdictOfAllergen(ingredient, [id]), id);
  // A group's own entry ("nuts") speaks only for the group as a whole.
  for (const id of diet.avoidsAllergens) {
    if (ingredient.allergens[id]?.state === 'contains') weighUp('no', id);
  }
  return { verdict, because };
};

const verdictOfAllergen = (ingredient: Ingredient, members: string[]): Verdict => {
  const { state, unknown } = stateOf(ingredient, members);
  if (state === 'contains') return 'no';
  if (state === 'unknown' || unknown) return 'unknown';
  return state === 'may' ? 'may' : 'yes';
};

/** Several diets against a recipe, through any depth: the hardest verdict, with every reason that is not a yes. */
export const judgeRecipe = (wanted: readonly string[], recipe: Recipe, facts: Facts): Judged => {
  const reasons: Reason[] = [];
  let verdict: Verdict = 'yes';
  for (const id of wanted) {
    const diet = byId.get(id);
    // A diet this workbook doesn't know can't be judged, so nobody is told yes.
    if (!diet) verdict = harder(verdict, 'unknown');
    else
      for (const { ingredient, through } of ways(recipe, facts)) {
        const found = judge(diet, ingredient);
        if (found.verdict === 'yes') continue;
        verdict = harder(verdict, found.verdict);
        reasons.push({ ...found, diet: id, ingredient, through });
      }
  }
  reasons.sort((a, b) => rank[b.verdict] - rank[a.verdict]);
  return { verdict, reasons };
};

/** A guest against a recipe: one who hasn't answered, or has a wish in their own words, is never told yes. */
export const judgeGuest = (guest: Guest, recipe: Recipe, facts: Facts): Judged => {
  if (!guest.answered) return { verdict: 'unknown', reasons: [] };
  const judged = judgeRecipe(guest.diets, recipe, facts);
  return guest.other ? { ...judged, verdict: harder(judged.verdict, 'unknown') } : judged;
};
