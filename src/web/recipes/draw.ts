import type { FastifyReply } from 'fastify';
import type { Kitchen } from '../../core/facts/kitchen.js';
import { normalName } from '../../core/names.js';
import { equipmentUsed } from '../../store/equipment.js';
import type { Named } from '../../store/names.js';
import { relativesOf } from '../../store/recipes.js';
import { cupChoices } from '../cups.js';
import type { Choice, Fault } from '../fields.js';
import { type Form, text } from '../form.js';
import { formatFor } from '../format.js';
import { type Html, html, nothing } from '../html.js';
import { pageOf } from '../links.js';
import { inOrder } from '../listing.js';
import { mark } from '../marks.js';
import { page } from '../page.js';
import type { Items } from './items.js';
import { type LineOffers, lineOffers } from './line-offers.js';
import { scaleChoices, statedChoices } from './line-words.js';
import type { PreviewRow } from './preview.js';
import { keyed } from './steps.js';
import { shapeChoices } from './tin.js';
import { type EventUse, usesNow } from './uses.js';

export type RecipeChange = LineOffers & {
  key: string;
  address: string;
  back: string;
  gutter: string;
  at: string;
  items: Items['offered'];
  scalings: Choice[];
  stateds: Choice[];
  earlier: { value: string; label: string }[][];
  degrees: string;
  /** What steps are done with, as typed before. */
  equipment: string[];
  cups: Choice[];
  shapes: Choice[];
  through: Html;
  inUse: boolean;
  preview: PreviewRow[] | undefined;
  namesake: { name: string; href: string } | undefined;
};

export type Drawn = {
  key: string;
  names: { recipes: readonly Named[] };
  items: Items;
  faults?: readonly Fault[];
  /** The row to go on in. */
  at?: string;
  preview?: PreviewRow[];
  part?: 'recipes/_form' | 'recipes/_preview';
};

/** Draws the form of a recipe with all that was typed. */
export const drawRecipe = async (
  reply: FastifyReply,
  form: Form,
  { key, names, items, faults = [], at = '', preview, part = 'recipes/_form' }: Drawn,
) => {
  const { request } = reply;
  const uses = key ? await usesNow(request, key) : [];
  const lines = await lineOffers(form, items, request.server.house.db);
  const { usedIn } = await relativesOf(request.server.house.db, key);
  const address = key ? `${pageOf('recipe', key)}/edit` : '/recipes/new';
  const steps = keyed(form).map((row, i) => ({ key: text(row, 'key'), label: stepLabel(row, i) }));
  const model: RecipeChange = {
    key,
    address,
    back: key ? pageOf('recipe', key) : '/recipes',
    gutter: key ? 'recipe' : text(form, 'variantOf') ? 'new variant' : 'new recipe',
    at,
    items: inOrder(items.offered, request.kitchen.locale),
    ...lines,
    scalings: scaleChoices,
    stateds: statedChoices,
    earlier: steps.map((_, i) =>
      steps.slice(0, i).flatMap(({ key, label }) => (key ? [{ value: key, label }] : [])),
    ),
    equipment: withUsual(await equipmentUsed(request.server.house.db)),
    degrees: `°${request.kitchen.heat}`,
    shapes: shapeChoices,
    cups: [{ value: '', label: 'What the kitchen’s settings say' }, ...cupChoices],
    through: throughTo(uses, usedIn, request.kitchen),
    inUse: uses.length > 0 || usedIn.length > 0,
    preview,
    namesake: namesakeOf(form, key, names.recipes),
  };
  const title = text(form, 'name').trim() || 'A new recipe';
  return page(reply, 'recipes/change', { title, nav: 'Recipes', form, faults, ...model }, part);
};

const usual = ['fryer', 'grill', 'tray', 'board', 'griddle'];

/** What was typed before, then what kitchens share most. */
const withUsual = (used: readonly string[]): string[] => {
  const known = new Set(used.map(normalName));
  return [...used, ...usual.filter((one) => !known.has(one))];
};

/** Where saving works the change through to. */
const throughTo = (
  uses: readonly EventUse[],
  usedIn: readonly { name: string }[],
  kitchen: Kitchen,
): Html => {
  if (uses.length + usedIn.length === 0) return nothing;
  const events = uses.map((use) => html` ${mark(use.mark)} ${use.name}`);
  const recipes = formatFor(kitchen).list(usedIn.map(({ name }) => name));
  const both = uses.length > 0 && usedIn.length > 0;
  return html`Saving works the change through to${events}${both ? ', and to the recipes ' : usedIn.length > 0 && ' '}${recipes}: quantities, prep, costing and allergens.`;
};

const stepLabel = (row: Form, at: number): string => {
  const words = text(row, 'words').trim();
  return `${at + 1} ${words.length > 40 ? `${words.slice(0, 40)}…` : words}`;
};

const namesakeOf = (form: Form, key: string, recipes: readonly Named[]) => {
  const wanted = normalName(text(form, 'name'));
  const other = recipes.find((one) => one.key !== key && normalName(one.name) === wanted);
  return wanted && other ? { name: other.name, href: pageOf('recipe', other.key) } : undefined;
};
