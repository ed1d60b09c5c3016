import { z } from 'zod';
import { type Workbook, workbook } from '../facts/facts.js';
import type { Ingredient } from '../facts/ingredient.js';
import type { Problem } from '../problem.js';
import { misfits, wayTo } from '../shape-problems.js';
import { inOneOrder, periodFaults } from './workbook-periods.js';
import { photographFaults, photographsInOrder } from './workbook-photographs.js';
import { labelFaults, labelsInOrder, printFaults, printsInOrder } from './workbook-prints.js';
import { papersInOrder, quoteFaults } from './workbook-quotes.js';
import { workbookRules } from './workbook-rules.js';

/** A fault in a workbook file: where it stands, in words and as a path, and what to write there. */
export type Fault = { place: string; path: string[]; sentence: string };

export type Parsed = { workbook: Workbook } | { faults: Fault[] };

/**
 * The file of a kitchen: the same facts always give the same text, whatever the order they arrived in. Fields stand
 * in the order of the schema, lists of documents and records are sorted by key, two spaces indent.
 */
export const workbookText = (kitchen: Workbook): string => {
  const { places, ingredients, recipes, events, ...rest } = workbook.parse(kitchen);
  const { labelPhotographs, prepPeriods, printedSheets, printedLabels, quotes, payments, numberedPapers } =
    rest;
  const sorted = {
    ...rest,
    places: inOrder(places),
    ingredients: inOrder(ingredients).map(withOrderedRecords),
    recipes: inOrder(recipes),
    events: inOrder(events).map((event) => ({
      ...event,
      served: event.served && {
        ...event.served,
        places: inOrder(event.served.places),
        ingredients: inOrder(event.served.ingredients).map(withOrderedRecords),
        recipes: inOrder(event.served.recipes),
      },
    })),
    labelPhotographs: photographsInOrder(labelPhotographs),
    prepPeriods: inOrder(prepPeriods).map(inOneOrder),
    printedSheets: printsInOrder(printedSheets),
    printedLabels: labelsInOrder(printedLabels),
    quotes: inOrder(quotes),
    payments: inOrder(payments),
    numberedPapers: papersInOrder(numberedPapers),
  };
  return `${JSON.stringify(sorted, null, 2)}\n`;
};

// By code unit, as everywhere in the file: keys are plain letters, figures and hyphens.
const inOrder = <T extends { key: string }>(list: readonly T[]): T[] =>
  list.toSorted((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0));

const withOrderedRecords = (ingredient: Ingredient): Ingredient => ({
  ...ingredient,
  allergens: orderedRecord(ingredient.allergens),
  traits: orderedRecord(ingredient.traits),
});

const orderedRecord = <T extends object>(record: T): T =>
  Object.fromEntries(Object.entries(record).toSorted(([a], [b]) => (a < b ? -1 : 1))) as T;

/** Reads a workbook file: the kitchen, or every fault with its place, first of the text, then of shape, then of sense. */
export const parseWorkbook = (text: string): Parsed => {
  const read = readJson(text);
  if ('fault' in read) return { faults: [read.fault] };
  const shaped = workbook.safeParse(read.value);
  if (!shaped.success)
    return {
      faults: misfits(workbook, read.value, shaped.error).map(({ path, sentence }) =>
        faultAt(wayTo(read.value, path), sentence),
      ),
    };
  const faults = [
    ...workbookRules(shaped.data).map(faultOf),
    ...photographFaults(shaped.data).map(({ path, sentence }) =>
      faultAt(['labelPhotographs', ...path], sentence),
    ),
    ...periodFaults(shaped.data).map(({ path, sentence }) => faultAt(['prepPeriods', ...path], sentence)),
    ...printFaults(shaped.data).map(({ path, sentence }) => faultAt(['printedSheets', ...path], sentence)),
    ...labelFaults(shaped.data).map(({ path, sentence }) => faultAt(['printedLabels', ...path], sentence)),
    ...quoteFaults(shaped.data).map(({ path, sentence }) => faultAt(path, sentence)),
  ];
  return faults.length > 0 ? { faults } : { workbook: shaped.data };
};

const readJson = (text: string): { value: unknown } | { fault: Fault } => {
  try {
    return { value: JSON.parse(text.replace(/^\uFEFF/, '')) };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { fault: { place: 'the file', path: [], sentence: `This is not JSON: ${why}.` } };
  }
};

const faultAt = (path: string[], sentence: string): Fault => ({
  place: path.length === 0 ? 'the file' : path.join(', '),
  path,
  sentence,
});

const listOf = {
  kitchen: 'kitchen',
  place: 'places',
  ingredient: 'ingredients',
  recipe: 'recipes',
  event: 'events',
} as const;

const faultOf = ({ subject, sentence }: Problem): Fault => {
  const { entity, key, field } = subject;
  const within = field ? field.split('/') : [];
  return faultAt(entity === 'kitchen' ? ['kitchen', ...within] : [listOf[entity], key, ...within], sentence);
};

/** The JSON Schema of the workbook file, draft 2020-12, made from the types the workbook itself is checked by. */
export const workbookSchema = () => z.toJSONSchema(workbook, { io: 'input' });
