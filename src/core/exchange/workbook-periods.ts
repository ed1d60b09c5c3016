import type { Workbook } from '../facts/facts.js';
import type { PrepPeriod, Tick } from '../facts/prep-period.js';
import { keepable, meant } from '../rules/refuse.js';

export type PeriodFault = { path: string[]; sentence: string };
type Say = (path: string[], sentence: string) => void;

/** A period with its events and ticks in the one order of the file. */
export const inOneOrder = (period: PrepPeriod): PrepPeriod => ({
  ...period,
  events: period.events.toSorted(byText),
  ticks: period.ticks.toSorted((a, b) => byText(nameOf(a), nameOf(b))),
});

/** One job for one event; a period holds each once. */
const nameOf = ({ date, recipe, step, event }: Tick): string => `${date} ${recipe} ${step ?? ''} ${event}`;

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Why prep periods and their ticks cannot be kept, each with its place among them. */
export const periodFaults = ({ prepPeriods, events }: Pick<Workbook, 'prepPeriods' | 'events'>) => {
  const faults: PeriodFault[] = [];
  const say: Say = (path, sentence) => faults.push({ path, sentence });
  const there = new Set(events.map(({ key }) => key));
  const byDay = prepPeriods.toSorted((a, b) => byText(a.from, b.from));
  const seen = new Set<string>();
  for (const [place, period] of byDay.entries()) {
    const before = byDay[place - 1];
    if (seen.has(period.key))
      say([period.key, 'key'], `The key "${period.key}" stands twice in one list: give each its own.`);
    seen.add(period.key);
    if (period.to < period.from)
      say([period.key, 'to'], 'A period does not end before it begins: write its last day.');
    if (before && before.to >= period.from)
      say(
        [period.key, 'from'],
        `${period.from} is in the period "${before.key}" already: a day is in one period alone.`,
      );
    eventFaults(period, there, say);
    tickFaults(period, say);
  }
  return faults;
};

const eventFaults = ({ key, events }: PrepPeriod, there: ReadonlySet<string>, say: Say): void => {
  for (const [place, event] of events.entries()) {
    if (!there.has(event))
      say([key, 'events'], `There is no event with the key "${event}".${meant(event, there)}`);
    if (events.indexOf(event) !== place) say([key, 'events'], `"${event}" stands twice: name it once.`);
  }
};

const tickFaults = ({ key, from, to, events, ticks }: PrepPeriod, say: Say): void => {
  const seen = new Set<string>();
  const own = new Set(events);
  for (const [place, tick] of ticks.entries()) {
    const at = (field: string) => [key, 'ticks', String(place), field];
    if (tick.date < from || tick.date > to)
      say(at('date'), `${tick.date} is not in this period, which is ${from} to ${to}.`);
    if (!own.has(tick.event))
      say(
        at('event'),
        `"${tick.event}" is not among the events of this period: add it there.${meant(tick.event, own)}`,
      );
    if (seen.has(nameOf(tick)))
      say([key, 'ticks', String(place)], 'This job is ticked twice for one event: write it once.');
    seen.add(nameOf(tick));
    keepable(tick.who, 'who', (field, _code, sentence) => say(at(field), sentence));
  }
};
