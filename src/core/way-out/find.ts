import { notAnswered } from '../coverage.js';
import { moreOf } from '../event-change.js';
import type { Event } from '../facts/event.js';
import { byKey, type Facts } from '../facts/facts.js';
import type { Recipe } from '../facts/recipe.js';
import { needsApart } from '../kept-apart.js';
import type { Answer } from '../problem.js';
import { type EventSummary, eventSummary } from '../sheets/event-summary.js';
import { applied, type Given, givenBy } from './apply.js';
import { faultsOfWay } from './check.js';
import type { Lack } from './lacking.js';
import { isNew, type Offering } from './offers.js';
import type { StoodIn } from './others.js';
import { type Posed, pose } from './pose.js';
import { faultsOfMenu } from './proof.js';
import type { Way } from './puzzle.js';
import { type Treatment, treatedWords } from './treat.js';
import { type Solve, waysByFigures } from './ways.js';

/** What one move of a way out is: a dish more, more of a dish, or portions of one kept back. */
export type Move = {
  kind: 'made' | 'variant' | 'other' | 'more' | 'kept';
  course: string;
  /** The dish that is made, and the one of the menu that it is made from or stands in for. */
  dish: string;
  base: string;
  guests: number;
  who: string[];
  /** "oil spread for butter". */
  how: string;
  cautions: string[];
};

/** One way out: what moves, what it changes on the menu, and what that comes to. */
export type WayOut = {
  moves: Move[];
  /** Recipes that are made for it, components first. */
  recipes: Recipe[];
  event: Event;
  /** Dishes more to make. */
  dishes: number;
  /** What the food costs more, in minor units, below zero when less; undefined where a price is missing. */
  more: number | undefined;
  /** Attended minutes more. */
  work: number;
  /** Oven clashes that it brings. */
  clashes: string[];
};

/** Guests who lack something in a course. */
export type Without = { who: string; course: string; open: boolean };

export type WaysOut = {
  ways: WayOut[];
  /** Who lacks something now. */
  lacking: Without[];
  /** Of these, whom nothing in the library serves. */
  nothing: Without[];
  /** true where an allergy or a medical diet is among them, which nobody may leave as it is. */
  allergy: boolean;
  notAnswered: number;
  /** Wishes in guests' own words, that no search answers. */
  wishes: { who: string; other: string }[];
};

const most = 3;
// Past so many that make ovens clash, those that do are shown.
const mostTried = 6;

/**
 * The smallest ways out of a menu that leaves guests without: each gives everyone who can be served something in each
 * course, by the fewest dishes more, then the least cost, then the least work; at most three, with different dishes.
 * Every way was checked twice, by means that the search does not share. Ways that make ovens clash come last.
 */
export const waysOut = (event: Event, facts: Facts, stoodIn: StoodIn, solve: Solve): WaysOut => {
  const before = eventSummary(event, facts);
  const posed = pose(event, facts, stoodIn, before.value.coverage);
  const { puzzle, who, nothing } = posed;
  const lacking = [...who.flat(), ...nothing];
  const shown: WayOut[] = [];
  if (puzzle.needs.length > 0)
    for (const way of waysByFigures(puzzle, solve, mostTried)) {
      shown.push(...shownBy(way, posed, before, facts));
      if (shown.filter(({ clashes }) => clashes.length === 0).length === most) break;
    }
  shown.sort((a, b) => a.clashes.length - b.clashes.length);
  return {
    ways: shown.slice(0, most),
    lacking: lacking.map(without),
    nothing: nothing.map(without),
    allergy: lacking.some(({ guest }) => needsApart(guest, facts)),
    notAnswered: notAnswered(event),
    wishes: event.guests
      .filter(({ answered, other }) => answered && other !== '')
      .map(({ name, count, other }) => ({ who: name || String(count), other })),
  };
};

const without = ({ who, course, open }: Lack): Without => ({ who, course: course.name, open });

/** A way as it is shown; none where either check finds a fault with it. */
const shownBy = (way: Way, posed: Posed, before: Answer<EventSummary>, facts: Facts): WayOut[] => {
  if (faultsOfWay(posed.puzzle, way).length > 0) return [];
  const given = givenBy(posed, way);
  const { event: changed, recipes } = applied(before.value.event, posed, given);
  const after = eventSummary(changed, {
    ...facts,
    recipes: new Map([...facts.recipes, ...byKey(recipes)]),
  });
  const fed = [...given.values()].flatMap((those) =>
    those.map(({ lack }) => ({ guest: lack.guest.key, course: lack.course.key })),
  );
  if (faultsOfMenu(before.value.coverage, after.value.coverage, fed).length > 0) return [];
  const [was, is] = [before.value.cost, after.value.cost];
  const known = new Set(before.problems.map(({ sentence }) => sentence));
  return [
    {
      moves: [...given].flatMap(([offer, those]) => moveOf(posed.offerings[offer]!, those, posed.facts)),
      recipes,
      event: changed,
      dishes: way.figures.extra,
      more: moreOf(was.complete && is.complete, was.total, is.total),
      work: way.figures.work,
      clashes: after.problems
        .filter(({ code, sentence }) => code === 'oven-clash' && !known.has(sentence))
        .map(({ sentence }) => sentence),
    },
  ];
};

const moveOf = (offering: Offering, those: readonly Given[], facts: Facts): Move[] => {
  const { kind, course, recipe, dish, treatments } = offering;
  if (kind === 'as-is') return [];
  return [
    {
      kind,
      course: course.name,
      dish: recipe.name,
      base: dish && isNew(offering) ? (facts.recipes.get(dish.recipe)?.name ?? '') : '',
      guests: those.reduce((sum, { guests }) => sum + guests, 0),
      who: those.map(({ lack, guests }) =>
        guests === lack.guest.count ? lack.who : `${guests} of ${lack.who}`,
      ),
      how: treatedWords(treatments),
      cautions: treatments.flatMap(cautionOf),
    },
  ];
};

const cautionOf = (one: Treatment): string[] =>
  one.do === 'swap' && one.substitute.caution !== '' ? [`${one.by}: ${one.substitute.caution}`] : [];
