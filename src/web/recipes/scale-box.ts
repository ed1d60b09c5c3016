import type { Kitchen } from '../../core/facts/kitchen.js';
import type { Rational } from '../../core/quantity/rational.js';
import { inWords, showQuantity } from '../../core/quantity/show.js';
import type { Quantity } from '../../core/quantity/units.js';
import type { ScaledRecipe } from '../../core/sheets/scaled-recipe.js';
import type { Form } from '../form.js';
import { formatFor } from '../format.js';
import { type Html, html } from '../html.js';
import { pageOf } from '../links.js';
import { mark } from '../marks.js';
import { typedAmount, typedMeasure } from '../typed.js';
import type { PageAsked } from './asked.js';
import { lighter } from './line-rows.js';
import type { EventUse } from './uses.js';

export type ScaleBox = {
  words: Html;
  trays: string[];
  /** What stands when a box is left empty. */
  own: { portions: string; each: string };
  links: { href: string; mark: Html; words: string }[];
  toBase: string;
};

type Around = { uses: readonly EventUse[]; event: string; dish: string };

/** What stands beside the recipe to scale it. */
export const scaleBox = (scaled: ScaledRecipe, around: Around): ScaleBox => {
  const { recipe, facts, factor, made, asked, portion } = scaled;
  const f = formatFor(facts.kitchen);
  return {
    words:
      factor && made
        ? html`<b>${lighter(showQuantity(made, facts.kitchen))}</b>, which is <b>× ${factor.toFixed(2)}</b> base.`
        : html`<b class="loud">How much to make can’t be worked out.</b>`,
    trays: scaled.steps.flatMap(({ trays, number }) =>
      trays === undefined ? [] : [`${f.count(trays, 'tray')} in step ${number}`],
    ),
    own: {
      portions: typedAmount(recipe.yield.portions),
      each: portion && !asked ? shown(portion, facts.kitchen) : '',
    },
    links: links(recipe.key, around),
    toBase: asked ? pageOf('recipe', recipe.key) : '',
  };
};

const links = (key: string, { uses, event, dish }: Around): ScaleBox['links'] =>
  uses.flatMap((use) =>
    use.dishes
      .filter((one) => one.event !== event || (dish !== '' && one.dish !== dish))
      .map((one) => ({
        href: `${pageOf('recipe', key)}?event=${encodeURIComponent(one.event)}&dish=${encodeURIComponent(one.dish)}`,
        mark: mark(use.mark),
        words: use.mark
          ? use.dishes.length > 1
            ? `, ${one.recipeName}`
            : ''
          : `${use.name}${use.dishes.length > 1 ? `, ${one.recipeName}` : ''}`,
      })),
  );

/** A quantity in one line of text, "4.60 kg" or "46 portions". */
export const shown = (quantity: Quantity, kitchen: Kitchen): string =>
  inWords(showQuantity(quantity, kitchen), 'each');

/** The boxes as typed, else as the page was asked for by other means. */
export const boxForm = ({ asked, portions, portion, facts }: ScaledRecipe, typed: PageAsked): Form => {
  const { form } = typed;
  if (form.portions !== '' || form.each !== '' || !asked) return form;
  const each =
    'portions' in asked ? typedMeasure(asked.portion ?? null) : portion ? shown(portion, facts.kitchen) : '';
  return { portions: portions ? figure(portions) : '', each };
};

const figure = (value: Rational): string =>
  value.isWhole ? value.toString() : value.toFixed(2).replace(/0$/, '');
