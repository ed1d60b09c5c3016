import { doneOf, noTicks, type Ticks } from '../done.js';
import type { Event } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import { atThePot } from '../line-problems.js';
import { type Job, type JobShare, type PrepDay, prepFor } from '../prep.js';
import type { Answer, Problem } from '../problem.js';
import type { Quantity } from '../quantity/units.js';
import { worstFirst } from '../requirements.js';
import { lineFoot } from './line-foot.js';
import { cautions, conventions, type Sheet } from './sheet.js';

export type PrepList = { events: readonly Event[]; days: PrepDay[]; facts: Facts; ticks: Ticks };

/**
 * The prep list of a set of events, by day and station, with nothing ticked yet; one day alone, with what is open on
 * it, for a `date`.
 */
export const prepList = (events: readonly Event[], facts: Facts, date?: string): Answer<PrepList> => {
  const span = date === undefined ? undefined : { from: date, to: date };
  const { value: days, problems: found } = prepFor(events, facts, span);
  // What goes in to taste, or is to be tasted first, stands among the lines to weigh out.
  const problems = found.filter((problem) => !atThePot(problem));
  const open = span ? openOn(jobsOf(days), problems) : problems;
  return { value: { events, days, facts, ticks: noTicks }, problems: worstFirst(open) };
};

export const jobsOf = (days: readonly PrepDay[]): Job[] =>
  days.flatMap(({ stations }) => stations.flatMap(({ jobs }) => jobs));

/** Jobs and attended minutes of several days together, and how many jobs have no minutes written. */
export const sumOfDays = (days: readonly PrepDay[]): Pick<PrepDay, 'jobs' | 'attended' | 'untimed'> => ({
  jobs: days.reduce((n, day) => n + day.jobs, 0),
  attended: days.reduce((n, day) => n + day.attended, 0),
  untimed: days.reduce((n, day) => n + day.untimed, 0),
});

const openOn = (jobs: readonly Job[], problems: readonly Problem[]): Problem[] => {
  const recipes = new Set(jobs.map(({ recipe }) => recipe.key));
  const ingredients = new Set(jobs.flatMap(({ lines }) => lines.map(({ ingredient }) => ingredient?.key)));
  return problems.filter(({ subject: { entity, key } }) =>
    entity === 'ingredient' ? ingredients.has(key) : entity !== 'recipe' || recipes.has(key),
  );
};

/** What a job makes for one of its events, exact; undefined where either isn't known. */
export const shareMakes = ({ makes, batches }: Job, share: JobShare): Quantity | undefined =>
  makes && batches && share.batches && !batches.isZero
    ? { value: makes.value.times(share.batches).over(batches), base: makes.base }
    : undefined;

const said = { open: '', part: 'in part', done: 'yes' };

const doneCells = (job: Job, ticks: Ticks) => {
  const { state, made, left } = doneOf(job, ticks);
  return { done: said[state], made: made?.value.toString() ?? '', left: left?.value.toString() ?? '' };
};

/** The prep list as tables. */
export const prepListSheet = ({ value, problems }: Answer<PrepList>): Sheet => ({
  sheet: 'prep',
  title: 'Prep list',
  about: { events: value.events.map((event) => event.key).join('; ') },
  get tables() {
    return [
      {
        name: 'jobs',
        title: 'Jobs',
        columns: [
          { key: 'day', label: 'Day' },
          { key: 'station', label: 'Station' },
          { key: 'quantity', label: 'Quantity' },
          { key: 'unit', label: 'Unit' },
          { key: 'recipe', label: 'Recipe' },
          { key: 'step', label: 'Step' },
          { key: 'job', label: 'Job' },
          { key: 'events', label: 'For' },
          { key: 'minutes', label: 'Minutes' },
          { key: 'trays', label: 'Trays' },
          { key: 'useBy', label: 'Use by' },
          { key: 'done', label: 'Done' },
          { key: 'made', label: 'Made so far' },
          { key: 'left', label: 'Still to make' },
        ],
        rows: jobsOf(value.days).map((job) => ({
          day: job.date,
          station: job.station,
          quantity: job.makes?.value.toString() ?? '',
          unit: job.makes?.base ?? '',
          recipe: job.recipe.name,
          step: job.step ? String(job.number) : '',
          job: job.step?.words ?? '',
          events: job.shares.map((share) => share.event.name).join('; '),
          minutes: job.minutes === undefined ? '' : String(job.minutes),
          trays: job.trays === undefined ? '' : String(job.trays),
          useBy: job.useBy ?? '',
          ...doneCells(job, value.ticks),
        })),
      },
      {
        name: 'weigh',
        title: 'To weigh out',
        columns: [
          { key: 'day', label: 'Day' },
          { key: 'recipe', label: 'Recipe' },
          { key: 'amount', label: 'Amount' },
          { key: 'least', label: 'Lower end' },
          { key: 'amountUnit', label: 'Unit of the amount' },
          { key: 'item', label: 'Ingredient or component' },
          { key: 'preparation', label: 'Preparation' },
          { key: 'prepared', label: 'Prepared weight', unit: 'g' },
          { key: 'bought', label: 'As purchased' },
          { key: 'boughtUnit', label: 'Unit as purchased' },
        ],
        rows: jobsOf(value.days).flatMap(({ date, recipe, lines }) =>
          lines.map(({ line, unit, amount, least, ingredient, component, prepared, bought }) => ({
            day: date,
            recipe: recipe.name,
            amount: amount?.toString() ?? '',
            least: least?.toString() ?? '',
            amountUnit: unit,
            item: (ingredient ?? component)!.name,
            preparation: line.preparation,
            prepared: prepared?.toString() ?? '',
            bought: bought?.value.toString() ?? '',
            boughtUnit: bought?.base ?? '',
          })),
        ),
      },
      {
        name: 'shares',
        title: 'How much for each event',
        columns: [
          { key: 'day', label: 'Day' },
          { key: 'recipe', label: 'Recipe' },
          { key: 'step', label: 'Step' },
          { key: 'event', label: 'Event' },
          { key: 'quantity', label: 'Quantity' },
          { key: 'unit', label: 'Unit' },
        ],
        rows: jobsOf(value.days).flatMap((job) =>
          job.shares.map((share) => ({
            day: job.date,
            recipe: job.recipe.name,
            step: job.step ? String(job.number) : '',
            event: share.event.name,
            quantity: shareMakes(job, share)?.value.toString() ?? '',
            unit: job.makes?.base ?? '',
          })),
        ),
      },
    ];
  },
  problems,
  foot: [
    conventions.portions,
    conventions.weights,
    conventions.pieces,
    conventions.components,
    ...lineFoot(jobsOf(value.days).flatMap(({ lines }) => lines)),
    conventions.order,
    conventions.ahead,
    conventions.minutes,
    cautions.keeping,
  ],
});
