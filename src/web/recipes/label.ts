import type { FastifyRequest } from 'fastify';
import type { Problem } from '../../core/problem.js';
import { isRead, readDay, readWhole } from '../../core/reading.js';
import { typedDay } from '../../core/reading-days.js';
import { type FullLabel, fullLabel } from '../../core/sheets/full-label.js';
import { fullLabelSheet } from '../../core/sheets/full-label-sheet.js';
import type { Run } from '../../core/sheets/label-list.js';
import { read } from '../../store/documents.js';
import { consistently, loadFacts } from '../../store/facts.js';
import { toTheSecond } from '../../store/prep-periods.js';
import { notePrintedLabel } from '../../store/printed-labels.js';
import { answerSheet } from '../answer.js';
import { todayOf } from '../coming.js';
import type { Fault } from '../fields.js';
import { type Form, text } from '../form.js';
import { type Format, formatFor } from '../format.js';
import { type Answerer, param, query } from '../house.js';
import { pageOf } from '../links.js';
import { withMend } from '../mends.js';
import { labelFingerprint, labelPrintState } from '../printed/label.js';
import type { PrintState } from '../printed/outdated.js';
import { goTo, saving } from '../save.js';

export type LabelPage = {
  key: string;
  name: string;
  kitchen: string;
  runs: Run[];
  may: string;
  notChecked: string;
  complete: boolean;
  made: string;
  useBy: string;
  labels: string;
  length: 'short' | 'usual' | 'long';
  /** One entry for each label that is printed. */
  printed: number[];
  print: Omit<PrintState, 'sheet'>;
  problems: (Problem & { mend: string })[];
  foot: string[];
  csv: string;
  json: string;
};

const mostCopies = 200;

/** The full ingredient label of a recipe for food packed ahead, several on a sheet: page, paper, CSV and JSON. */
export const showFullLabel: Answerer = async (request, reply) => {
  const found = await labelFacts(request);
  if (!found) return reply.callNotFound();
  const { recipe, facts } = found;
  const asked = askedIn(request);
  const answer = fullLabel(recipe, asked.made, facts);
  const sheet = fullLabelSheet(answer);
  const printing = query(request, 'printing') !== '' && asked.faults.length === 0;
  const f = formatFor(request.kitchen);
  const address = `${pageOf('recipe', recipe.key)}/label`;
  const search = new URLSearchParams(asked.form);
  if (asked.faults.length > 0) reply.code(422);
  return answerSheet(reply, sheet, 'recipes/label', {
    title: `Label, ${recipe.name}`,
    nav: 'Recipes',
    form: asked.form,
    faults: asked.faults,
    ...labelWords(answer.value, f),
    printed: Array.from({ length: asked.copies }, (_, i) => i),
    print: await labelPrintState(request, answer.value, printing),
    problems: answer.problems.map(withMend),
    foot: sheet.foot,
    csv: `${address}.csv?${search}`,
    json: `${address}.json?${search}`,
  });
};

/** Notes what the labels say as they are printed, and goes on to their page, which opens the print dialog. */
export const printLabels: Answerer = async (request, reply) => {
  const found = await labelFacts(request);
  if (!found) return reply.callNotFound();
  const form = request.body as Form;
  const { key } = found.recipe;
  const search = new URLSearchParams({ made: text(form, 'made'), copies: text(form, 'copies') });
  const address = `${pageOf('recipe', key)}/label?${search}`;
  const made = readDay(text(form, 'made'), todayOf(request));
  if (!isRead(made)) return goTo(reply, address);
  const { value } = fullLabel(found.recipe, made.value, found.facts);
  const { who, at } = saving(reply);
  await notePrintedLabel(request.server.house.db, {
    recipe: key,
    who,
    at: toTheSecond(at),
    made: value.made,
    useBy: value.useBy ?? null,
    fingerprint: labelFingerprint(value),
  });
  return goTo(reply, `${address}&printing=1`);
};

const labelFacts = (request: FastifyRequest) =>
  consistently(request.server.house.db, async (trx) => {
    const key = param(request, 'key');
    const stored = await read(trx, 'recipe', key);
    const facts = stored && (await loadFacts(trx, { recipes: [key] }));
    return facts && { recipe: stored.doc, facts };
  });

/** The day it was made and how many labels, as typed into the address; what can't be read is today and eight. */
const askedIn = (request: FastifyRequest) => {
  const today = todayOf(request);
  const faults: Fault[] = [];
  const [madeTyped, copiesTyped] = [query(request, 'made'), query(request, 'copies')];
  const made = madeTyped === '' ? { value: today } : readDay(madeTyped, today);
  const copies = copiesTyped === '' ? { value: 8 } : readWhole(copiesTyped, 'labels', 1, mostCopies);
  if (!isRead(made)) faults.push({ field: 'made', label: 'Made on', sentence: made.sentence });
  if (!isRead(copies)) faults.push({ field: 'copies', label: 'Labels', sentence: copies.sentence });
  return {
    made: isRead(made) ? made.value : today,
    copies: isRead(copies) ? copies.value : 8,
    faults,
    form: { made: madeTyped || typedDay(today), copies: copiesTyped || '8' },
  };
};

const labelWords = (label: FullLabel, f: Format) => ({
  key: label.recipe.key,
  name: label.recipe.name,
  kitchen: label.facts.kitchen.name,
  runs: label.runs,
  may: f.list(label.may).toUpperCase(),
  notChecked: f.list(label.notChecked.map(({ name }) => name)),
  complete: label.complete,
  made: f.dateYear(label.made),
  useBy: label.useBy ? f.dateYear(label.useBy) : '',
  labels: label.labels
    ? label.labels.first === label.labels.last
      ? `Labels read on ${f.dateYear(label.labels.last)}.`
      : `Labels read from ${f.dateYear(label.labels.first)} to ${f.dateYear(label.labels.last)}.`
    : 'No label read.',
  length: lengthOf(label),
});

const lengthOf = ({ runs }: FullLabel): LabelPage['length'] => {
  const letters = runs.reduce((sum, { text }) => sum + text.length, 0);
  return letters < 140 ? 'short' : letters < 330 ? 'usual' : 'long';
};
