import type { Kitchen } from '../../core/facts/kitchen.js';
import { atHand } from '../../core/limit.js';
import type { Answer } from '../../core/problem.js';
import type { Rational } from '../../core/quantity/rational.js';
import { inWords, showQuantity } from '../../core/quantity/show.js';
import type { Quantity } from '../../core/quantity/units.js';
import type { ScaledRecipe } from '../../core/sheets/scaled-recipe.js';
import { sidesInWords } from '../../core/tins.js';
import type { Choice } from '../fields.js';
import { type Form, text } from '../form.js';
import { type Html, html } from '../html.js';
import { changeOf, pageOf } from '../links.js';
import { inOrder } from '../listing.js';
import { mark } from '../marks.js';
import { typedAmount, typedMeasure } from '../typed.js';
import { equipmentNotes } from './equipment.js';
import type { PageAsked } from './how-much.js';
import { lighter } from './line-rows.js';
import { shapeChoices } from './tin.js';
import type { EventUse } from './uses.js';

export type ScaleBox = {
  words: Html;
  /** What it takes in tins, pans and shelves, and what is left over; a sentence each. */
  notes: string[];
  /** The same for paper, where each step says its own. */
  paper: string;
  /** What no longer holds, or why it can't be worked out. */
  warnings: string[];
  /** What stands when a box is left empty. */
  own: { portions: string; each: string; total: string; sides: string; tins: string; shape: string };
  /** Whether it was asked for in another way than portions, so that those fields are seen. */
  open: boolean;
  ingredients: Choice[];
  shapes: Choice[];
  /** Where the tin is entered, while it is not known. */
  addTin: string;
  links: { href: string; mark: Html; words: string }[];
  toBase: string;
};

/** Problems that the box itself tells. */
export const inBox: ReadonlySet<string> = new Set(['tin-depth', 'tin-overflow', 'not-a-limit']);

type Around = { uses: readonly EventUse[]; event: string; dish: string; typed: PageAsked };

/** What stands beside the recipe to scale it. */
export const scaleBox = ({ value, problems }: Answer<ScaledRecipe>, around: Around): ScaleBox => {
  const { recipe, facts, factor, made, asked, portion, base } = value;
  const { kitchen } = facts;
  const { tin } = recipe;
  const notes = equipmentNotes(value);
  const warnings = problems.filter(({ code }) => inBox.has(code)).map(({ sentence }) => sentence);
  const typed = (names: readonly string[]) => names.some((name) => text(around.typed.form, name) !== '');
  return {
    words:
      factor && made
        ? html`<b>${lighter(showQuantity(made, kitchen))}</b>, which is <b>× ${factor.toFixed(2)}</b> base.`
        : html`<b class="loud">How much to make can’t be worked out.</b>`,
    notes: [...notes.whole, ...notes.steps],
    paper: [...notes.whole, ...warnings].join(' '),
    warnings,
    own: {
      portions: typedAmount(recipe.yield.portions),
      each: portion && !asked ? shown(portion, kitchen) : '',
      total: base && base.base !== 'portion' ? shown(base, kitchen) : '',
      sides: tin ? sidesInWords(tin) : '',
      tins: tin ? String(tin.count) : '1',
      shape: tin?.shape ?? 'round',
    },
    open: typed(others),
    ingredients: [
      { value: '', label: 'an ingredient' },
      ...inOrder(atHand(recipe, facts), kitchen.locale).map(({ key, name }) => ({ value: key, label: name })),
    ],
    shapes: shapeChoices,
    addTin: tin || typed(['sides', 'tins', 'deep']) ? '' : `${changeOf('recipe', recipe.key)}#tin`,
    links: links(recipe.key, around),
    toBase: asked ? pageOf('recipe', recipe.key) : '',
  };
};

const others = ['total', 'have', 'sides', 'tins', 'deep', 'whole'];

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

/** The boxes as typed, else as the page was asked for by an event's dish. */
export const boxForm = (
  { asked, portions, portion, facts, recipe }: ScaledRecipe,
  { form, asked: typed, faults }: PageAsked,
): Form => {
  const shape = text(form, 'tin') || (recipe.tin?.shape ?? 'round');
  if (typed || faults.length > 0 || !asked) return { ...form, tin: shape };
  const each =
    'portions' in asked ? typedMeasure(asked.portion ?? null) : portion ? shown(portion, facts.kitchen) : '';
  return { portions: portions ? figure(portions) : '', each, tin: shape };
};

const figure = (value: Rational): string =>
  value.isWhole ? value.toString() : value.toFixed(2).replace(/0$/, '');
