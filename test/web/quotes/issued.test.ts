import { sql } from 'kysely';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { edit } from '../../../src/store/changes.js';
import { read } from '../../../src/store/documents.js';
import { history } from '../../../src/store/history.js';
import { loggedError } from '../../../src/web/logged.js';
import { type Agent, agentOn, now } from '../agent.js';
import { asPart } from '../events/page.js';
import { fieldsOf } from '../forms.js';
import { accepted, clear, draft, issued, list, lunch, paperOn, press, priced } from './quoted.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(priced());
});
beforeEach(() => clear(agent));
afterAll(() => agent.close());

const by = { who: 'Ines', at: now };
const lunchNow = async () => (await read(agent.db, 'event', 'retirement-lunch'))!;
const guests = async (number: number) => {
  const { doc, revision } = await lunchNow();
  await edit(agent.db, 'event', doc.key, {
    ...by,
    revision,
    change: (event) => ({ ...event, groups: event.groups.map((group) => ({ ...group, guests: number })) }),
  });
};

test('issued, it says so with its day, cannot be edited, and the enquiry is quoted', async () => {
  const page = await draft(agent);
  expect((await press(agent, page, 'issue')).headers.location).toBe(page);
  const { text } = await agent.get(page);
  expect(text).toContain('Issued Wed 14 Oct 2026, open until Wed 28 Oct 2026');
  expect(paperOn(text)).toContain('Quote 1 14 Oct 2026');
  expect((await agent.get(`${page}/edit`)).headers.location).toBe(page);
  expect((await agent.post(`${page}/edit`, { revision: '1', title: 'x' })).status).toBe(409);
  expect((await lunchNow()).doc.state).toBe('quoted');
  const again = await agent.post(`${page}/issue`, { revision: '1' });
  expect(again.status).toBe(409);
  expect(again.text).toContain('It changed since this page was opened');
});

test('what was issued prints the same whatever prices, recipes, terms and the kitchen’s name become', async () => {
  const page = await issued(agent);
  const before = paperOn((await agent.get(page)).text);
  const kitchen = (await read(agent.db, 'kitchen', 'kitchen'))!;
  await edit(agent.db, 'kitchen', 'kitchen', {
    ...by,
    revision: kitchen.revision,
    change: (doc) => ({
      ...doc,
      name: 'Another Yard',
      locale: 'de-DE',
      terms: { ...doc.terms, allergies: 'Nothing to say.', instalments: [] },
      tax: { name: 'VAT', rate: '20', included: false, rounding: 'whole-down' as const },
    }),
  });
  await sql`update price set price = price * 2`.execute(agent.db);
  await sql`update recipe set name = name || ', renamed'`.execute(agent.db);
  await guests(30);
  const after = (await agent.get(page)).text;
  expect(paperOn(after)).toBe(before);
  expect(before).toContain('Tansy Yard Kitchen');
  expect(after).toMatch(/as issued/);
  const rows = [
    ...after.matchAll(
      /<tr><th scope="row">Cost<\/th><td class="number">([^<]*)<\/td><td class="number">([^<]*)</g,
    ),
  ];
  expect(rows[0]?.[1]).not.toBe(rows[0]?.[2]);
  await edit(agent.db, 'kitchen', 'kitchen', {
    ...by,
    revision: kitchen.revision + 1,
    change: () => kitchen.doc,
  });
  await guests(24);
});

test('no cost, margin or word of the kitchen is on the client’s paper, and it stays off the print', async () => {
  const page = await issued(agent);
  const { text } = await agent.get(page);
  expect(paperOn(text)).not.toMatch(/margin|recipe|ingredient|food cost|a portion|not known/i);
  expect(text).toMatch(/<aside class="side screen"[^>]*>[\s\S]*Margin/);
});

test('the same quote as JSON and CSV has its figures as exact text, and no cost', async () => {
  const page = await issued(agent);
  const { body, headers } = await agent.get(`${page}.json`);
  expect(headers['content-type']).toContain('application/json');
  expect(body).toMatchObject({ sheet: 'quote', about: { guests: '24', currency: 'GBP', state: 'issued' } });
  const [, price, due] = body.tables as { rows: Record<string, string>[] }[];
  expect(price!.rows[0]).toMatchObject({ words: 'guests', count: '24', each: '26.00', amount: '624.00' });
  expect(price!.rows.at(-1)).toMatchObject({ words: 'total', amount: '624.00' });
  expect(due!.rows.map(({ amount }) => amount)).toEqual(['156.00', '468.00']);
  const csv = await agent.get(`${page}.csv`);
  expect(csv.headers['content-type']).toContain('text/csv');
  expect(csv.text).toContain('624.00');
  expect(JSON.stringify(body) + csv.text).not.toMatch(/margin|recipe|food cost/i);
  expect((await agent.get('/quotes/none.json')).status).toBe(404);
});

