import type { Answer } from '../problem.js';
import type { AllergenMatrix } from './allergen-matrix.js';
import { cautions, type Sheet } from './sheet.js';
import { tableCards } from './table-cards.js';

/** The cards for the table as a sheet: a dish a row, each entry of the list in one of four columns, in words. */
export const tableCardsSheet = ({ value, problems }: Answer<AllergenMatrix>): Sheet => {
  const { event, list } = value;
  return {
    sheet: 'table-cards',
    title: `Table cards, ${event.name}`,
    about: { event: event.key, name: event.name, date: event.date, list },
    tables: [
      {
        name: 'cards',
        title: 'Cards',
        columns: [
          { key: 'course', label: 'Course' },
          { key: 'dish', label: 'Dish' },
          { key: 'contains', label: 'Contains' },
          { key: 'may', label: 'May contain' },
          { key: 'notChecked', label: 'Not checked: ask us' },
          { key: 'notListed', label: 'Not listed' },
          { key: 'ground', label: 'Not listed by' },
          { key: 'handled', label: 'Handled with' },
          { key: 'labelsFrom', label: 'Labels read from' },
          { key: 'labelsTo', label: 'Labels read to' },
        ],
        rows: tableCards(value).map((card) => ({
          course: card.course,
          dish: card.dish,
          contains: card.contains.join('; '),
          may: card.may.join('; '),
          notChecked: card.notChecked.join('; '),
          notListed: card.notListed.join('; '),
          ground: card.notListed.length === 0 ? '' : card.byWord ? 'labels and the cook’s word' : 'labels',
          handled: card.handled.join('; '),
          labelsFrom: card.labels?.first ?? '',
          labelsTo: card.labels?.last ?? '',
        })),
      },
    ],
    problems,
    foot: [cautions.allergens],
  };
};
