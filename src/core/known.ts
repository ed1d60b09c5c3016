/** Of a recipe, what rules about others need: its name, and the keys of what it is made of and a variant of. */
export type KnownRecipe = { name: string; components: readonly string[]; variantOf: string | null };

/** What stands beside the document that is saved: as much of the kitchen as its rules ask about. */
export type Known = {
  ingredients: ReadonlySet<string>;
  /** The kitchen's own diets, by key. */
  diets: ReadonlySet<string>;
  /** Diets that guests have, by key, each with the name of an event. */
  dietsOfGuests: ReadonlyMap<string, string>;
  /** Every recipe that the document reaches through components or variants, by key. */
  recipes: ReadonlyMap<string, KnownRecipe>;
  places: ReadonlySet<string>;
  /** Places other than the document that are the home kitchen, by name. */
  otherHomes: readonly string[];
  /** Who bears a name already: another document of the same kind whose name compares alike. */
  namesake: { name: string; key: string } | undefined;
  /** The kitchen's currency once a price exists in it. */
  pricedIn: string | undefined;
};

export const nothingKnown: Known = {
  ingredients: new Set(),
  diets: new Set(),
  dietsOfGuests: new Map(),
  recipes: new Map(),
  places: new Set(),
  otherHomes: [],
  namesake: undefined,
  pricedIn: undefined,
};
