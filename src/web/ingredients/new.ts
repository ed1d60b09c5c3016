import type { FastifyReply, FastifyRequest } from 'fastify';
import { type Ingredient, ingredient } from '../../core/facts/ingredient.js';
import { type Food, figuresOf, foodOf, foodsLike } from '../../core/foods.js';
import { honestSource } from '../../core/own-figures.js';
import { readMoney } from '../../core/reading.js';
import { readPastDay, typedDay } from '../../core/reading-days.js';
import { readEdibleYield, readMeasure } from '../../core/reading-measures.js';
import { namesOf } from '../../store/names.js';
import { todayOf } from '../coming.js';
import { Reading } from '../faults.js';
import type { Fault } from '../fields.js';
import { type Form, text } from '../form.js';
import { type Answerer, query } from '../house.js';
import { keyFrom } from '../keys.js';
import { page } from '../page.js';
import { add } from '../save.js';
import { typedYield } from '../typed.js';
import { namesakeOf, sectionsIn } from './basics.js';
import { doubtsOf, foodInWords, restOf, type Said } from './food-words.js';

export type NewIngredient = {
  sections: string[];
  namesake: { name: string; href: string } | undefined;
  currency: string;
  foods: { id: string; name: string; says: string }[];
  /** The food whose figures were chosen, and those that go with its edible yield. */
  chosen: { name: string; doubts: string[]; rest: Said[] } | undefined;
};

const asWeighed = { yield: '100 %', yieldSource: 'as weighed' };

/** The few things first; the rest has its own forms on the ingredient's page. */
export const askForIngredient: Answerer = (request, reply) =>
  draw(reply, { name: query(request, 'name'), date: typedDay(todayOf(request)), ...asWeighed });

export const addIngredient: Answerer = async (request, reply) => {
  const form = withChosen(request.body as Form);
  if (text(form, 'do') === 'look') return draw(reply, form);
  const taken = new Set(
    (await namesOf(request.server.house.db)).ingredients.map(({ key }) => key).concat('new'),
  );
  const reading = new Reading(form);
  const doc = readIngredient(reading, request, (key) => taken.has(key));
  const redraw = (faults: readonly Fault[]) => draw(reply, form, faults);
  return add(reply, { entity: 'ingredient', form, faults: reading.faults, doc, redraw });
};

/** What the reference has for the name, as it is typed. */
export const lookUp: Answerer = (request, reply) =>
  draw(reply, request.body as Form, [], 'ingredients/_offers');

/** The edible yield of the food that was chosen, and what goes with it. */
export const choose: Answerer = (request, reply) =>
  draw(reply, withChosen(request.body as Form), [], 'ingredients/_reference');

/**
 * The form with the edible yield of the food chosen. `filled` says whose yield was filled in before, so that what is
 * typed over it stands; choosing none takes a yield that was filled in out again.
 */
const withChosen = (form: Form): Form => {
  const id = text(form, 'reference');
  const food = foodOf(id);
  if (id === text(form, 'filled')) return form;
  if (!food) return { ...form, ...asWeighed, filled: '' };
  const { edibleYield } = figuresOf(food);
  const given = edibleYield && { yield: typedYield(edibleYield.yield), yieldSource: edibleYield.source };
  return { ...form, ...(given ?? asWeighed), filled: id };
};

const readIngredient = (
  reading: Reading,
  request: FastifyRequest,
  isTaken: (key: string) => boolean,
): Ingredient => {
  const name = reading.words('name', 'Name', 'Enter what the ingredient is called.');
  const notBought = reading.ticked('notBought');
  const made = ingredient.parse({ key: keyFrom(name, isTaken), name: 'New ingredient' });
  return {
    ...made,
    name,
    section: reading.text('section'),
    notBought,
    packs: notBought ? [] : readPack(reading, request),
    ...readFigures(reading),
  };
};

const readPack = (reading: Reading, request: FastifyRequest): Ingredient['packs'] => {
  const { currency } = request.kitchen;
  const today = todayOf(request);
  const size = reading.maybe('size', 'Pack size', readMeasure);
  const price = reading.maybe('price', 'Price', (typed) => readMoney(typed, currency));
  const date = reading.take('date', 'Day of the price', (typed) => readPastDay(typed, today), today);
  if (price !== null && reading.text('size') === '')
    reading.refuse('size', 'Pack size', 'Enter what one pack of that price holds, such as 2.5 kg.');
  if (size === null) return [];
  const guess = reading.ticked('guess');
  const prices = price === null ? [] : [{ key: date, date, price, guess }];
  const supplier = reading.text('supplier');
  return [{ key: 'pack-1', supplier, brand: '', code: '', size, preferred: true, prices }];
};

/** The yield as it stands in the form, and the other figures of the food that was chosen. */
const readFigures = (reading: Reading): Partial<Ingredient> => {
  const food = foodOf(reading.text('reference'));
  const typed = reading.maybe('yield', 'Edible yield', readEdibleYield);
  const source = typed === null ? '' : honestSource(reading.text('yieldSource'), typed, 'edibleYield');
  const edibleYield = typed === null ? null : { yield: typed, source };
  return { ...(food && figuresOf(food)), edibleYield };
};

const draw = async (
  reply: FastifyReply,
  form: Form,
  faults: readonly Fault[] = [],
  part: 'ingredients/_new' | 'ingredients/_offers' | 'ingredients/_reference' = 'ingredients/_new',
) => {
  const { db } = reply.request.server.house;
  const name = text(form, 'name').trim();
  const model: NewIngredient = {
    sections: await sectionsIn(db, reply.request.kitchen),
    namesake: namesakeOf((await namesOf(db)).ingredients, name, ''),
    currency: reply.request.kitchen.currency,
    foods: offers(name, foodOf(text(form, 'reference'))),
    chosen: chosenOf(foodOf(text(form, 'reference'))),
  };
  const head = { title: name || 'A new ingredient', nav: 'Recipes', form, faults } as const;
  return page(reply, 'ingredients/new', { ...head, ...model }, part);
};

/** Foods of a like name; one that is chosen stays among them whatever is typed after. */
const offers = (name: string, chosen: Food | undefined): NewIngredient['foods'] => {
  const found = foodsLike(name);
  const all = chosen && !found.includes(chosen) ? [chosen, ...found].slice(0, 3) : found;
  return all.map((food) => ({ id: food.id, name: food.name, says: foodInWords(food) }));
};

const chosenOf = (food: Food | undefined): NewIngredient['chosen'] =>
  food && { name: food.name, doubts: doubtsOf(food), rest: restOf(figuresOf(food)) };
