import type { FastifyReply } from 'fastify';
import { cupWords } from '../../core/cup-words.js';
import { purposeOf } from '../../core/exchange/draft/build.js';
import type { RecipeDraft } from '../../core/exchange/recipe/draft.js';
import { needsCup, readUnit } from '../../core/quantity/units.js';
import type { KeptDraft } from '../../store/drafts.js';
import { inZone } from '../clock.js';
import { cupChoices } from '../cups.js';
import { type Choice, type Fault, Fields } from '../fields.js';
import { type Form, rows, text } from '../form.js';
import { formatFor } from '../format.js';
import { inOrder } from '../listing.js';
import { page, wantsPart } from '../page.js';
import { type Around, aroundForm } from './around.js';
import { type LineRow, lineRows } from './line-rows.js';
import { allNew } from './pressed.js';
import { headState } from './states.js';
import { type StepRow, stepRows } from './step-rows.js';

/** A heading of the source: lines of the recipe, or a component of its own. */
export type PartRow = { at: string; title: string; under: string; component: boolean; lines: LineRow[] };

export type DraftPage = {
  id: number;
  address: string;
  from: string;
  kept: string;
  open: number;
  head: { open: boolean; because: string[]; source: string[] };
  parts: PartRow[];
  choices: { value: string; label: string }[];
  steps: StepRow[];
  allNew: string[];
  /** true when an ingredient is made with this recipe. */
  fresh: boolean;
  focus: string;
  degrees: string;
  /** Which cups and spoons the recipe may mean; none where no line is measured by one. */
  cups: Choice[];
  items: { name: string; isRecipe: boolean }[];
  pasted: string;
  stale: { by: string; at: string } | undefined;
};

export type Drawn = {
  around?: Around;
  faults?: readonly Fault[];
  /** The row that was seen to last; the next open one is gone on with. */
  after?: string;
  stale?: KeptDraft;
};

const sources: Record<RecipeDraft['source'], string> = {
  'json-ld': 'Read from the recipe data of a page',
  microdata: 'Read from a marked-up page',
  page: 'Read from the words of a page',
  text: 'Read from text',
};

/** Draws a draft beside its source with all that was typed. */
export const drawDraft = async (
  reply: FastifyReply,
  draft: KeptDraft,
  form: Form,
  { around, faults = [], after = '', stale }: Drawn = {},
): Promise<unknown> => {
  const { request } = reply;
  const { kitchen } = request;
  const { read } = draft;
  const known = around ?? (await aroundForm(request, form));
  const fields = new Fields(form, faults);
  const lines = lineRows(form, read, known, fields);
  const steps = stepRows(form, read, kitchen, fields);
  const head = { ...headState(form, read), source: sourceOfHead(read) };
  const open = [head, ...lines, ...steps].filter((row) => row.open).length;
  const when = (at: Date) => {
    const { date, time } = inZone(at, kitchen.timeZone);
    return `${formatFor(kitchen).date(date)}, ${time}`;
  };
  const model: DraftPage = {
    id: draft.id,
    address: `/recipes/read/${draft.id}`,
    from: sources[read.source],
    kept: when(draft.updatedAt),
    open,
    head,
    parts: partsOf(form, lines),
    choices: rows(form, 'parts').map((part, at) => ({
      value: String(at),
      label: text(part, 'title') || 'The recipe itself',
    })),
    steps,
    allNew: allNew(form, { read, around: known }).map((row) => text(row, 'item').trim()),
    fresh: lines.some((row) => row.fresh !== ''),
    focus: faults.length > 0 || stale ? '' : nextOpen([head.open, lines, steps], after),
    degrees: `°${kitchen.heat}`,
    cups: rows(form, 'lines').some((row) => needsCup(readUnit(text(row, 'unit')) ?? ''))
      ? [{ value: '', label: `the kitchen’s own: ${cupWords[kitchen.cup]}` }, ...cupChoices]
      : [],
    // A part is put into a page that has them.
    items: wantsPart(reply) ? [] : offered(known, kitchen.locale),
    pasted: draft.text,
    stale: stale && { by: stale.updatedBy, at: when(stale.updatedAt) },
  };
  const title = text(form, 'name').trim() || 'A recipe without a name';
  return page(
    reply,
    'drafts/show',
    {
      title,
      nav: 'Recipes',
      form: { ...form, revision: String((stale ?? draft).revision) },
      faults,
      ...model,
    },
    'drafts/_form',
  );
};

const offered = ({ names }: Around, locale: string) =>
  inOrder(
    names.offered.map(({ text: name, item }) => ({ name, isRecipe: 'component' in item })),
    locale,
  );

const minutes = (what: string, many: number | null): string => (many === null ? '' : `${what} ${many} min`);

const sourceOfHead = ({ name, yield: made, times }: RecipeDraft): string[] => {
  const said = [
    minutes('preparation', times.prep),
    minutes('cooking', times.cook),
    minutes('in all', times.total),
  ];
  const words = said.filter(Boolean).join(', ');
  return [name || 'No name', made.text || 'What it makes is not said', words && `Times: ${words}`].filter(
    Boolean,
  );
};

const partsOf = (form: Form, lines: readonly LineRow[]): PartRow[] => {
  const all = rows(form, 'lines');
  const parts = rows(form, 'parts');
  const made = (parts.length > 0 ? parts : [{}]).map(
    (part, at): PartRow => ({
      at: `parts[${at}]`,
      title: text(part, 'title'),
      under: purposeOf(text(part, 'title')),
      component: text(part, 'as') === 'component',
      lines: lines.filter(({ place }) => Number(text(all[place] ?? {}, 'part')) === at),
    }),
  );
  return made;
};

type Row = { open: boolean; place: number };

/** The open row behind one, else the first; "save" when none is open. */
const nextOpen = ([head, lines, steps]: [boolean, readonly Row[], readonly Row[]], after: string): string => {
  const all = [
    { name: 'head', open: head },
    ...lines.map(({ open, place }) => ({ name: `lines:${place}`, open })),
    ...steps.map(({ open, place }) => ({ name: `steps:${place}`, open })),
  ];
  const from = all.findIndex(({ name }) => name === after);
  const next = [...all.slice(from + 1), ...all.slice(0, from + 1)].find(({ open }) => open);
  return next?.name ?? 'save';
};
