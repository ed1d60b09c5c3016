import allergens from '../../shared/allergens.json' with { type: 'json' };
import published from '../../shared/diets.json' with { type: 'json' };
import type { DietKind, OwnDiet } from './facts/diet.js';
import type { Kitchen } from './facts/kitchen.js';
import type { Trait } from './facts/traits.js';

/** A diet is a rule over facts: what it avoids, and what leaves it open. */
export type Diet = {
  id: string;
  name: string;
  kind: DietKind;
  avoidsTraits: Trait[];
  /** Facts that only the guest or the client can settle: where one stands, the dish is not known. */
  asksTraits: Trait[];
  avoidsAllergens: string[];
  /** Allergens that count where they are named, and where the list in force asks for them also where they are not known. */
  avoidsNamed: string[];
  avoidsIngredients: string[];
  /** What is usually minded beyond the facts kept here, in words; it is never a verdict. */
  caution: string;
  source: string;
  schemaOrg: string | null;
};

const plain = { asksTraits: [], avoidsNamed: [], avoidsIngredients: [], caution: '' };

/** The published diets, in the order they are offered. */
export const diets: readonly Diet[] = published.map((diet) => ({ ...plain, ...diet }) as Diet);

const byId = new Map(diets.map((diet) => [diet.id, diet]));

const members = new Map(allergens.groups.map((group) => [group.id, group.members]));
export const isGroup = (id: string): boolean => members.has(id);

const ofOwn = new WeakMap<OwnDiet, Diet>();

/** A diet of the kitchen's own as a rule; who avoids a group avoids each substance of it. */
const ownAsDiet = (own: OwnDiet): Diet => {
  const known = ofOwn.get(own);
  if (known) return known;
  const { key, avoidsAllergens, ...rule } = own;
  const avoided = new Set(avoidsAllergens.flatMap((id) => [id, ...(members.get(id) ?? [])]));
  const source = "The kitchen's own.";
  const diet = { ...plain, ...rule, id: key, avoidsAllergens: [...avoided], source, schemaOrg: null };
  ofOwn.set(own, diet);
  return diet;
};

type Own = Pick<Kitchen, 'diets'> & Partial<Pick<Kitchen, 'allergenList'>>;

const listed = new Map(
  allergens.lists.map(({ id, items }) => [id, new Set(items.flatMap((item) => item.members))]),
);
const asked = new Map<string, Diet>();

/** A published diet under the list in force: what that asks for is asked of the diet too. */
const underList = (diet: Diet, list: string): Diet => {
  const more = diet.avoidsNamed.filter((id) => listed.get(list)?.has(id));
  if (more.length === 0) return diet;
  const mark = `${list} ${diet.id}`;
  const found = asked.get(mark) ?? { ...diet, avoidsAllergens: [...diet.avoidsAllergens, ...more] };
  asked.set(mark, found);
  return found;
};

/** Every diet a guest may have in a kitchen: the published ones, then its own. */
export const dietsOf = (kitchen: Own): Diet[] => [...diets, ...kitchen.diets.map(ownAsDiet)];

/** A diet by its id, published or of the kitchen's own; undefined for one nobody knows. */
export const dietOf = (id: string, kitchen?: Own): Diet | undefined => {
  const found = byId.get(id);
  if (found) return underList(found, kitchen?.allergenList ?? '');
  const own = kitchen?.diets.find(({ key }) => key === id);
  return own && ownAsDiet(own);
};

export const dietName = (id: string, kitchen?: Own): string => dietOf(id, kitchen)?.name ?? id;
export const isDiet = (id: string, kitchen?: Own): boolean => dietOf(id, kitchen) !== undefined;

/** Substances and groups of them that some diet turns on, whatever list is in force. */
export const askedByDiets: ReadonlySet<string> = new Set(
  diets.flatMap(({ avoidsAllergens }) => avoidsAllergens),
);

/** An allergy and a medical diet turn on traces too; a choice or a faith on what is in a dish. */
export const mindsTraces = ({ kind }: Pick<Diet, 'kind'>): boolean =>
  kind === 'allergen' || kind === 'medical';
