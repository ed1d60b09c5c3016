import type { FastifyRequest } from 'fastify';
import { costOfEvent } from '../../core/costing.js';
import type { Facts } from '../../core/facts/facts.js';
import type { Ingredient } from '../../core/facts/ingredient.js';
import type { Recipe } from '../../core/facts/recipe.js';
import { inWords, showQuantity } from '../../core/quantity/show.js';
import { type ScaledRecipe, scaledRecipe } from '../../core/sheets/scaled-recipe.js';
import { draftOf } from '../../store/draft.js';
import { type Format, formatFor } from '../format.js';
import { type Html, html } from '../html.js';
import { mark } from '../marks.js';
import { type EventUse, usesNow } from './uses.js';
import { costInWords } from './words.js';

/** One figure that a change of a recipe moves, as it stands and as it would. */
export type PreviewRow = { what: Html | string; now: string; then: string; moves: boolean };

/** What saving a recipe would change: in itself, and in the cost of a guest of each event it goes into. */
export const previewOf = async (
  request: FastifyRequest,
  wanted: Recipe,
  added: readonly Ingredient[],
): Promise<PreviewRow[]> => {
  const uses = await usesNow(request, wanted.key);
  const events = uses.map(({ key }) => key);
  const draft = await draftOf(request.server.house.db, wanted, { added, events });
  const stands = draft?.before.recipes.get(wanted.key);
  if (!draft || !stands) return [];
  const { before, after } = draft;
  const f = formatFor(request.kitchen);
  const own = ownRows(
    scaledRecipe(stands, undefined, before).value,
    scaledRecipe(wanted, undefined, after).value,
    f,
  );
  const guests = draft.events.map((event) => {
    const aGuest = (facts: Facts) => {
      const { aGuest, complete, total } = costOfEvent(event, facts).value;
      return costInWords(total === 0 && !complete ? undefined : aGuest, complete, f);
    };
    return row(eventName(uses, event.key), aGuest(before), aGuest(after));
  });
  return [...own, ...guests];
};

const ownRows = (now: ScaledRecipe, then: ScaledRecipe, f: Format): PreviewRow[] => {
  const rows = [
    row('Makes', makesInWords(now), makesInWords(then)),
    row('Cost of a batch', batchCost(now, f), batchCost(then, f)),
    row('Cost of a portion', portionCost(now, f), portionCost(then, f)),
    row('Contains', allergensInWords(now, f), allergensInWords(then, f)),
  ];
  const always = now.portions ? 'Cost of a portion' : 'Cost of a batch';
  return rows.filter(({ moves, what }) => moves || what === always);
};

const row = (what: Html | string, now: string, then: string): PreviewRow => ({
  what,
  now,
  then,
  moves: now !== then,
});

const eventName = (uses: readonly EventUse[], key: string): Html => {
  const use = uses.find((one) => one.key === key);
  return html`${mark(use?.mark)} ${use?.name}, food for a guest`;
};

const makesInWords = ({ made, facts }: ScaledRecipe): string =>
  made ? inWords(showQuantity(made, facts.kitchen), 'each') : 'not known';

const known = ({ cost, complete }: ScaledRecipe): boolean => complete || cost > 0;

const batchCost = (one: ScaledRecipe, f: Format): string =>
  costInWords(known(one) ? one.cost : undefined, one.complete, f);

const portionCost = (one: ScaledRecipe, f: Format): string =>
  costInWords(known(one) ? one.aPortion : undefined, one.complete, f);

const allergensInWords = ({ allergens }: ScaledRecipe, f: Format): string => {
  const named = allergens
    .filter(({ state }) => state === 'contains')
    .map(({ item }) => item.short.toLowerCase());
  const open = allergens.filter(({ state, unknown }) => unknown && state !== 'contains').length;
  const said = named.length > 0 ? f.list(named) : 'nothing on the list';
  return open > 0 ? `${said}; ${open} not known` : said;
};
