import { handledWords } from '../../core/handled-with.js';
import { type AllergenMatrix, allergenMatrix, isOpen } from '../../core/sheets/allergen-matrix.js';
import { allergenMatrixSheet } from '../../core/sheets/allergen-matrix-sheet.js';
import { answerSheet } from '../answer.js';
import { printedNow } from '../coming.js';
import { addressesOf } from '../events/addresses.js';
import { type EventHead, eventOf, headOf } from '../events/event.js';
import { partyInWords } from '../events/party-in-words.js';
import { type Format, formatFor } from '../format.js';
import { type Answerer, query } from '../house.js';
import { labelWords } from '../label-days.js';
import { type PrintState, printState } from '../printed/outdated.js';
import { withBeside } from '../printed/papers.js';
import { type GuestTable, guestTables } from './guests.js';
import {
  type MatrixCourse,
  matrixCourses,
  type OneDish,
  oneDish,
  type SourceLine,
  sourceLines,
} from './matrix.js';

export type AllergensPage = {
  head: EventHead;
  at: ReturnType<typeof addressesOf>;
  list: string;
  items: { id: string; short: string }[];
  /** So many columns that their heads stand upright. */
  many: boolean;
  courses: MatrixCourse[];
  /** The dish shown with all its entries; on a wide page only where one is asked for. */
  one: OneDish | undefined;
  asked: boolean;
  /** Guests by dishes, so many dishes side by side as can be read; the last one says who is covered. */
  guests: GuestTable[];
  handled: string[];
  print: PrintState;
  sources: SourceLine[];
  notKnown: string;
  labels: string;
  foot: string[];
  paper: { left: string; middle: string; right: string; foot: string };
};

const mostAcross = 16;

/** Dishes by allergens and guests by dishes: on the page, on paper for the kitchen, as CSV and JSON. */
export const showAllergens: Answerer = async (request, reply) => {
  const found = await eventOf(request);
  const { facts, beside } = await withBeside(request, found);
  const answer = allergenMatrix(found.event, facts, beside);
  const { value } = answer;
  const { event } = value;
  const f = formatFor(request.kitchen);
  const sheet = allergenMatrixSheet(answer);
  const dish = query(request, 'dish');
  const at = addressesOf(event.key);
  return answerSheet(reply, sheet, 'allergens/show', {
    title: `Diets and allergens, ${event.name}`,
    nav: 'Events',
    head: await headOf(request, found),
    at,
    list: value.list,
    items: value.items.map(({ id, short }) => ({ id, short })),
    many: value.items.length > mostAcross,
    courses: matrixCourses(value, at.allergens),
    one: oneDish(value, dish, at.allergens, f),
    asked: dish !== '',
    guests: guestTables(value, f),
    handled: value.handled.flatMap(handledWords),
    print: await printState(request, found, 'allergens', sheet),
    sources: sourceLines(value, f),
    notKnown: notKnownWords(value, f),
    labels: labelWords(value.labels, f),
    foot: sheet.foot,
    paper: {
      left: value.facts.kitchen.name,
      middle: partyInWords(event, f),
      right: 'Allergen matrix',
      foot: `${printedNow(request)} Void when a recipe, a brand or a label changes.`,
    },
  });
};

/** How many cells are not known, and in which dishes. */
const notKnownWords = ({ rows, notKnown }: AllergenMatrix, f: Format): string => {
  if (notKnown === 0) return 'Every cell is known.';
  const dishes = rows.filter(({ cells }) => cells.some(isOpen));
  const where =
    dishes.length === 1 ? `, all in ${dishes[0]!.recipe.name}` : `, in ${f.number(dishes.length)} dishes`;
  return `${f.count(notKnown, 'cell')} not known${where}: treat as contains.`;
};
