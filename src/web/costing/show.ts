import { costing, costingSheet } from '../../core/sheets/costing.js';
import { type EventRow, list } from '../../store/events.js';
import { answerSheet } from '../answer.js';
import { todayOf } from '../coming.js';
import { eventOf } from '../events/event.js';
import { formatFor } from '../format.js';
import { type Answerer, query } from '../house.js';
import { page } from '../page.js';
import { type CostingPage, costingPage } from './model.js';

export type ChooseCosting = CostingPage & { choices: { value: string; label: string }[] };

/** What the food of an event costs: on the page, on paper, as CSV and JSON. */
export const showCosting: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const answer = costing(one.event, one.facts);
  return answerSheet(reply, costingSheet(answer), 'costing/show', {
    title: `Food cost, ${one.event.name}`,
    nav: 'Costing',
    ...(await costingPage(request, one, answer)),
  });
};

const mostChoices = 60;

/** The costing of an event to choose, the next one until another is chosen. */
export const chooseCosting: Answerer = async (request, reply) => {
  const coming = await list(request.server.house.db, { from: todayOf(request), most: mostChoices });
  const choices = coming.filter(isOn);
  const next = choices.find(({ state }) => state === 'confirmed' || state === 'quoted') ?? choices[0];
  const key = query(request, 'event') || next?.key;
  if (!key) return page(reply, 'costing/none', { title: 'Food cost', nav: 'Costing' });
  const one = await eventOf(request, key);
  const f = formatFor(request.kitchen);
  return page(reply, 'costing/choose', {
    title: `Food cost, ${one.event.name}`,
    nav: 'Costing',
    form: { event: key },
    ...(await costingPage(request, one, costing(one.event, one.facts))),
    choices: withOne(choices, key, one.event).map(({ key: value, name, date }) => ({
      value,
      label: `${f.date(date)}, ${name}`,
    })),
  });
};

const isOn = ({ archived, state }: EventRow): boolean =>
  !archived && state !== 'cancelled' && state !== 'postponed';

type Choice = Pick<EventRow, 'key' | 'name' | 'date'>;

const withOne = (choices: readonly Choice[], key: string, event: Choice): Choice[] =>
  choices.some((choice) => choice.key === key) ? [...choices] : [event, ...choices];
