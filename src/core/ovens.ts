import { clockOf } from './calendar.js';
import type { Event } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import type { Kitchen } from './facts/kitchen.js';
import type { Oven, Place } from './facts/place.js';
import { type LatestStep, latestSteps } from './latest.js';
import { traysFor } from './prep.js';
import type { Problem } from './problem.js';
import { listed, ofEvent } from './problems.js';
import { showHeat } from './quantity/show.js';
import type { CourseNeed } from './requirements.js';

/** What one dish asks of the ovens of one place at the latest times its service allows. */
export type OvenAsk = LatestStep & { place: Place; shelves: number; name: string };

/** Every oven step of an event's day at its latest times; shelves count 1 where the recipe doesn't say. */
export const ovenAsks = (event: Event, needs: readonly CourseNeed[], facts: Facts): OvenAsk[] => {
  const home = [...facts.places.values()].find((place) => place.kind === 'home');
  const venue = facts.places.get(event.place);
  return needs.flatMap(({ course, dishes }) =>
    dishes.flatMap((dish) =>
      latestSteps(dish, course, event, facts)
        .filter(({ step }) => step.oven)
        .flatMap((latest) => {
          const place = latest.step.where === 'venue' ? venue : home;
          const { factor, makes, recipe } = latest.need;
          const trays = factor && makes.portions && traysFor(latest.step, makes.portions.times(factor));
          return place ? [{ ...latest, place, shelves: trays ?? 1, name: recipe.name }] : [];
        }),
    ),
  );
};

/** Whether asks at one moment fit the ovens: each oven at one heat within every tolerance, and shelves enough. */
const fits = (asks: readonly OvenAsk[], ovens: readonly Oven[], byHeatOnly: boolean): boolean => {
  type Load = { low: number; high: number; shelves: number };
  const place = (i: number, loads: Load[]): boolean => {
    const ask = asks[i];
    if (!ask) return true;
    const { heat, tolerance } = ask.step.oven!;
    return loads.some((load, at) => {
      const low = Math.max(load.low, heat - tolerance);
      const high = Math.min(load.high, heat + tolerance);
      const shelves = load.shelves - (byHeatOnly ? 0 : ask.shelves);
      return low <= high && shelves >= 0 && place(i + 1, loads.with(at, { low, high, shelves }));
    });
  };
  return place(
    0,
    ovens.map((oven) => ({ low: oven.coolest, high: oven.hottest, shelves: oven.shelves })),
  );
};

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
    // Past ten at once no home kitchen is meant, and the search would grow without end.
    if (at.length > 10 || fits(at, ovens, false)) continue;
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
  const heats = at.map((ask) => `${ask.name} at ${showHeat(ask.step.oven!.heat, kitchen)}`);
  const shelves = at.reduce((n, ask) => n + ask.shelves, 0);
  const room = ovens.reduce((n, o) => n + o.shelves, 0);
  const sentence =
    ovens.length === 0
      ? `${place} has no oven, and ${listed(heats)} needs one.`
      : fits(at, ovens, true)
        ? `${oven}, ${from} to ${to}: ${listed(at.map((ask) => ask.name))} ${at.length > 1 ? 'ask' : 'asks'} for ${shelves} shelves, there are ${room}.`
        : `${oven}, ${from} to ${to}: asked at once for ${listed(heats)}.`;
  return { weight: 'stop', code: 'oven-clash', sentence, subject: ofEvent(event, 'courses') };
};
