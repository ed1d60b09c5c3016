import { sql } from 'kysely';
import type { Workbook } from '../../../src/core/facts/facts.js';
import { exampleKitchen } from '../../world.js';
import type { Agent } from '../agent.js';
import { fieldsOf } from '../forms.js';

export const lunch = '/events/retirement-lunch';
export const list = `${lunch}/quotes`;

/** The example with its lunch for 24 at 26 pounds a guest, without tax, on the kitchen's terms. */
export const priced = (): Workbook => {
  const workbook = exampleKitchen();
  workbook.kitchen.tax = null;
  workbook.kitchen.terms = {
    ...workbook.kitchen.terms,
    included: 'Cooking, crockery and two people to serve.',
    allergies: 'Please tell us of every allergy. Traces are possible in all we make.',
    instalments: [{ words: 'deposit, one quarter', percent: '25', days: null }],
    balanceDays: 2,
    finalCountDays: 3,
    fewerPercent: '5',
  };
  const event = workbook.events.find(({ key }) => key === 'retirement-lunch')!;
  event.state = 'enquiry';
  event.price = { ...event.price, by: { aGuest: 2600 } };
  return workbook;
};

/** Drafts the next quote of the lunch and gives its page. */
export const draft = async (agent: Agent): Promise<string> => {
  const { text } = await agent.get(list);
  const drafted = await agent.post(list, fieldsOf(text, list));
  return String(drafted.headers.location).replace(/\/edit$/, '');
};

/** Presses a button of a quote's page. */
export const press = async (agent: Agent, page: string, what: string, more: Record<string, string> = {}) => {
  const { text } = await agent.get(page);
  const revision = /name="revision" value="(\d+)"/.exec(text)?.[1] ?? '';
  return agent.post(`${page}/${what}`, { revision, ...more });
};

export const issued = async (agent: Agent): Promise<string> => {
  const page = await draft(agent);
  await press(agent, page, 'issue');
  return page;
};

export const accepted = async (agent: Agent): Promise<string> => {
  const page = await issued(agent);
  await press(agent, page, 'accept');
  return page;
};

/** Records a payment of the lunch on its page. */
export const pay = async (agent: Agent, amount: string, words = 'deposit, by bank') => {
  const { text } = await agent.get(list);
  const form = fieldsOf(text, `${lunch}/payments`);
  return agent.post(`${lunch}/payments`, { ...form, amount, words });
};

/** The paper of a page alone, as the client has it. */
export const paperOn = (text: string): string =>
  /<article class="client-paper[\s\S]*<\/article>/
    .exec(text)![0]
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');

/** Takes all quotes, payments and papers out, for the next test. */
export const clear = async ({ db }: Agent): Promise<void> => {
  for (const table of ['quote', 'payment', 'numbered_paper'])
    await sql`delete from ${sql.table(table)}`.execute(db);
  await db.updateTable('event').set({ state: 'enquiry' }).where('key', '=', 'retirement-lunch').execute();
};

/** Every page there is of quotes, payments and papers, for one event of any kitchen. */
export const quoteEverything = async (agent: Agent, key: string): Promise<void> => {
  const [event, currency] = [`/events/${key}`, await currencyOf(agent)];
  const next = async () => {
    const { text } = await agent.get(`${event}/quotes`);
    const drafted = await agent.post(`${event}/quotes`, fieldsOf(text, `${event}/quotes`));
    return String(drafted.headers.location).replace(/\/edit$/, '');
  };
  const page = await next();
  const form = fieldsOf((await agent.get(`${page}/edit`)).text, `${page}/edit`);
  const line = { 'options[0].lines[0].count': '10', 'options[0].lines[0].words': 'guests' };
  await agent.post(`${page}/edit`, {
    ...form,
    ...line,
    'options[0].lines[0].each': currency === 'JPY' ? '2000' : '20',
  });
  for (const step of ['issue', 'accept']) await press(agent, page, step);
  await agent.post(`${event}/payments`, { known: '0', amount: '30', words: 'deposit' });
  await agent.post(`${event}/payments`, { known: '1', amount: '5', words: 'a mistake' });
  await agent.post(`/payments/${key.slice(0, 45)}-payment/receipt`);
  await agent.post(`/payments/${key.slice(0, 45)}-payment-2/strike`);
  await agent.post(`${event}/invoices`);
  await agent.post('/papers/invoice/1/credit');
  await next();
  const { n } = await agent.db
    .selectNoFrom(
      sql<number>`(select count(*)::int from quote) * 10 + (select count(*)::int from numbered_paper)`.as(
        'n',
      ),
    )
    .executeTakeFirstOrThrow();
  if (n !== 23) throw new Error(`two quotes and three papers were wanted: ${n}`);
};

const currencyOf = async ({ db }: Agent): Promise<string> =>
  (await db.selectFrom('kitchen').select('currency').executeTakeFirstOrThrow()).currency;
