import type { ColumnType, Generated } from 'kysely';
import type { RecipeDraft } from '../core/exchange/recipe/draft.js';
import type { Dish, Event, Service } from '../core/facts/event.js';
import type { AllergenState, Ingredient } from '../core/facts/ingredient.js';
import type { Kitchen } from '../core/facts/kitchen.js';
import type { Place } from '../core/facts/place.js';
import type { Recipe, Step } from '../core/facts/recipe.js';

export type Id = Generated<number>;
export type Json<T> = ColumnType<T, string, string>;
export type Instant = ColumnType<Date, Date | string, Date | string>;

type Revised = { revision: number; updated_at: Instant; updated_by: string };
type Kept = Revised & { archived_at: Instant | null; origin: 'own' | 'example' };
type Named = { id: Id; key: string; name: string; name_key: string };
type PartOf = { id: Id; key: string; position: number };

export type KitchenTable = Revised & {
  id: Id;
  key: string;
  name: string;
  currency: string;
  time_zone: string;
  locale: string;
  units: Kitchen['units'];
  scale_step: string;
  heat: Kitchen['heat'];
  cup: Kitchen['cup'];
  paper: Kitchen['paper'];
  allergen_list: Kitchen['allergenList'];
  tax: Json<Kitchen['tax']>;
  costs: Json<Kitchen['costs']>;
  margin_floor: string | null;
  round_to: number;
  terms: Json<Kitchen['terms']>;
  diets: Json<Kitchen['diets']>;
  diets_kept_days: number | null;
  letter_keys: boolean;
  people: Json<Kitchen['people']>;
  price_lists: Json<Kitchen['priceLists']>;
};

export type PlaceTable = Named &
  Kept & {
    kind: Place['kind'];
    ovens: Json<Place['ovens']>;
    rings: number;
    mixers: number;
    pans: Json<Place['pans']>;
    fridge_shelves: number;
    freezer_shelves: number;
    water: Place['water'];
    access: Json<Place['access']>;
    drive: number | null;
    note: string;
  };

export type IngredientTable = Named &
  Kept & {
    section: string;
    not_bought: boolean;
    frozen: boolean;
    edible_yield: Json<Ingredient['edibleYield']>;
    cooked_yields: Json<Ingredient['cookedYields']>;
    density: Json<Ingredient['density']>;
    weights: Json<Ingredient['weights']>;
    allergens: Json<Record<string, AllergenState>>;
    label_text: string;
    label_date: string | null;
    substitutes: Json<Ingredient['substitutes']>;
    traits: Json<Ingredient['traits']>;
    keeping: Json<Ingredient['keeping']>;
    note: string;
  };

export type PackTable = PartOf & {
  ingredient_id: number;
  supplier: string;
  brand: string;
  code: string;
  size_amount: string;
  size_unit: string;
  preferred: boolean;
  withdrawn_at: Instant | null;
};

export type PriceTable = PartOf & {
  ingredient_id: number;
  pack: string;
  date: string;
  price: number;
  guess: boolean;
  withdrawn_at: Instant | null;
};

export type RecipeTable = Named &
  Kept & {
    variant_of: string | null;
    yield_portions: string | null;
    yield_weight: Json<Recipe['yield']['weight']>;
    yield_volume: Json<Recipe['yield']['volume']>;
    by_piece: boolean;
    cooking_loss: string | null;
    tin: Json<Recipe['tin']>;
    cup: Recipe['cup'];
    keeping_days: number | null;
    note: string;
  };

export type LineTable = PartOf & {
  recipe_id: number;
  amount: string | null;
  amount_to: string | null;
  unit: string;
  ingredient: string | null;
  component: string | null;
  preparation: string;
  stated: Recipe['lines'][number]['stated'];
  cooked: string;
  scales: Recipe['lines'][number]['scales'];
};

export type StepTable = PartOf & {
  recipe_id: number;
  words: string;
  minutes: number | null;
  minutes_longest: number | null;
  attended: boolean;
  oven: Json<Step['oven']>;
  portions_per_shelf: string | null;
  rings: number;
  pan: string | null;
  mixers: number;
  fridge_shelves: number;
  after: Json<Step['after']>;
  equipment: Json<string[]>;
  served_within: number | null;
  at_place: Step['where'];
  days_ahead: number;
};

export type EventTable = Named &
  Kept & {
    client: string;
    client_key: string;
    date: string;
    place: string;
    state: Event['state'];
    eats_all: number;
    over_catering: string;
    costs: Json<Event['costs']>;
    price: Json<Event['price']>;
    afterwards: Json<Event['afterwards']>;
    note: string;
  };

export type GroupTable = PartOf & { event_id: number; name: string; guests: number; portion: string };

export type GuestTable = PartOf & {
  event_id: number;
  name: string;
  name_key: string;
  count: number;
  guest_group: string;
  answered: boolean;
  diets: Json<string[]>;
  avoids: Json<string[]>;
  traces: boolean;
  seat: string;
  other: string;
};

export type CourseTable = PartOf & {
  event_id: number;
  name: string;
  time: string;
  day_after: boolean;
  service: Service;
};

export type DishTable = PartOf & {
  event_id: number;
  course: string;
  recipe: string;
  portion: Json<Dish['portion']>;
  eaters: Json<Dish['eaters']>;
  service: Dish['service'];
  kept_apart: string;
  kept_for: Json<string[]>;
  price: number | null;
};

export type ChangeTable = {
  id: Id;
  at: Instant;
  who: string;
  entity: string;
  key: string;
  revision: number;
  before: Json<unknown>;
  after: Json<unknown>;
  together: number | null;
};

/** A CSV text that somebody looks at before it is taken over. */
export type CsvDraftTable = {
  key: string;
  at: Instant;
  who: string;
  kind: 'price-list' | 'tables';
  text: string;
  settings: Json<unknown>;
};

export type DraftTable = Revised & {
  id: Id;
  name: string;
  read: Json<RecipeDraft>;
  /** The form as it was last sent. */
  form: Json<unknown>;
  /** What was pasted; empty where it was a page or held several recipes. */
  text: string;
  /** The recipe that was made of it. */
  recipe: string | null;
  thrown_at: Instant | null;
  made_at: Instant;
};

export type TickTable = {
  period_id: number;
  event: string;
  date: string;
  recipe: string;
  /** Empty for a recipe without steps. */
  step: string;
  batches: string | null;
  who: string;
  at: Instant;
};
