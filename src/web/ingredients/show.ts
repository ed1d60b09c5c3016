import { listOf } from '../../core/allergens.js';
import { localTime } from '../../core/calendar.js';
import { traitOf } from '../../core/diets.js';
import { type Ingredient, type Pack, traits } from '../../core/facts/ingredient.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import { wholeDespite } from '../../core/foods.js';
import { isOfPackBefore } from '../../core/label-again.js';
import { missingOf } from '../../core/missing.js';
import type { Problem } from '../../core/problem.js';
import { eatenWhole } from '../../core/problems.js';
import { unitPrice } from '../../core/unit-price.js';
import { preferredPack } from '../../core/weighing.js';
import { read, type Stored } from '../../store/documents.js';
import { type PhotographNote, photographOf } from '../../store/label-photographs.js';
import { namesOf } from '../../store/names.js';
import { type Use, usesOf } from '../../store/uses.js';
import { type Format, formatFor } from '../format.js';
import { type Answerer, param } from '../house.js';
import { type Html, html } from '../html.js';
import { pageOf } from '../links.js';
import { inOrder } from '../listing.js';
import { withMend } from '../mends.js';
import { page } from '../page.js';
import { measureInWords, typedPercent, typedUnit } from '../typed.js';
import { traitNames } from './diets.js';
import { type FigurePart, figurePart } from './figure-rows.js';
import { keepingStates } from './keeping.js';
import { type LabelRow, labelRows } from './label-rows.js';

export type PackRow = {
  size: string;
  from: string;
  inUse: boolean;
  unitPrice: Html;
  price: string;
  older: string[];
};
export type IngredientPage = {
  key: string;
  archived: boolean;
  sub: string;
  notBought: boolean;
  packs: PackRow[];
  figures: FigurePart;
  revision: number;
  label: LabelRow[];
  list: string;
  /** What the label says word for word, and whether that is the pack bought now. */
  words: { text: string; said: string };
  photograph: string;
  traits: { yes: string; no: string; unknown: string };
  substitutes: { ratio: string; name: string; href: string; caution: string }[];
  keeping: { state: string; days: string }[];
  usedIn: { name: string; href: string }[];
  note: string;
  problems: (Problem & { mend: string })[];
};

/** All that is known of an ingredient, where it comes from, and what uses it. */
export const showIngredient: Answerer = async (request, reply) => {
  const { db } = request.server.house;
  const stored = await read(db, 'ingredient', param(request, 'key'));
  if (!stored) return reply.callNotFound();
  const uses = await usesOf(db, 'ingredient', stored.key);
  const { standing } = await photographOf(db, stored.key);
  const model = {
    ...pageModel(stored, uses, request.kitchen),
    photograph: photographWords(stored.doc, standing),
    substitutes: substituteRows(stored.doc, await namesOf(db)),
  };
  return page(reply, 'ingredients/show', { title: stored.doc.name, nav: 'Recipes', ...model });
};

const photographWords = (doc: Ingredient, shown: PhotographNote['standing']): string => {
  if (!shown) return '';
  return isOfPackBefore(shown, doc) ? 'Photograph of the pack before' : 'Photograph of the label';
};

const wordsOf = ({ labelText, labelDate }: Ingredient, f: Format): IngredientPage['words'] => ({
  text: labelText,
  said: labelDate ? `The label said on ${f.dateYear(labelDate)}:` : 'The label of a pack before said:',
});

const pageModel = (
  stored: Stored<'ingredient'>,
  uses: readonly Use[],
  kitchen: Kitchen,
): Omit<IngredientPage, 'substitutes' | 'photograph'> => {
  const { doc } = stored;
  const f = formatFor(kitchen);
  return {
    key: doc.key,
    archived: doc.archived,
    sub: subLine(stored, kitchen, f),
    notBought: doc.notBought,
    packs: doc.packs.map((pack) => packRow(pack, doc, kitchen, f)),
    figures: figurePart(doc),
    revision: stored.revision,
    label: labelRows(doc, kitchen),
    list: listOf(kitchen).name,
    words: wordsOf(doc, f),
    traits: traitWords(doc),
    keeping: keepingStates.flatMap((state) => {
      const days = doc.keeping[state];
      return days === null ? [] : [{ state, days: f.count(days, 'day') }];
    }),
    usedIn: inOrder(uses, kitchen.locale).map(({ entity, key, name }) => ({
      name,
      href: pageOf(entity, key),
    })),
    note: doc.note,
    problems: [...missingOf(doc, { kitchen }), ...oddYield(doc)].map(withMend),
  };
};

const substituteRows = (
  { substitutes }: Ingredient,
  names: Awaited<ReturnType<typeof namesOf>>,
): IngredientPage['substitutes'] =>
  substitutes.map(({ item, ratio, caution }) => {
    const [entity, key] =
      'ingredient' in item
        ? (['ingredient', item.ingredient] as const)
        : (['recipe', item.component] as const);
    const named = names[`${entity}s`].find((one) => one.key === key);
    return { ratio, name: named?.name ?? key, href: pageOf(entity, key), caution };
  });

const oddYield = (doc: Ingredient): Problem[] => {
  const food = wholeDespite(doc);
  return food?.yield ? [eatenWhole(doc, food.name.toLowerCase(), typedPercent(food.yield))] : [];
};

const subLine = ({ doc, updatedAt }: Stored<'ingredient'>, kitchen: Kitchen, f: Format): string => {
  const { date } = localTime(updatedAt.getTime(), kitchen.timeZone);
  const said = [
    doc.section,
    doc.notBought ? 'not bought: it costs nothing' : '',
    doc.frozen ? 'bought frozen' : '',
  ].filter(Boolean);
  const first = said.join(', ');
  return `${first ? `${first.charAt(0).toUpperCase()}${first.slice(1)}. ` : ''}Last changed ${f.date(date)}.`;
};

const packRow = (pack: Pack, doc: Ingredient, kitchen: Kitchen, f: Format): PackRow => {
  const unit = unitPrice(pack, kitchen);
  const prices = [...pack.prices].sort((a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : 0));
  const words = ({ price, date, guess }: Pack['prices'][number]) =>
    `${f.money(price)} on ${f.dateYear(date)}${guess ? ', a guess' : ''}`;
  return {
    size: measureInWords(pack.size),
    from: [pack.brand, pack.supplier].filter(Boolean).join(', '),
    inUse: preferredPack(doc)?.key === pack.key,
    unitPrice: unit
      ? html`<span class="qty"><b>${f.money(unit.minor)}</b></span><br><span class="thin">${unit.unit === 'each' ? 'each' : `a ${typedUnit(unit.unit)}`}</span>`
      : html`<b class="loud">no price</b>`,
    price: prices[0] ? words(prices[0]) : '',
    older: prices.slice(1).map(words),
  };
};

const traitWords = (doc: Ingredient): IngredientPage['traits'] => {
  const of = (wanted: string) =>
    traits
      .filter((trait) => traitOf(doc, trait) === wanted)
      .map((trait) => traitNames[trait])
      .join(', ');
  return { yes: of('yes'), no: of('no'), unknown: of('unknown') };
};
