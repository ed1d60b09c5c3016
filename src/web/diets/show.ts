import type { FastifyReply } from 'fastify';
import { type AllergenItem, allergenName, listOf } from '../../core/allergens.js';
import { askedByDiets, diets, isDiet } from '../../core/diets.js';
import type { DietKind } from '../../core/facts/diet.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import { traits } from '../../core/facts/traits.js';
import { read } from '../../store/documents.js';
import { namesOf } from '../../store/names.js';
import { Reading } from '../faults.js';
import type { Choice, Fault } from '../fields.js';
import type { Form } from '../form.js';
import type { Answerer } from '../house.js';
import { traitNames } from '../ingredients/diets.js';
import { page } from '../page.js';
import { rowsChanged } from '../rows.js';
import { save } from '../save.js';
import { dietsForm, readOwnDiets } from './form.js';

export type DietsList = {
  at: string;
  kinds: Choice[];
  traits: Choice[];
  allergens: Choice[];
  ingredients: string[];
  published: { name: string; kind: string; avoids: string; caution: string; source: string }[];
  list: { name: string; source: string; items: AllergenItem[]; edges: string[] };
};

/** The diets of every kitchen and its own, and the list in force with its clauses. */
export const showOwnDiets: Answerer = async (request, reply) => {
  const { db } = request.server.house;
  const stored = await read(db, 'kitchen', 'kitchen');
  if (!stored) return reply.redirect('/first-run', 303);
  const { ingredients } = await namesOf(db);
  return draw(reply, ingredients, dietsForm(stored.doc, stored.revision, ingredients));
};

export const saveOwnDiets: Answerer = async (request, reply) => {
  const form = request.body as Form;
  const { ingredients } = await namesOf(request.server.house.db);
  const changed = rowsChanged(form);
  if (changed) return draw(reply, ingredients, changed.form, [], changed.at);
  const reading = new Reading(form);
  const own = readOwnDiets(reading, ingredients, isDiet);
  return save(reply, {
    entity: 'kitchen',
    key: 'kitchen',
    form,
    faults: reading.faults,
    change: (doc: Kitchen) => ({ ...doc, diets: own }),
    redraw: (faults) => draw(reply, ingredients, form, faults),
    to: () => '/diets',
  });
};

const kindNames: Record<DietKind, string> = {
  allergen: 'an allergy: traces count',
  medical: 'medical: traces count',
  choice: 'a choice: what is in the dish counts',
  religious: 'a faith: what is in the dish counts',
};
const shortKinds: Record<DietKind, string> = {
  allergen: 'allergy',
  medical: 'medical',
  choice: 'choice',
  religious: 'faith',
};

const kinds = (Object.keys(kindNames) as DietKind[]).map((value) => ({ value, label: kindNames[value] }));

const draw = async (
  reply: FastifyReply,
  ingredients: readonly { name: string }[],
  form: Form,
  faults: readonly Fault[] = [],
  at = '',
) => {
  const { kitchen } = reply.request;
  const model: DietsList = {
    at,
    kinds,
    traits: traits.map((trait) => ({ value: trait, label: traitNames[trait] })),
    allergens: allergensAsked(kitchen),
    ingredients: ingredients.map(({ name }) => name),
    published,
    list: listInForce(kitchen),
  };
  return page(reply, 'diets/show', { title: 'Diets', form, faults, ...model }, 'diets/_form');
};

/** What the list in force asks, or a diet does: of anything else no label would ever be read. */
const allergensAsked = (kitchen: Kitchen): Choice[] => {
  const asked = new Set([...listOf(kitchen).items.flatMap(({ members }) => members), ...askedByDiets]);
  return [...asked].map((id) => ({ value: id, label: allergenName(id) }));
};

const published: DietsList['published'] = diets.map((diet) => ({
  name: diet.name,
  kind: shortKinds[diet.kind],
  avoids: [
    ...new Set([
      ...diet.avoidsTraits.map((trait) => traitNames[trait]),
      ...diet.avoidsAllergens.map(allergenName),
    ]),
    ...(diet.asksTraits.length > 0
      ? [`to be asked: ${diet.asksTraits.map((trait) => traitNames[trait]).join(', ')}`]
      : []),
  ].join(', '),
  caution: diet.caution,
  source: diet.source,
}));

const listInForce = (kitchen: Kitchen): DietsList['list'] => {
  const { name, source, items, edges } = listOf(kitchen);
  const { sulphites, glutenFree } = edges;
  return {
    name,
    source,
    items,
    edges: [
      sulphites ? `Sulphites: ${sulphites.clause}.` : '',
      `May be called gluten-free: ${glutenFree.clause}. Its cereals stay what they are.`,
    ].filter(Boolean),
  };
};
