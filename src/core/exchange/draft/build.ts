import { amount, type Measure } from '../../facts/common.js';
import { type Ingredient, ingredient } from '../../facts/ingredient.js';
import { type Line, type Recipe, type RecipeYield, recipe, type Step } from '../../facts/recipe.js';
import { figuresOf, foodOf } from '../../foods.js';
import { folded } from '../../near-names.js';
import { exact } from '../../quantity/amount.js';
import { baseOf, quantity } from '../../quantity/units.js';

/** What a line goes by: something the kitchen has, or an ingredient that is new with this recipe. */
export type DraftItem = Line['item'] | { fresh: string; food: string };

/** A line as the cook confirmed it. */
export type ConfirmedLine = Pick<Line, 'key' | 'amount' | 'amountTo' | 'unit' | 'preparation' | 'stated'> & {
  item: DraftItem;
  /** What one of its unit holds, to be kept as that weight of its ingredient. */
  holds: Measure | null;
};

/** Lines and steps under one heading: lines of the recipe, or a component of its own. */
export type ConfirmedPart = {
  title: string;
  lines: ConfirmedLine[];
  steps: Omit<Step, 'key'>[];
  /** Its name and what it makes, where it becomes a component. */
  component: { name: string; makes: Measure } | null;
};

/** A draft that nothing is unsure of any more. */
export type Confirmed = Pick<Recipe, 'name' | 'yield' | 'byPiece' | 'cup' | 'note'> & {
  parts: ConfirmedPart[];
};

/** Gives a key for a name that no other document has. */
export type KeysFor = { recipe: (name: string) => string; ingredient: (name: string) => string };

/** A weight that an ingredient of the kitchen is to have where it has none. */
export type NewWeight = { ingredient: string; weight: Ingredient['weights'][number] };

export type Built = {
  recipe: Recipe;
  components: Recipe[];
  ingredients: Ingredient[];
  weights: NewWeight[];
};

/**
 * The recipe that a confirmed draft makes, with its components in the order they stand, the ingredients that are new
 * with it and the weights it says of others. A component goes in as one batch, where its heading stood. Figures stay
 * exact and in their own units.
 */
export const buildRecipe = (draft: Confirmed, keys: KeysFor): Built => {
  const pantry = new Pantry(draft.name, keys);
  const components: Recipe[] = [];
  const lines: Line[] = [];
  const steps: Omit<Step, 'key'>[] = [];
  for (const part of draft.parts) {
    const own = part.lines.map((line) => lineOf(line, part, pantry));
    if (!part.component) {
      lines.push(...own);
      steps.push(...part.steps);
      continue;
    }
    const component = recipe.parse({
      key: keys.recipe(part.component.name),
      name: part.component.name,
      yield: yieldOf(part.component.makes),
      cup: draft.cup,
      lines: own,
      steps: keyed(part.steps),
    });
    components.push(component);
    lines.push({ ...wholeBatch, key: freeKey(component.key, lines), item: { component: component.key } });
  }
  const { name, yield: makes, byPiece, cup, note } = draft;
  return {
    recipe: {
      ...recipe.parse({ key: keys.recipe(name), name, yield: makes }),
      byPiece,
      cup,
      note,
      lines,
      steps: keyed(steps),
    },
    components,
    ingredients: pantry.fresh,
    weights: pantry.weights,
  };
};

const wholeBatch: Omit<Line, 'key' | 'item'> = {
  amount: '1',
  amountTo: null,
  unit: 'batch',
  preparation: '',
  stated: 'usual',
  cooked: '',
  scales: 'straight',
};

const lineOf = (line: ConfirmedLine, { title, component }: ConfirmedPart, pantry: Pantry): Line => {
  const { key, amount, amountTo, unit, preparation, stated } = line;
  const under = component ? '' : purposeOf(title);
  return {
    key,
    amount,
    amountTo,
    unit,
    item: pantry.itemOf(line),
    preparation: [preparation, under].filter(Boolean).join(', ').slice(0, 200),
    stated,
    cooked: '',
    scales: amount === null ? 'taste' : 'straight',
  };
};

