import { type EventRow, list } from '../../store/events.js';
import { todayOf } from '../coming.js';
import { eventOf } from '../events/event.js';
import { formatFor } from '../format.js';
import { type Answerer, query } from '../house.js';
import { page } from '../page.js';
import { drawCosting } from './draw.js';
import { viewAsked } from './in-view.js';
import { type CostingPage, costingPage } from './model.js';
import { priceForm } from './price-form.js';

export type ChooseCosting = CostingPage & { choices: { value: string; label: string }[] };

/** What an event costs, its price and what that leaves: on the page, on paper, as CSV and JSON. */
export const showCosting: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  return drawCosting(reply, one, await viewAsked(request, one));
};

const mostChoices = 60;

/** The costing of an event to choose, the next one until another is chosen. */
export const chooseCosting: Answerer = async (request, reply) => {
  const coming = await list(request.server.house.db, { from: todayOf(request), most: mostChoices });
  const choices = coming.filter(isOn);
  const next = choices.find(({ state }) => state === 'confirmed' || state === 'quoted') ?? choices[0];
  const key = query(request, 'event') || next?.key;
  if (!key) return page(reply, 'costing/none', { title: 'Costing', nav: 'Costing' });
  const one = await eventOf(request, key);
  const f = formatFor(request.kitchen);
  const { model } = await costingPage(request, one, await viewAsked(request, one));
  return page(reply, 'costing/choose', {
    title: `Costing, ${one.event.name}`,
    nav: 'Costing',
    ...model,
    form: { ...priceForm(one.event, one.revision, f), event: key },
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
