import { shortWords } from '../../core/coverage-problems.js';
import { handledWords } from '../../core/handled-with.js';
import { type PassGuest, type PassList, passList } from '../../core/sheets/pass-list.js';
import { dishAtPass, dishWithWhy, passListSheet, toSettleAtPass } from '../../core/sheets/pass-list-sheet.js';
import { answerSheet } from '../answer.js';
import { printedNow } from '../coming.js';
import { addressesOf } from '../events/addresses.js';
import { type EventHead, eventOf, headOf } from '../events/event.js';
import { partyInWords } from '../events/party-in-words.js';
import { type Format, formatFor } from '../format.js';
import type { Answerer } from '../house.js';
import { labelWords } from '../label-days.js';
import { type PrintState, printState } from '../printed/outdated.js';
import { withBeside } from '../printed/papers.js';

/** One guest in a course as the pass reads it; each of the lists in words, empty where there is nothing to say. */
export type PassRow = {
  /** The table, the first time it comes. */
  table: string;
  who: string;
  diets: string;
  gets: string;
  may: string;
  others: string;
  not: string;
  open: string;
  settle: string;
};
export type PassPage = {
  head: EventHead;
  at: ReturnType<typeof addressesOf>;
  print: PrintState;
  /** How many guests have a diet, and how many have not answered. */
  sum: string;
  courses: { name: string; time: string; rows: PassRow[]; kept: string[]; short: string[] }[];
  empty: boolean;
  cautions: { who: string; words: string }[];
  handled: string[];
  notListed: string;
  labels: string;
  foot: string[];
  paper: { left: string; middle: string; right: string; foot: string };
};

/** Who gets what at the pass, by course and table: on the page, on paper for the kitchen, as CSV and JSON. */
export const showPass: Answerer = async (request, reply) => {
  const found = await eventOf(request);
  const { facts, beside } = await withBeside(request, found);
  const answer = passList(found.event, facts, beside);
  const { value } = answer;
  const { event } = value;
  const sheet = passListSheet(answer);
  const f = formatFor(request.kitchen);
  return answerSheet(reply, sheet, 'pass/show', {
    title: `For the pass, ${event.name}`,
    nav: 'Events',
    head: await headOf(request, found),
    at: addressesOf(event.key),
    print: await printState(request, found, 'pass', sheet),
    sum: sumWords(value, f),
    courses: value.courses.map(({ course, tables, kept }) => ({
      name: course.name,
      time: course.time,
      rows: tables.flatMap(({ table, guests }) =>
        guests.map((one, at) => ({
          ...rowOf(one, value, f),
          table: at > 0 ? '' : table || (tables.length > 1 ? 'no table' : ''),
        })),
      ),
      short: [...new Set(tables.flatMap(({ guests }) => guests.flatMap(({ short }) => short ?? [])))].map(
        (one) => shortWords(one, event),
      ),
      kept: kept.map((one) => `${one.name}: ${f.number(one.portions)} for ${f.list(one.who)}, ${one.how}`),
    })),
    empty: value.courses.length === 0,
    cautions: value.cautions,
    handled: value.handled.flatMap(handledWords),
    notListed:
      value.notListed > 0
        ? `${f.count(value.notListed, 'more guest')} ${value.notListed === 1 ? 'has' : 'have'} not answered: ask before serving.`
        : '',
    labels: labelWords(value.labels, f),
    foot: sheet.foot,
    paper: {
      left: value.facts.kitchen.name,
      middle: partyInWords(event, f),
      right: 'For the pass',
      foot: `${printedNow(request)} Keep it in the kitchen. Void when guests, menu, a recipe or a label change.`,
    },
  });
};

const rowOf = (one: PassGuest, { event }: PassList, f: Format): Omit<PassRow, 'table'> => ({
  who: one.guest.name || one.diets.length > 0 ? one.who : f.count(one.guest.count, 'guest'),
  diets: one.guest.answered ? (one.guest.name ? one.diets.join(', ') : '') : 'not answered',
  gets: either(one.gets.map(dishAtPass)),
  may: either(one.may.map((dish) => `${dishAtPass(dish)}, by ${f.list(dish.because)}`)),
  others: f.list(one.others.map(({ name }) => name)),
  not: one.not.map(dishWithWhy).join('; '),
  open: one.guest.answered
    ? one.open.map((dish) => `${dishWithWhy(dish)}${dish.notApart ? ', not kept apart' : ''}`).join('; ')
    : '',
  settle:
    one.short && one.leftWith !== 'no' ? 'Not enough of it for all who need it.' : toSettleAtPass(one, event),
});

const either = (names: readonly string[]): string => names.join(' or ');

const sumWords = ({ guests, withDiets, notAnswered }: PassList, f: Format): string =>
  [
    f.count(guests, 'guest'),
    `${f.number(withDiets)} with a diet`,
    notAnswered > 0 && `${f.number(notAnswered)} not answered`,
  ]
    .filter(Boolean)
    .join(', ');
