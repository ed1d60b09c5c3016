import type { Event } from '../facts/event.js';
import type { Facts } from '../facts/facts.js';
import { type PrepDay, prepFor } from '../prep.js';
import type { Answer } from '../problem.js';
import { worstFirst } from '../requirements.js';
import { cautions, conventions, type Sheet } from './sheet.js';

export type PrepList = { events: readonly Event[]; days: PrepDay[]; facts: Facts };

/** The prep list of a set of events, by day and station; one day alone where `date` is given. */
export const prepList = (events: readonly Event[], facts: Facts, date?: string): Answer<PrepList> => {
  const { value: days, problems } = prepFor(events, facts);
  const shown = date ? days.filter((day) => day.date === date) : days;
  return { value: { events, days: shown, facts }, problems: worstFirst(problems) };
};

/** The prep list as tables. */
export const prepListSheet = ({ value, problems }: Answer<PrepList>): Sheet => ({
  sheet: 'prep',
  title: 'Prep list',
  about: { events: value.events.map((event) => event.key).join('; ') },
  tables: [
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
      ],
      rows: value.days.flatMap(({ date, stations }) =>
        stations.flatMap(({ station, jobs }) =>
          jobs.map((job) => ({
            day: date,
            station,
            quantity: job.makes?.value.toString() ?? '',
            unit: job.makes?.base ?? '',
            recipe: job.recipe.name,
            step: job.step ? String(job.number) : '',
            job: job.step?.words ?? '',
            events: job.shares.map((share) => share.event.name).join('; '),
            minutes: job.minutes === undefined ? '' : String(job.minutes),
            trays: job.trays === undefined ? '' : String(job.trays),
            useBy: job.useBy ?? '',
          })),
        ),
      ),
    },
  ],
  problems,
  foot: [conventions.ahead, conventions.minutes, cautions.keeping],
});
