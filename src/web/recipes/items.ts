import type { Line } from '../../core/facts/recipe.js';
import { normalName } from '../../core/names.js';
import { nearNames } from '../../core/near-names.js';
import type { Named } from '../../store/names.js';

type Item = Line['item'];
type Names = { ingredients: readonly Named[]; recipes: readonly Named[] };

/** What a name in a line means: an item, two of them, or none and the names that are near. */
export type FoundItem = { item: Item } | { both: string } | { near: string[] };

/** Ingredients and recipes by the names that lines are typed with. */
export class Items {
  private readonly byText = new Map<string, Item>();
  private readonly twice = new Set<string>();
  private readonly texts = new Map<string, string>();
  /** What is offered while one types: what is not archived. */
  readonly offered: { name: string; isRecipe: boolean }[] = [];

  constructor({ ingredients, recipes }: Names) {
    const ingredientNames = new Set(ingredients.map(({ name }) => normalName(name)));
    for (const { name } of recipes)
      if (ingredientNames.has(normalName(name))) this.twice.add(normalName(name));
    for (const one of ingredients) this.put(one, { ingredient: one.key }, 'ingredient');
    for (const one of recipes) this.put(one, { component: one.key }, 'recipe');
  }

  private put({ key, name, archived }: Named, item: Item, kind: 'ingredient' | 'recipe'): void {
    const text = this.twice.has(normalName(name)) ? `${name} (${kind})` : name;
    this.texts.set(`${kind} ${key}`, text);
    this.byText.set(normalName(text), item);
    if (!archived) this.offered.push({ name: text, isRecipe: kind === 'recipe' });
  }

  find(text: string): FoundItem {
    const wanted = normalName(text);
    const item = this.byText.get(wanted);
    if (item) return { item };
    if (this.twice.has(wanted)) return { both: text.trim() };
    return {
      near: nearNames(
        text,
        this.offered.map(({ name }) => name),
      ),
    };
  }

  /** The name an item is typed with. */
  textOf(item: Item): string {
    const name = 'ingredient' in item ? `ingredient ${item.ingredient}` : `recipe ${item.component}`;
    return this.texts.get(name) ?? '';
  }
}
