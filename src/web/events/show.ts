import { isOver } from '../../core/over.js';
import type { Answer } from '../../core/problem.js';
import { type EventSummary, eventSummary } from '../../core/sheets/event-summary.js';
import { eventSummarySheet } from '../../core/sheets/event-summary-sheet.js';
import { answerSheet } from '../answer.js';
import { printedNow, todayOf } from '../coming.js';
import { type Format, formatFor } from '../format.js';
import type { Answerer } from '../house.js';
import { type OutdatedPaper, outdatedPapers } from '../printed/outdated.js';
import { type QuoteNeed, quoteNeed } from '../quotes/need.js';
import { addressesOf } from './addresses.js';
import { type Clashes, clashes, leftOpen, withPapers, withQuote } from './clashes.js';
import { type MenuCourse, menuRows } from './dishes.js';
import { type EventHead, eventOf, headOf } from './event.js';
import { type Fact, factLine } from './fact-line.js';
import { partyInWords } from './party-in-words.js';

export type EventPage = {
  head: EventHead;
  at: ReturnType<typeof addressesOf>;
  facts: Fact[];
  courses: MenuCourse[];
  /** true while there is no dish. */
  empty: boolean;
  clashes: Clashes;
  done: string;
  /** Where what its guests eat can be forgotten, once it is done. */
  forget: string;
  /** Once it is over: whether something is noted of what it came to. */
  over?: { noted: boolean };
  note: string;
  foot: readonly string[];
  paper: { left: string; middle: string; right: string; foot: string };
};

/** An event: what is made of each dish, what it costs, who is left out. Also the event summary on paper, as CSV and JSON. */
export const showEvent: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const answer = eventSummary(one.event, one.facts);
  const sheet = eventSummarySheet(answer);
  const papers = await outdatedPapers(request, [one.event]);
  const beside = { printed: printedNow(request), papers, need: await quoteNeed(request, one) };
  const model = eventPage(await headOf(request, one), answer, sheet.foot, beside);
  return answerSheet(reply, sheet, 'events/show', {
    title: one.event.name,
    nav: 'Events',
    ...model,
    over: isOver(one.event, todayOf(request)) ? { noted: one.event.afterwards !== null } : undefined,
  });
};

/** What stands on an event's page beside its figures: when it is printed, papers and a quote that hold no more. */
type Beside = { printed: string; papers: readonly OutdatedPaper[]; need: QuoteNeed | undefined };

/** Everything that stands on the page of an event. */
export const eventPage = (
  head: EventHead,
  { value, problems }: Answer<EventSummary>,
  foot: readonly string[],
  { printed, papers, need }: Beside,
): EventPage => {
  const { event } = value;
  const f = formatFor(value.facts.kitchen);
  const kept = event.served && f.date(event.served.date);
  return {
    head,
    at: addressesOf(event.key),
    facts: factLine(value, f),
    courses: menuRows(value),
    empty: event.courses.every(({ dishes }) => dishes.length === 0),
    clashes: kept ? leftOpen(problems) : withQuote(withPapers(clashes(problems), papers), need),
    done: kept
      ? `These figures are of what was served, as it was kept on ${kept}; what changes in recipes, prices and labels since then leaves them alone.`
      : '',
    forget: kept && event.guests.length > 0 ? addressesOf(event.key).forget : '',
    note: event.note,
    foot,
    paper: paperOf(
      value,
      f,
      `${printed} ${kept ? `What was served, kept on ${kept}.` : 'Void when guests, menu or a recipe change.'}`,
    ),
  };
};

const paperOf = ({ event, facts }: EventSummary, f: Format, foot: string): EventPage['paper'] => ({
  left: facts.kitchen.name,
  middle: partyInWords(event, f),
  right: 'Event summary',
  foot,
});
