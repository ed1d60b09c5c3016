import { z } from 'zod';
import { type Event, event } from './event.js';
import { type Ingredient, ingredient } from './ingredient.js';
import { type Kitchen, kitchen } from './kitchen.js';
import { labelPhotograph } from './label-photograph.js';
import { type Place, place } from './place.js';
import { prepPeriod } from './prep-period.js';
import { printedLabel } from './printed-label.js';
import { printedSheet } from './printed-sheet.js';
import { numberedPaper, payment, quote } from './quote.js';
import { type Recipe, recipe } from './recipe.js';

/** The whole kitchen as one document: the workbook file. Every list is sorted by key. */
export const workbook = z
  .strictObject({
    format: z.literal('catering-workbook').describe('What this document is.'),
    version: z.literal(1).describe('The version of its layout.'),
    kitchen,
    places: z.array(place).describe('The home kitchen and venues.'),
    ingredients: z.array(ingredient).describe('What is bought, with packs, prices and labels.'),
    recipes: z.array(recipe).describe('Dishes and components.'),
    events: z.array(event).describe('Parties.'),
    labelPhotographs: z.array(labelPhotograph).max(5000).default([]).describe('Photographs of labels.'),
    prepPeriods: z.array(prepPeriod).default([]).describe('What was ticked on the prep list.'),
    printedSheets: z.array(printedSheet).default([]).describe('Papers that were printed.'),
    printedLabels: z.array(printedLabel).default([]).describe('Labels of food that were printed.'),
    quotes: z.array(quote).default([]).describe('Quotes, as they were issued.'),
    payments: z.array(payment).default([]).describe('What clients paid.'),
    numberedPapers: z
      .array(numberedPaper)
      .default([])
      .describe('Invoices, receipts and credits, by kind and number.'),
  })
  .describe(
    'A whole kitchen: settings, places, ingredients, recipes, events, what is done of their prep, printed of their papers, offered and paid.',
  )
  .meta({ id: 'workbook' });
export type Workbook = z.infer<typeof workbook>;

/** What people save, one revision at a time. */
export const entities = { kitchen, place, ingredient, recipe, event } as const;
export type EntityName = keyof typeof entities;
export type EntityOf = {
  kitchen: Kitchen;
  place: Place;
  ingredient: Ingredient;
  recipe: Recipe;
  event: Event;
};

/** What the sheets are calculated from: everything one answer needs, looked up by key. */
export type Facts = {
  kitchen: Kitchen;
  places: ReadonlyMap<string, Place>;
  ingredients: ReadonlyMap<string, Ingredient>;
  recipes: ReadonlyMap<string, Recipe>;
};

/** A done event computes from what was kept; any other from the facts of today. */
export const factsOf = (event: Event, today: Facts): Facts => {
  const { served } = event;
  if (!served) return today;
  return {
    kitchen: served.kitchen,
    places: byKey(served.places),
    ingredients: byKey(served.ingredients),
    recipes: byKey(served.recipes),
  };
};

export const byKey = <T extends { key: string }>(list: readonly T[]): ReadonlyMap<string, T> =>
  new Map(list.map((one) => [one.key, one]));
