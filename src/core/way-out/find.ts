import { costOfEvent, type EventCost } from '../costing.js';
import { coverageOf, notAnswered } from '../coverage.js';
import { moreOf } from '../event-change.js';
import type { Event } from '../facts/event.js';
import { byKey, type Facts } from '../facts/facts.js';
import type { Recipe } from '../facts/recipe.js';
import { needsApart } from '../kept-apart.js';
import { latestSteps } from '../latest.js';
import { ovenAsks, ovenProblems } from '../ovens.js';
import { requirementsOf } from '../requirements.js';
import { applied, type Given, givenBy } from './apply.js';
import { faultsOfWay } from './check.js';
import type { Lack } from './lacking.js';
import { isNew, type Offering } from './offers.js';
import type { StoodIn } from './others.js';
import { type Posed, pose } from './pose.js';
import { prover } from './proof.js';
import type { Way } from './puzzle.js';
import { type Taken, type Treatment, treatedWords } from './treat.js';
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
export const waysOut = (
  event: Event,
  facts: Facts,
  stoodIn: StoodIn,
  solve: Solve,
  taken?: Taken,
): WaysOut => {
  const coverage = coverageOf(event, facts);
  const posed = pose(event, facts, stoodIn, coverage, taken);
  const { puzzle, who, nothing } = posed;
  const lacking = [...who.flat(), ...nothing];
  const shown: WayOut[] = [];
  const asked = {
    posed,
    event,
    facts,
    before: menuFigures(event, facts),
    prove: prover(
      event,
      coverage,
      new Set(nothing.map(({ guest, course }) => `${guest.key} ${course.key}`)),
      facts,
    ),
  };
  if (puzzle.needs.length > 0)
    for (const way of waysByFigures(puzzle, solve, mostTried)) {
      shown.push(...shownBy(way, asked));
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

type Shown = {
  posed: Posed;
  event: Event;
  facts: Facts;
  before: MenuFigures;
  prove: ReturnType<typeof prover>;
};

/** A way as it is shown; none where either check finds a fault with it. */
const shownBy = (way: Way, { posed, event, facts, before, prove }: Shown): WayOut[] => {
  if (faultsOfWay(posed.puzzle, way).length > 0) return [];
  const given = givenBy(posed, way);
  const { event: changed, recipes } = applied(event, posed, given);
  const fed = [...given.values()].flatMap((those) =>
    those.map(({ lack }) => ({ guest: lack.guest.key, course: lack.course.key })),
  );
  if (prove(changed, recipes, fed).length > 0) return [];
  const after = menuFigures(changed, { ...facts, recipes: new Map([...facts.recipes, ...byKey(recipes)]) });
  return [
    {
      moves: movesOf(event, posed, given),
      recipes,
      event: changed,
      dishes: way.figures.extra,
      more: moreOf(before.complete && after.complete, before.total, after.total),
      work: way.figures.work,
      clashes: after.clashes.filter((sentence) => !before.clashes.includes(sentence)),
    },
  ];
};

type MenuFigures = Pick<EventCost, 'total' | 'complete'> & { clashes: string[] };

/** What the food of a menu costs, in minor units, and where its ovens clash. */
const menuFigures = (event: Event, facts: Facts): MenuFigures => {
  const needs = requirementsOf(event, facts);
  const { total, complete } = costOfEvent(event, facts, needs).value;
  const asks = ovenAsks(event, latestSteps(event, needs, facts), facts);
  return { total, complete, clashes: ovenProblems(event, asks, facts).map(({ sentence }) => sentence) };
};

/** What moves, in the order of the courses. */
const movesOf = (
  { courses }: Event,
  { offerings, facts }: Posed,
  given: ReadonlyMap<number, Given[]>,
): Move[] =>
  courses.flatMap((course) =>
    [...given]
      .filter(([offer]) => offerings[offer]!.course === course)
      .flatMap(([offer, those]) => moveOf(offerings[offer]!, those, facts)),
  );

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