/** What a heading says of the lines below it: "For the sauce" and "Sauce" are "for the sauce". */
export const purposeOf = (title: string): string => {
  const plain = title.trim().replace(/[\s:.]+$/, '');
  if (plain === '' || /^ingredients?$/i.test(plain)) return '';
  const low =
    plain === plain.toUpperCase() ? plain.toLowerCase() : plain.charAt(0).toLowerCase() + plain.slice(1);
  return /^(?:for|to) /i.test(low) ? low : `for the ${low.replace(/^the /, '')}`;
};

/** What the recipe under a heading would be called: "For the sauce" is "Sauce". */
export const componentName = (title: string): string => {
  const plain = purposeOf(title).replace(/^for (?:the |an? |each |your )?|^to /, '');
  return plain.charAt(0).toUpperCase() + plain.slice(1);
};

/** A measure as what a recipe makes; a count is portions. */
export const yieldOf = (makes: Measure): RecipeYield => {
  const base = baseOf(makes.unit);
  if (base === 'g') return { portions: null, weight: makes, volume: null };
  if (base === 'ml') return { portions: null, weight: null, volume: makes };
  return { portions: makes.amount, weight: null, volume: null };
};

const keyed = (steps: readonly Omit<Step, 'key'>[]): Step[] =>
  steps.map((step, at) => ({ ...step, key: `step-${at + 1}` }));

const freeKey = (wanted: string, lines: readonly Line[]): string => {
  const taken = new Set(lines.map(({ key }) => key));
  for (let n = 1; ; n++) {
    const key = n === 1 ? wanted.slice(0, 70) : `${wanted.slice(0, 70)}-${n}`;
    if (!taken.has(key)) return key;
  }
};

/** The ingredients that are new with a draft, each once, and the weights that its lines say. */
class Pantry {
  readonly fresh: Ingredient[] = [];
  readonly weights: NewWeight[] = [];
  private readonly byName = new Map<string, Ingredient>();

  constructor(
    private readonly source: string,
    private readonly keys: KeysFor,
  ) {}

  itemOf({ item, unit, holds }: ConfirmedLine): Line['item'] {
    const known: Line['item'] = 'fresh' in item ? { ingredient: this.make(item).key } : item;
    const weight = holds && 'ingredient' in known ? this.weightOf(unit, holds) : undefined;
    if (weight && 'ingredient' in known) this.note(known.ingredient, weight);
    return known;
  }

  private make({ fresh, food }: { fresh: string; food: string }): Ingredient {
    const there = this.byName.get(folded(fresh));
    if (there) return there;
    const figures = foodOf(food);
    const name = fresh.trim().slice(0, 120);
    const made = {
      ...ingredient.parse({ key: this.keys.ingredient(name), name }),
      ...(figures ? figuresOf(figures) : {}),
    };
    this.byName.set(folded(fresh), made);
    this.fresh.push(made);
    return made;
  }

  /** In grams, exact where a figure of an ingredient can be so fine, else to the thousandth. */
  private weightOf(unit: string, holds: Measure): NewWeight['weight'] | undefined {
    const { value, base } = quantity(exact(holds.amount), holds.unit, 'metric');
    if (base !== 'g' || value.isZero) return undefined;
    return {
      unit,
      grams: amount.safeParse(value.toString()).success ? value.toString() : value.toFixed(3),
      of: 'bought',
      source: `As the recipe of ${this.source} says`.slice(0, 200),
    };
  }

  /** The first line that says so counts; a figure that an ingredient has already stays. */
  private note(key: string, weight: NewWeight['weight']): void {
    const fresh = this.fresh.find((one) => one.key === key);
    if (fresh) fresh.weights = withWeight(fresh.weights, weight);
    else if (!this.weights.some((one) => one.ingredient === key && one.weight.unit === weight.unit))
      this.weights.push({ ingredient: key, weight });
  }
}

/** Weights with one more, unless there is one of that unit. */
export const withWeight = (
  weights: Ingredient['weights'],
  weight: NewWeight['weight'],
): Ingredient['weights'] =>
  weights.some(({ unit }) => baseOf(unit) === baseOf(weight.unit)) ? weights : [...weights, weight];
