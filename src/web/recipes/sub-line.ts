import { localTime } from '../../core/calendar.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import { showQuantity } from '../../core/quantity/show.js';
import type { ScaledRecipe } from '../../core/sheets/scaled-recipe.js';
import type { Stored } from '../../store/documents.js';
import { formatFor } from '../format.js';
import { type Html, html } from '../html.js';
import { pageOf } from '../links.js';
import { lighter } from './line-rows.js';
import { type EventUse, usesInWords } from './uses.js';

export type Other = { key: string; name: string };
type Around = {
  stored: Stored<'recipe'>;
  base: Other | undefined;
  relatives: { usedIn: readonly Other[]; variants: readonly Other[] };
  uses: readonly EventUse[];
  byName: boolean;
};

/** The line under a recipe's name: what it makes, where it is used, when it last changed. */
export const subLine = ({ base: makes, facts }: ScaledRecipe, around: Around): Html => {
  const { stored, base, relatives, uses, byName } = around;
  const { kitchen } = facts;
  return html`Base yield ${makes ? lighter(showQuantity(makes, kitchen)) : 'not known'}.${base && html` Variant of ${links([base])}.`}${uses.length > 0 && html` Used in ${usesInWords(uses)}.`}${relatives.usedIn.length > 0 && html` Component of ${links(relatives.usedIn)}.`}${relatives.variants.length > 0 && html` Variants: ${links(relatives.variants)}.`} Last changed ${changed(stored, kitchen, byName)}.`;
};

const links = (all: readonly Other[]): Html =>
  html`${all.map(({ key, name }, i) => html`${i > 0 && ', '}<a class="bare" href="${pageOf('recipe', key)}">${name}</a>`)}`;

const changed = ({ updatedAt, updatedBy }: Stored<'recipe'>, kitchen: Kitchen, byName: boolean): string => {
  const { date } = localTime(updatedAt.getTime(), kitchen.timeZone);
  return `${formatFor(kitchen).date(date)}${byName ? `, ${updatedBy}` : ''}`;
};
