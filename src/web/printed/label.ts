import { createHash } from 'node:crypto';
import type { FastifyRequest } from 'fastify';
import type { Event } from '../../core/facts/event.js';
import type { PrintedLabel } from '../../core/facts/printed-label.js';
import { recipeOf } from '../../core/lookup.js';
import { closureOf } from '../../core/scaling.js';
import { type FullLabel, fullLabel } from '../../core/sheets/full-label.js';
import { eventFacts } from '../../store/facts.js';
import { printedLabels } from '../../store/printed-labels.js';
import { todayOf } from '../coming.js';
import { pageOf } from '../links.js';
import type { OutdatedPaper, PrintState } from './outdated.js';
import { whenPrinted } from './words.js';

/** All that a label says, whatever the day; the days of keeping give its use-by date. */
export const labelFingerprint = ({ recipe, facts, runs, may, notChecked, complete }: FullLabel): string =>
  createHash('sha256')
    .update(
      JSON.stringify([
        recipe.name,
        facts.kitchen.name,
        runs,
        may,
        notChecked.map(({ name }) => name),
        complete,
        recipe.keepingDays,
      ]),
    )
    .digest('hex')
    .slice(0, 32);

const noLonger = (print: PrintedLabel, name: string, request: FastifyRequest): string =>
  `The labels of ${name} printed ${whenPrinted(print, request)} no longer hold: what they say changed.`;

/** Whether labels are still about: until the day they say their food is used by. */
const isAbout = ({ useBy }: PrintedLabel, today: string): boolean => useBy === null || useBy >= today;

/** What the page of a label says of its last print. */
export const labelPrintState = async (
  request: FastifyRequest,
  label: FullLabel,
  now: boolean,
): Promise<Omit<PrintState, 'sheet'>> => {
  const [print] = await printedLabels(request.server.house.db, [label.recipe.key]);
  if (!print || !isAbout(print, todayOf(request))) return { outdated: '', holds: '', now };
  const holds = print.fingerprint === labelFingerprint(label);
  return {
    outdated: holds ? '' : noLonger(print, label.recipe.name, request),
    holds: holds ? `Printed ${whenPrinted(print, request)} by ${print.who}; it still holds.` : '',
    now,
  };
};

/** Labels that no longer hold, of dishes and components that these events are served: each once, with the first event. */
export const outdatedLabels = async (
  request: FastifyRequest,
  events: readonly Event[],
  all: readonly PrintedLabel[],
): Promise<OutdatedPaper[]> => {
  const about = new Map(
    all.filter((print) => isAbout(print, todayOf(request))).map((print) => [print.recipe, print]),
  );
  if (about.size === 0) return [];
  const keys = events.map(({ key }) => key);
  const { facts } = (await eventFacts(request.server.house.db, keys))!;
  return events.flatMap((event) => {
    const dishes = event.courses.flatMap((course) => course.dishes);
    const recipes = new Set(dishes.flatMap(({ recipe }) => closureOf(recipeOf(recipe, facts), facts)));
    return [...recipes].flatMap((recipe) => {
      const print = about.get(recipe.key);
      about.delete(recipe.key);
      if (!print || print.fingerprint === labelFingerprint(fullLabel(recipe, print.made, facts).value))
        return [];
      return [
        {
          event,
          sentence: noLonger(print, recipe.name, request),
          href: `${pageOf('recipe', recipe.key)}/label`,
        },
      ];
    });
  });
};
