import { clockOf } from './calendar.js';
import type { Event } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import type { Kitchen } from './facts/kitchen.js';
import type { Oven, Place } from './facts/place.js';
import type { DishDay, LatestStep } from './latest.js';
import { traysFor } from './prep.js';
import type { Problem } from './problem.js';
import { listed, ofEvent } from './problems.js';
import { showHeat } from './quantity/show.js';

/** What one dish asks of the ovens of one place at the latest times its service allows. */
export type OvenAsk = LatestStep & { place: Place; shelves: number; name: string };

/** Every oven step of an event's day at its latest times; shelves count 1 where the recipe doesn't say. */
export const ovenAsks = (event: Event, days: readonly DishDay[], facts: Facts): OvenAsk[] => {
  const home = [...facts.places.values()].find((place) => place.kind === 'home');
  const venue = facts.places.get(event.place);
  return days.flatMap(({ steps }) =>
    steps
      .filter(({ step }) => step.oven)
      .flatMap((latest) => {
        const place = latest.step.where === 'venue' ? venue : home;
        const { factor, makes, recipe } = latest.need;
        const trays = factor && makes.portions && traysFor(latest.step, makes.portions.times(factor));
        return place ? [{ ...latest, place, shelves: trays ?? 1, name: recipe.name }] : [];
      }),
  );
};

type Load = { low: number; high: number; shelves: number };

/** An oven with one more ask at a heat within every tolerance; undefined where no heat does for all. */
const heated = (load: Load, ask: OvenAsk): Load | undefined => {
  const { heat, tolerance } = ask.step.oven!;
  const low = Math.max(load.low, heat - tolerance);
  const high = Math.min(load.high, heat + tolerance);
  return low <= high ? { ...load, low, high } : undefined;
};

// So many tries tell for any kitchen with a few ovens; past them nothing is said.
const mostTries = 20_000;

/** Whether asks at one moment fit the ovens: each oven at one heat, its shelves enough; a dish may fill several ovens. */
const fits = (asks: readonly OvenAsk[], ovens: readonly Oven[]): boolean => {
  if (shelvesOf(asks) > roomOf(ovens)) return false;
  const bulky = [...asks].sort((a, b) => b.shelves - a.shelves);
  let tries = 0;
  const place = (i: number, left: number, from: number, loads: readonly Load[]): boolean => {
    const ask = bulky[i];
    if (!ask || ++tries > mostTries) return true;
    if (left === 0) return place(i + 1, bulky[i + 1]?.shelves ?? 0, 0, loads);
    for (let at = from; at < loads.length; at++) {
      const next = heated(loads[at]!, ask);
      if (!next) continue;
      for (let part = Math.min(left, next.shelves); part > 0; part--)
        if (place(i, left - part, at + 1, loads.with(at, { ...next, shelves: next.shelves - part })))
          return true;
    }
    return false;
  };
  const empty = ovens.map(({ coolest, hottest, shelves }) => ({ low: coolest, high: hottest, shelves }));
  return place(0, bulky[0]?.shelves ?? 0, 0, empty);
};

/** Whether every ask finds an oven at its heat, shelves aside. */
const fitsByHeat = (asks: readonly OvenAsk[], ovens: readonly Oven[]): boolean =>
  fits(
    asks.map((ask) => ({ ...ask, shelves: 1 })),
    ovens.map((oven) => ({ ...oven, shelves: asks.length })),
  );

const shelvesOf = (asks: readonly OvenAsk[]): number => asks.reduce((n, ask) => n + ask.shelves, 0);
const roomOf = (ovens: readonly Oven[]): number => ovens.reduce((n, oven) => n + oven.shelves, 0);

/**
 * Where the ovens can't do what an event asks at the latest times its service allows: two heats at once, or more
 * shelves than there are. Each stretch of time is told once. Whether an earlier start would cure it is not answered.
 */
export const ovenProblems = (event: Event, asks: readonly OvenAsk[], { kitchen }: Facts): Problem[] => {
  const problems: Problem[] = [];
  const told = new Set<string>();
  for (const moment of [...asks].sort((a, b) => a.start - b.start)) {
    const at = asks.filter(
      (ask) => ask.place === moment.place && ask.start <= moment.start && moment.start < ask.end,
    );
    const { ovens, name } = moment.place;
    if (fits(at, ovens)) continue;
    const mark = at
      .map((ask) => `${ask.name}/${ask.step.key}`)
      .sort()
      .join(' ');
    if (told.has(mark)) continue;
    told.add(mark);
    problems.push(clash(event, kitchen, at, ovens, name));
  }
  return problems;
};

const clash = (
  event: Event,
  kitchen: Kitchen,
  at: readonly OvenAsk[],
  ovens: readonly Oven[],
  place: string,
): Problem => {
  const from = clockOf(Math.max(...at.map((ask) => ask.start)));
  const to = clockOf(Math.min(...at.map((ask) => ask.end)));
  const oven = ovens.length === 1 ? ovens[0]!.name : `${place}, ovens`;
  const sentence = `${oven}, ${from} to ${to}: ${amiss(at, ovens, kitchen)}`;
  const heats = listed(at.map((ask) => heatOf(ask, kitchen)));
  const none = `${place} has no oven, and ${heats} ${at.length > 1 ? 'need' : 'needs'} one.`;
  return {
    weight: 'stop',
    code: 'oven-clash',
    sentence: ovens.length === 0 ? none : sentence,
    subject: ofEvent(event, 'courses'),
  };
};

const heatOf = ({ name, step }: OvenAsk, kitchen: Kitchen): string =>
  `${name} at ${showHeat(step.oven!.heat, kitchen)}`;

const amiss = (at: readonly OvenAsk[], ovens: readonly Oven[], kitchen: Kitchen): string => {
  const out = at.find((ask) => !fitsByHeat([ask], ovens));
  if (out) return `no oven goes to ${showHeat(out.step.oven!.heat, kitchen)}, asked for by ${out.name}.`;
  const heats = at.map((ask) => heatOf(ask, kitchen));
  if (!fitsByHeat(at, ovens)) return `asked at once for ${listed(heats)}.`;
  const asks = `${listed(at.map((ask) => ask.name))} ${at.length > 1 ? 'ask' : 'asks'}`;
  const [shelves, room] = [shelvesOf(at), roomOf(ovens)];
  if (shelves > room) return `${asks} for ${shelves} shelves, there are ${room}.`;
  const each = at.map((ask) => `${heatOf(ask, kitchen)} (${ask.shelves} of ${room} shelves)`);
  return `${listed(each)} can't all be in at once.`;
};