test('accepted on a day, by plain form; the event is confirmed, and that is a save of its own in its history', async () => {
  const page = await issued(agent);
  const wrong = await press(agent, page, 'accept', { day: '12 Oct 2026' });
  expect(wrong.status).toBe(422);
  expect(wrong.text).toContain('It was issued after that day');
  expect(wrong.text).toContain('value="12 Oct 2026"');
  expect((await press(agent, page, 'decline', { day: 'soon' })).status).toBe(422);
  expect((await press(agent, page, 'accept', { day: '14 Oct' })).status).toBe(303);
  expect((await agent.get(page)).text).toContain('Accepted Wed 14 Oct 2026');
  expect((await lunchNow()).doc.state).toBe('confirmed');
  expect((await history(agent.db, 'event', 'retirement-lunch'))[0]).toMatchObject({
    before: { state: 'quoted' },
    after: { state: 'confirmed' },
  });
  expect((await press(agent, page, 'decline')).status).toBe(409);
  await press(agent, page, 'open');
  expect((await agent.get(page)).text).toContain('It is declined');
  await press(agent, page, 'decline');
  expect((await agent.get(list)).text).toContain('declined Wed 14 Oct 2026');
});

test('an issued quote takes no undo: no save of it is in the history', async () => {
  await accepted(agent);
  const { rows } = await sql<{ entity: string }>`select distinct entity from change`.execute(agent.db);
  expect(rows.map(({ entity }) => entity)).not.toContain('quote');
});

test('another head-count than its terms name says that another quote is needed, and a button drafts it', async () => {
  const page = await accepted(agent);
  await guests(23);
  for (const address of [lunch, list, page])
    expect((await agent.get(address)).text).not.toContain('is needed');
  const said = '40 guests now, 24 in quote 1: quote 2 is needed.';
  const form = fieldsOf((await agent.get(`${lunch}/guests/change`)).text, `${lunch}/guests`);
  const wanted = { ...form, 'groups[0].guests': '40' };
  expect((await asPart(agent.post(`${lunch}/guests/preview`, wanted))).text).toContain(said);
  expect((await asPart(agent.post(`${lunch}/guests`, wanted))).text).toContain(said);
  for (const address of [lunch, list, page]) {
    const { text } = await agent.get(address);
    expect(text, address).toContain(said);
    expect(text, address).toMatch(/<button[^>]*>Draft quote 2</);
  }
  const second = await draft(agent);
  expect(paperOn((await agent.get(second)).text)).toContain('£1,040.00 40 guests at £26.00 each');
  await press(agent, second, 'issue');
  expect((await agent.get(page)).text).toContain('Accepted Wed 14 Oct 2026');
  await press(agent, second, 'accept');
  expect((await agent.get(page)).text).toContain('since replaced');
  expect((await agent.get(lunch)).text).not.toContain('is needed');
  await guests(24);
});

test('an event with an issued quote is archived, not removed', async () => {
  await issued(agent);
  const { text } = await agent.get(`${lunch}/remove`);
  expect(text).toContain('it can be archived and not removed');
  expect(text).not.toContain('Remove Retirement lunch</button>');
  const revision = String((await lunchNow()).revision);
  const refused = await agent.post(`${lunch}/remove`, { revision });
  expect(refused.status).toBe(409);
  expect(refused.text).toContain('archive it instead');
});

test('what the database complains of never brings a client’s name into the log', async () => {
  const failing = sql`insert into payment (key, event, date, amount, back, words)
    values ('p', 'retirement-lunch', '2026-10-14', 100, false, 'from Gwen Abery')`.execute(agent.db);
  const error = await failing.catch((one: unknown) => one);
  expect(String((error as { detail?: string }).detail)).toContain('Gwen');
  expect(JSON.stringify(loggedError(error as Error))).not.toContain('Gwen');
});
