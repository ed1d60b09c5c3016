import { roastWords } from '../../core/equipment-words.js';
import type { Facts } from '../../core/facts/facts.js';
import type { Answer, Problem } from '../../core/problem.js';
import { showQuantity } from '../../core/quantity/show.js';
import type { ScaledRecipe } from '../../core/sheets/scaled-recipe.js';
import type { Stored } from '../../store/documents.js';
import type { Form } from '../form.js';
import { type Html, html } from '../html.js';
import { pageOf } from '../links.js';
import { mark } from '../marks.js';
import { withMend } from '../mends.js';
import { type AllergenRow, allergenRows } from './allergen-rows.js';
import type { Starts } from './asked.js';
import { differencesInWords } from './differences.js';
import { askedInAddress, type PageAsked } from './how-much.js';
import { type LineRow, lighter, lineRows } from './line-rows.js';
import { cupIn, footOf } from './recipe-foot.js';
import { boxForm, inBox, type ScaleBox, scaleBox, shown } from './scale-box.js';
import { type StepRow, stepRows } from './step-rows.js';
import { type Other, subLine } from './sub-line.js';
import { type TotalRow, totalRow } from './total-row.js';
import type { EventUse } from './uses.js';

export type RecipePage = {
  key: string;
  archived: boolean;
  sub: Html;
  scaled: boolean;
  /** What the first column is for, and what the second is of. */
  forWhat: Html;
  base: Html;
  lines: LineRow[];
  total: TotalRow;
  steps: StepRow[];
  cup: string;
  note: string;
  scale: ScaleBox;
  /** A guide for each step that roasts, in sentences. */
  roasts: string[][];
  allergens: AllergenRow[];
  free: string;
  labels: string;
  differs: { name: string; href: string; list: string[] } | undefined;
  problems: (Problem & { mend: string })[];
  csv: string;
  json: string;
  foot: readonly string[];
  paper: { left: string; middle: string; right: string; foot: string };
};

type Around = {
  stored: Stored<'recipe'>;
  facts: Facts;
  relatives: { usedIn: Other[]; variants: Other[] };
  uses: EventUse[];
  event: string;
  dish: string;
  typed: PageAsked;
  starts: Starts;
  printed: string;
  byName: boolean;
};

/** Everything that stands on the page of a recipe, and what its two boxes hold. */
export const recipePage = (
  answer: Answer<ScaledRecipe>,
  around: Around,
): { model: RecipePage; form: Form } => {
  const { value, problems } = answer;
  const { recipe, facts, made, base } = value;
  const { kitchen } = facts;
  const other = recipe.variantOf === null ? undefined : around.facts.recipes.get(recipe.variantOf);
  const form = boxForm(value, around.typed);
  const address = pageOf('recipe', recipe.key);
  const makes = made ? shown(made, kitchen) : 'not known';
  const use = around.uses.find(({ key }) => key === around.event);
  const model: RecipePage = {
    key: recipe.key,
    archived: around.stored.doc.archived,
    sub: subLine(value, { ...around, base: other }),
    scaled: value.asked !== undefined,
    forWhat: html`for ${mark(use?.mark, use?.name)} ${made ? lighter(showQuantity(made, kitchen)) : 'an amount not known'}`,
    base: html`base ${base ? lighter(showQuantity(base, kitchen)) : 'not known'}`,
    lines: lineRows(value),
    total: totalRow(value),
    steps: stepRows(value, around.starts),
    cup: cupIn(value),
    note: recipe.note,
    scale: scaleBox(answer, around),
    roasts: value.roasts.map((guide) => roastWords(guide, kitchen)),
    ...allergenRows(value),
    differs: other && {
      name: other.name,
      href: pageOf('recipe', other.key),
      list: differencesInWords(other, recipe, around.facts),
    },
    problems: problems.filter(({ code }) => code !== 'to-taste' && !inBox.has(code)).map(withMend),
    csv: `${address}.csv${queryOf(around)}`,
    json: `${address}.json${queryOf(around)}`,
    foot: footOf(answer, cupIn(value)),
    paper: {
      left: kitchen.name,
      middle: use ? use.name : '',
      right: `Recipe, ${makes}`,
      foot: `${around.printed} Void when the recipe, a label or a price changes.`,
    },
  };
  return { model, form };
};

/** The part of the address that says how much is made, for the other forms of the same sheet. */
const queryOf = ({ event, dish, typed }: Around): string =>
  event ? `?${new URLSearchParams(dish ? { event, dish } : { event })}` : askedInAddress(typed.form);
