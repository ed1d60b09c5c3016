import type { FastifyRequest } from 'fastify';
import type { Event } from '../../core/facts/event.js';
import type { Facts } from '../../core/facts/facts.js';
import { recipeOf } from '../../core/lookup.js';
import { type WhatIf, whatIf } from '../../core/whole-cost/what-if.js';
import { read } from '../../store/documents.js';
import { todayOf } from '../coming.js';
import { addressesOf } from '../events/addresses.js';
import type { OneEvent } from '../events/event.js';
import { menuForm } from '../events/menu-form.js';
import type { Form, FormValue } from '../form.js';
import { formatFor } from '../format.js';
import { packs } from '../ingredients/packs.js';
import { changeOf } from '../links.js';
import { typedMeasure } from '../typed.js';

/** A way to keep a change: a form that saves it or leads to where it is saved, or a link. */
export type Keep =
  | { words: string; action: string; fields: { name: string; value: string }[] }
  | { words: string; href: string };

/** How each part of a change is kept; a head-count leads to its form, a price to where it is entered. */
export const keepsOf = async (
  request: FastifyRequest,
  { event, facts, revision }: OneEvent,
  change: WhatIf,
): Promise<Keep[]> => {
  const at = addressesOf(event.key);
  const f = formatFor(request.kitchen);
  const keeps: Keep[] = [];
  const { guests, dearer, pack, without, portion } = change;
  if (guests !== undefined) {
    const { groups } = whatIf(event, facts, { guests }).event;
    const typed = { revision: String(revision), groups: groups.map(groupRow) };
    keeps.push({
      words: `Keep ${f.count(guests, 'guest')}`,
      action: `${at.guests}/preview`,
      fields: sent(typed),
    });
  }
  if (without || portion) {
    const changed = whatIf(event, facts, { without, portion }).event;
    const names = (key: string) => facts.recipes.get(key)?.name ?? '';
    keeps.push({
      words: menuWords(change, event, facts),
      action: at.menu,
      fields: sent(menuForm(changed, revision, names, f)),
    });
  }
  if (pack) keeps.push(...(await keptPack(request, pack)));
  if (dearer)
    keeps.push({
      words: `Enter a new price of ${facts.ingredients.get(dearer.ingredient)?.name ?? 'it'}`,
      href: changeOf('ingredient', dearer.ingredient, 'packs'),
    });
  return keeps;
};

const menuWords = ({ without, portion }: WhatIf, event: Event, facts: Facts): string => {
  if (without && portion) return 'Save this menu';
  const at = (without ?? portion)!;
  const dish = event.courses.find(({ key }) => key === at.course)?.dishes.find(({ key }) => key === at.dish);
  const name = dish ? recipeOf(dish.recipe, facts).name : '';
  return without ? `Leave out ${name}` : `Save ${name} at ${typedMeasure(portion!.portion)}`;
};

const groupRow = ({ key, guests }: Event['groups'][number]): Form => ({ key, guests: String(guests) });

/** The form of its packs with another of them preferred; what that means for the label it asks itself. */
const keptPack = async (
  request: FastifyRequest,
  { ingredient, pack }: NonNullable<WhatIf['pack']>,
): Promise<Keep[]> => {
  const { db } = request.server.house;
  const stored = await read(db, 'ingredient', ingredient);
  if (!stored) return [];
  const { kitchen } = request;
  const form = await packs.form(stored.doc, { kitchen, today: todayOf(request), who: '', db });
  const preferred = String(stored.doc.packs.findIndex(({ key }) => key === pack));
  return [
    {
      words: `Price ${stored.doc.name} at this pack`,
      action: changeOf('ingredient', ingredient, 'packs'),
      fields: sent({ ...form, revision: String(stored.revision), preferred }),
    },
  ];
};

/** A form as a browser would send it. */
const sent = (form: Form): { name: string; value: string }[] =>
  Object.entries(form).flatMap(([name, value]) => sentAs(name, value));

const sentAs = (name: string, value: FormValue): { name: string; value: string }[] => {
  if (typeof value === 'string') return [{ name, value }];
  if (!Array.isArray(value))
    return Object.entries(value).flatMap(([inner, one]) => sentAs(`${name}.${inner}`, one));
  return value.flatMap((one, i) =>
    typeof one === 'string' ? [{ name, value: one }] : sentAs(`${name}[${i}]`, one),
  );
};
