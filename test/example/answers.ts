import published from '../../shared/example/answers.json' with { type: 'json' };
import { byKey, type Facts } from '../../src/core/facts/facts.js';
import { exampleKitchen } from '../world.js';

type Need = { recipe: string; line: string; prepared?: string; bought?: string; unit?: string };
type Source = { ingredient: string; state: string; via: string[] };
type DishAnswer = {
  portions: string;
  factor: string;
  cost: string;
  minor: number;
  lines: { line: string; cost: string; minor: number }[];
  batches: Record<string, string>;
  needs: Need[];
  allergens: Record<string, { state: string; unknown: boolean; from: Source[] }>;
};
type Part = { exact: string; minor: number };
type WholeAnswer = Part & { aGuestMinor: number; food: Part; parts: Record<string, Part> };
type EventAnswer = {
  guests: number;
  cost: { exact: string; minor: number; aGuestMinor: number };
  dishes: Record<string, DishAnswer>;
  coverage: {
    guests: Record<string, Record<string, { has: string; dishes: Record<string, string> }>>;
    notAnswered: number;
  };
  prep: Record<string, { recipe: string; step: string; batches: string }[]>;
  whole: Record<'used' | 'bought' | 'together', WholeAnswer>;
};
/** The answers of shared/example/answers.json, by event. */
export const answers: Record<string, EventAnswer> = published;

/** The example kitchen, and the facts its sheets are calculated from. */
export const book = exampleKitchen();
export const facts: Facts = {
  kitchen: book.kitchen,
  places: byKey(book.places),
  ingredients: byKey(book.ingredients),
  recipes: byKey(book.recipes),
};
