import { printedSheets } from '../../core/facts/printed-sheet.js';
import type { LineNow } from '../../core/printed.js';
import { allergenMatrix } from '../../core/sheets/allergen-matrix.js';
import { tableCards } from '../../core/sheets/table-cards.js';
import { notePrint } from '../../store/printed-sheets.js';
import { eventOf } from '../events/event.js';
import { type Form, text, texts } from '../form.js';
import { Refused } from '../guards.js';
import type { Answerer } from '../house.js';
import { goTo, saving } from '../save.js';
import { cardId, copiesAddress, copiesOf } from './copies.js';
import { asKept, linesNow, papers, withBeside } from './papers.js';

/**
 * Notes that a paper is printed, with what it says, and goes on to its page, which opens the print dialog. Of cards
 * those chosen alone are noted; how many of each goes on in the address.
 */
export const printPaper: Answerer = async (request, reply) => {
  const form = request.body as Form;
  const sheet = printedSheets.find((name) => name === text(form, 'sheet'));
  if (!sheet) throw new Refused('Not printed: this is none of the papers of an event. Open it again.', 400);
  const { event, facts } = await eventOf(request);
  const here = await withBeside(request, { event, facts });
  const paper = papers[sheet];
  const lines = linesNow(paper.sheet(event, here.facts, here.beside));
  const note = (some: readonly LineNow[]) =>
    notePrint(request.server.house.db, { event: event.key, sheet, lines: some.map(asKept) }, saving(reply));
  const address = paper.page(event.key);
  if (!paper.part) {
    await note(lines);
    return goTo(reply, `${address}?printing=1`);
  }
  const asked = { dishes: texts(form, 'd'), numbers: texts(form, 'n') };
  const cards = tableCards(allergenMatrix(event, here.facts, here.beside).value);
  const { wanted, faults } = copiesOf(cards, asked);
  const chosen = cards.filter((card) => wanted.get(cardId(card))).map(({ dish }) => dish);
  const chosenAddress = `${address}?${copiesAddress(asked)}`;
  if (faults.length > 0 || chosen.length === 0) return goTo(reply, chosenAddress);
  await note(lines.filter(isOf(chosen)));
  return goTo(reply, `${chosenAddress}&printing=1`);
};

const isOf =
  (dishes: readonly string[]) =>
  ({ of, name }: LineNow): boolean =>
    of !== 'dish' || dishes.includes(name);
