import { tooManyAnswers } from './answers.js';
import type { CourseCover, Coverage, CoverageRow } from './coverage.js';
import type { Verdict } from './diets.js';
import type { Event } from './facts/event.js';
import type { Short } from './portions.js';
import type { Problem, Weight } from './problem.js';
import { listed, ofEvent } from './problems.js';

/**
 * What must be settled about diets: who has nothing in a course, portions that do not reach, what must be kept apart,
 * who has only what isn't known, who hasn't answered; and what is usually minded beyond the facts kept here.
 */
export const coverageProblems = (event: Event, coverage: Coverage): Problem[] => {
  const problems: Problem[] = [];
  const say = (weight: Weight, code: string, sentence: string, field = 'guests') =>
    problems.push({ weight, code, sentence, subject: ofEvent(event, field) });
  for (const row of coverage.rows) if (row.guest?.answered) ofRow(row, say);
  for (const one of coverage.short)
    say(one.unlessKnown ? 'ask' : 'stop', 'too-few-portions', shortWords(one, event), 'courses');
  const { notAnswered: open } = coverage;
  if (open > 0) {
    const who = open === 1 ? '1 guest has' : `${open} guests have`;
    say('ask', 'not-answered', `${who} not answered about diet.`);
  }
  const over = tooManyAnswers(event);
  if (over > 0) say('check', 'too-many-answers', `${over} more answers about diet than guests.`);
  return problems;
};

type Say = (weight: Weight, code: string, sentence: string, field?: string) => void;

const ofRow = ({ guest, who, diets, courses, cautions }: CoverageRow, say: Say): void => {
  const name = guest!.name && diets.length ? `${who} (${diets.join(', ')})` : who;
  const lacks = (wanted: Verdict, more: (course: CourseCover) => boolean = () => true) =>
    courses.filter((one) => one.byDiets === wanted && more(one)).map((one) => one.name.toLowerCase());
  const nothing = lacks('no');
  const unknown = lacks('unknown', ({ apart }) => apart.length === 0);
  const may = lacks('may', ({ short }) => short === undefined);
  const verb = guest!.count > 1 ? 'have' : 'has';
  if (nothing.length)
    say('stop', 'nothing-to-eat', `${name} ${verb} nothing to eat in ${listed(nothing, 'or')}.`);
  for (const dish of new Set(courses.flatMap(({ apart }) => apart)))
    say('ask', 'not-kept-apart', apartWords(dish, who, guest!.name !== ''), 'courses');
  if (unknown.length)
    say('ask', 'not-known', `${name}: what is in ${listed(unknown, 'or')} is not fully known.`);
  if (guest!.other)
    say('ask', 'own-words', `${who}: “${guest!.other}” is a wish in their own words, for you to judge.`);
  if (may.length)
    say('check', 'may-contain', `${name}: everything in ${listed(may, 'or')} may contain what they avoid.`);
  for (const caution of cautions) say('check', 'diet-caution', `${name}: ${caution}`);
};

/** What is missing for a dish that guests serve themselves from: "say how Ana’s is kept apart". */
export const apartWords = (dish: string, who: string, byName = true): string =>
  `${dish} is served for guests to help themselves: say how ${byName ? `${who}’s` : `that of ${who}`} is kept apart.`;

/** "Lentil pie is made for 6 and 8 need it: 2 go without." */
export const shortWords = (short: Short, { groups }: Event): string => {
  const { names, group, portions, guests, keptForOthers, shared, unlessKnown } = short;
  const heads = groups.length > 1 ? ` ${groups.find(({ key }) => key === group)!.name.toLowerCase()}` : '';
  const [are, it] = names.length > 1 ? ['are', 'them'] : ['is', 'it'];
  const need = `${guests}${heads} ${guests === 1 ? 'needs' : 'need'} ${it}`;
  const more = guests - portions;
  const without = unlessKnown
    ? 'the others have only what is not fully known'
    : `${more} ${more === 1 ? 'goes' : 'go'} without`;
  if (!shared) {
    const kept = portions === 0 ? 'all' : `${keptForOthers} of them`;
    const forOthers = keptForOthers > 0 ? `, ${kept} kept by name for others,` : '';
    const made = portions + keptForOthers;
    return `${listed(names)} ${are} made for ${made}${heads}${forOthers} and ${need}: ${without}.`;
  }
  const left = portions === 0 ? 'none' : String(portions);
  return `${listed(names)}: everybody takes of ${it}, which leaves ${left} where ${need}: ${without}.`;
};
