import type { FastifyRequest } from 'fastify';
import type { Facts } from '../../core/facts/facts.js';
import type { Recipe, Tin } from '../../core/facts/recipe.js';
import { atHand } from '../../core/limit.js';
import { exact } from '../../core/quantity/amount.js';
import { Rational } from '../../core/quantity/rational.js';
import { readMoreThanZero } from '../../core/reading.js';
import { readMeasure } from '../../core/reading-measures.js';
import { readTin, type TinField } from '../../core/reading-tins.js';
import type { Asked, Way } from '../../core/scale-to.js';
import { Reading } from '../faults.js';
import type { Fault } from '../fields.js';
import { type Form, text } from '../form.js';
import { query } from '../house.js';
import { tinForm } from './tin.js';

/** How much of a recipe a page was asked for, with what could not be read of it. */
export type PageAsked = { asked: Asked | undefined; form: Form; faults: Fault[] };

const fields = ['portions', 'each', 'total', 'of', 'have', 'as', 'tin', 'sides', 'tins', 'deep', 'whole'];

/** The boxes beside a recipe as typed; nothing typed is the base recipe. */
export const typedIn = (request: FastifyRequest, recipe: Recipe, facts: Facts): PageAsked => {
  const form: Form = Object.fromEntries(fields.map((name) => [name, query(request, name).trim()]));
  const reading = new Reading(form);
  if (said(form).length === 0) return { asked: undefined, form, faults: [] };
  const portion = reading.maybe('each', 'Each', (typed) => readMeasure(withUnit(typed, recipe.yield)));
  const tin = readTins(reading, recipe, facts);
  const way = readWay(reading, recipe, facts) ?? (tin ? { tin } : otherwise(form, recipe));
  const { faults } = reading;
  const asked: Asked = {
    ...way,
    portion,
    into: 'tin' in way ? null : tin,
    wholeBatches: reading.ticked('whole'),
  };
  return { asked: faults.length > 0 ? undefined : asked, form, faults };
};

/** What was said of how much, without what says nothing by itself: an ingredient but no amount, a shape but no sides. */
export const said = (form: Form): [string, string][] => {
  const typed = (name: string) => text(form, name) !== '';
  const alone: Record<string, boolean> = {
    of: typed('have'),
    as: typed('have') && text(form, 'as') === 'prepared',
    tin: typed('sides'),
  };
  return fields
    .filter((name) => typed(name) && (alone[name] ?? true))
    .map((name): [string, string] => [name, text(form, name)]);
};

const labels = { portions: 'Portions', total: 'In all', have: 'What you have' };

/** The one way that is filled in; where two are, the later is refused. */
const readWay = (reading: Reading, recipe: Recipe, facts: Facts): Way | undefined => {
  const filled = (['portions', 'total', 'have'] as const).filter((name) => reading.text(name) !== '');
  const [first, second] = filled;
  if (first && second) {
    const other = `${labels[first].toLowerCase()}, ${reading.text(first)}`;
    reading.refuse(second, labels[second], `Say how much in one way. Empty this, or ${other}.`);
    return { batches: undefined };
  }
  const batches = { batches: undefined };
  if (first === 'portions') {
    const portions = reading.maybe('portions', 'Portions', (typed) => readMoreThanZero(typed));
    return portions === null ? batches : { portions: exact(portions) };
  }
  if (first === 'total') {
    const total = reading.maybe('total', labels.total, (typed) => readMeasure(withUnit(typed, recipe.yield)));
    return total ? { total } : batches;
  }
  return first === 'have' ? (readHave(reading, recipe, facts) ?? batches) : undefined;
};

const readHave = (reading: Reading, recipe: Recipe, facts: Facts): Way | undefined => {
  const have = reading.maybe('have', labels.have, (typed) => readMeasure(typed));
  const of = reading.text('of');
  if (!atHand(recipe, facts).some(({ key }) => key === of)) {
    reading.refuse('of', 'Of what', 'Choose the ingredient you have so much of.');
    return undefined;
  }
  return have ? { have, of, as: reading.oneOf('as', ['bought', 'prepared'], 'bought') } : undefined;
};

/** Only a size or whole batches said: the recipe's own portions, or one batch where it counts none. */
const otherwise = (form: Form, { yield: { portions } }: Recipe): Way =>
  portions === null && text(form, 'each') === ''
    ? { batches: Rational.one }
    : { portions: exact(portions ?? '1') };

const at: Record<TinField, string> = { shape: 'tin', sides: 'sides', count: 'tins', depth: 'deep' };

/** The tins asked for; how many or how deep alone are of the recipe's own kind. */
const readTins = (reading: Reading, { tin }: Recipe, { kitchen }: Facts): Tin | null => {
  const [sides, count, depth] = ['sides', 'tins', 'deep'].map((name) => reading.text(name));
  if (!sides && !count && !depth) return null;
  const own = tin && !sides ? tinForm(tin) : undefined;
  const typed = {
    shape: own ? text(own, 'shape') : reading.text('tin'),
    sides: sides || text(own ?? {}, 'sides'),
    count: count || text(own ?? {}, 'count'),
    depth: depth || text(own ?? {}, 'depth'),
  };
  return readTin(typed, kitchen, (field, sentence) => reading.refuse(at[field], 'Tin', sentence), tin);
};

/** A bare figure is in the recipe's own measure. */
const withUnit = (typed: string, { weight, volume }: Recipe['yield']): string => {
  const own = weight ? 'g' : volume ? 'ml' : '';
  return /^[\d.,/ ]+$/.test(typed) ? `${typed} ${own}` : typed;
};

/** What is asked for as the end of an address; nothing for the base recipe. */
export const askedInAddress = (form: Form): string => {
  const all = said(form);
  return all.length > 0 ? `?${new URLSearchParams(all)}` : '';
};
