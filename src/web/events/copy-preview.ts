import type { FastifyRequest } from 'fastify';
import { eventChange } from '../../core/event-change.js';
import { headCount } from '../../core/requirements.js';
import { firstCourse } from '../../core/service.js';
import { eventSummary } from '../../core/sheets/event-summary.js';
import { loadFacts } from '../../store/facts.js';
import { formatFor } from '../format.js';
import type { Html } from '../html.js';
import { clashesAfter } from './clashes.js';
import { type CopyTo, seenOf } from './copy-form.js';
import { costShown, portionsPlain } from './dishes.js';
import type { OneEvent } from './event.js';

export type CopyPreview = {
  seen: string;
  revision: number;
  name: string;
  here: string;
  there: string;
  rows: { what: string; here: Html; there: Html }[];
  replaces: string;
  serve: string;
  cost: string;
};

/** The portions of each dish here and there, what the menu costs there, and what it would newly clash with. */
export const previewOf = async (request: FastifyRequest, { event, facts }: OneEvent, to: CopyTo) => {
  const recipes = [event, to.event].flatMap(({ courses }) =>
    courses.flatMap(({ dishes }) => dishes.map(({ recipe }) => recipe)),
  );
  const wide =
    (await loadFacts(request.server.house.db, { recipes, places: [event.place, to.event.place] })) ?? facts;
  const here = eventSummary(event, facts).value;
  const change = eventChange(to.event, to.changed, wide);
  const there = change.after;
  const f = formatFor(request.kitchen);
  const now = there.courses.flatMap(({ dishes }) => dishes);
  const dishes = to.event.courses.flatMap((course) => course.dishes).length;
  const preview: CopyPreview = {
    seen: seenOf(to),
    revision: to.revision,
    name: to.changed.name,
    here: f.number(headCount(event)),
    there: f.number(headCount(to.changed)),
    rows: here.courses
      .flatMap((course) => course.dishes)
      .map(({ need }, i) => ({
        what: need.recipe.name,
        here: portionsPlain(need.portions, here.facts.kitchen),
        there: portionsPlain(now[i]!.need.portions, there.facts.kitchen),
      })),
    replaces:
      dishes > 0
        ? `The ${f.count(dishes, 'dish', 'dishes')} on the menu of ${to.event.name} now give way to these. Undo brings them back.`
        : '',
    serve: firstCourse(to.changed)?.time ?? '',
    cost: [
      costShown(there.cost.total, there.cost.complete, f),
      costShown(there.cost.aGuest, there.cost.complete, f),
    ].join(', '),
  };
  return { preview, clashes: clashesAfter('Clashes there', change) };
};
