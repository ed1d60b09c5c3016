import type { Ticks } from '../../core/done.js';
import type { Facts } from '../../core/facts/facts.js';
import type { Mark } from '../../core/marks.js';
import type { Job, PrepDay } from '../../core/prep.js';
import { type Shown, showQuantity } from '../../core/quantity/show.js';
import { shareMakes } from '../../core/sheets/prep-list.js';
import { type Format, formatFor } from '../format.js';
import { pageOf } from '../links.js';
import { type WeighLine, weighLines } from './lines.js';
import { rowId, type TickRow, tickRow } from './tick-row.js';

/** One event a job is for; `amount` only where it shares the job with others. */
export type JobFor = { name: string; day: string; mark: Mark | undefined; amount: Shown | undefined };

export type JobRow = {
  id: string;
  tick: TickRow;
  quantity: Shown | undefined;
  recipe: string;
  href: string;
  /** "2 of 5", nothing where there is but one. */
  place: string;
  words: string;
  how: string;
  lines: WeighLine[];
  shares: JobFor[];
  minutes: string;
  /** True where nobody stands by. */
  alone: boolean;
  /** When what is made must be used; said of a recipe's last step. */
  useBy: string;
  keepsUnknown: boolean;
};

export type JobStation = { name: string; jobs: JobRow[]; sum: string };
export type JobDay = { date: string; title: string; sum: string; stations: JobStation[] };

/** A day of the prep list as it stands on the page and on paper. */
export const jobDay = (
  day: PrepDay,
  facts: Facts,
  marks: ReadonlyMap<string, Mark>,
  ticks: Ticks,
): JobDay => {
  const f = formatFor(facts.kitchen);
  return {
    date: day.date,
    title: f.longDate(day.date),
    sum: sumOf(day.jobs, day, f),
    stations: day.stations.map(({ station, again, jobs, ...time }) => ({
      name: again ? `${station} again` : station,
      jobs: jobs.map((job) => jobRow(job, facts, marks, ticks)),
      sum: sumOf(jobs.length, time, f),
    })),
  };
};

type Time = Pick<PrepDay, 'attended' | 'untimed'>;

/** "11 jobs, 2 h 35 min as written; 1 without minutes". */
export const sumOf = (jobs: number, { attended, untimed }: Time, f: Format, said = ' as written'): string => {
  const time = attended > 0 ? `, ${f.duration(attended)}${said}` : '';
  return `${f.count(jobs, 'job')}${time}${untimed > 0 ? `; ${f.number(untimed)} without minutes` : ''}`;
};

/** One job of the list. */
export const jobRow = (job: Job, facts: Facts, marks: ReadonlyMap<string, Mark>, ticks: Ticks): JobRow => {
  const { recipe, step, shares, useBy, makes } = job;
  const { kitchen } = facts;
  const f = formatFor(kitchen);
  const last = job.number >= recipe.steps.length;
  return {
    id: rowId(job),
    tick: tickRow(job, ticks, kitchen, f),
    quantity: makes && showQuantity(makes, kitchen, 'prep'),
    recipe: recipe.name,
    href: pageOf('recipe', recipe.key),
    place: recipe.steps.length > 1 ? `${job.number} of ${recipe.steps.length}` : '',
    words: step?.words ?? '',
    how: howOf(job, f),
    lines: weighLines(job.lines, recipe, facts),
    shares: shares.map((share) => {
      const part = shares.length > 1 ? shareMakes(job, share) : undefined;
      const { key, name, date } = share.event;
      return {
        name,
        day: f.dayName(date),
        mark: marks.get(key),
        amount: part && showQuantity(part, kitchen, 'prep'),
      };
    }),
    minutes: minutesOf(job, f),
    alone: job.minutes !== undefined && !step?.attended,
    useBy: last && useBy !== undefined ? f.date(useBy) : '',
    keepsUnknown: last && useBy === undefined,
  };
};

const howOf = ({ step, trays }: Job, f: Format): string => {
  const said = [
    step?.oven && f.heat(step.oven.heat),
    trays !== undefined && f.count(trays, 'shelf', 'shelves'),
    step && step.rings > 0 && f.count(step.rings, 'ring'),
    step?.where === 'venue' && 'at the venue',
  ];
  return said
    .filter((one) => typeof one === 'string')
    .map(unbroken)
    .join(', ');
};

const unbroken = (words: string): string => words.replaceAll(' ', '\u00a0');

const minutesOf = ({ step, minutes }: Job, f: Format): string => {
  if (minutes === undefined) return 'minutes not known';
  const longest = Math.max(step?.minutesLongest ?? 0, minutes);
  const alike = longest < 60 || minutes >= 60;
  const least = unbroken(alike ? f.duration(minutes).replace(/ min$/, '') : f.duration(minutes));
  return longest > minutes ? `${least} to ${unbroken(f.duration(longest))}` : unbroken(f.duration(minutes));
};
