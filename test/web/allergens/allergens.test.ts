import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';

let agent: Agent;
beforeAll(async () => {
  const kitchen = exampleKitchen();
  const lunch = kitchen.events.find(({ key }) => key === 'retirement-lunch')!;
  lunch.guests[0]!.name = 'Gwen <i>Abery</i>';
  agent = await agentOn(kitchen);
});
afterAll(() => agent.close());
const at = '/events/retirement-lunch/allergens';
const rowOf = (text: string, name: string) =>
  text.split('<tr').find((row) => row.includes('scope="row"') && row.includes(name)) ?? '';
const signs = (row: string) =>
  [...row.matchAll(/<td>(.*?)<\/td>/g)].map(([, cell]) =>
    [...cell!.matchAll(/class="cell (\w+)"/g)].map(([, state]) => state).join('+'),
  );

test('the matrix has the list’s own columns, and a cell that may and is in part not known shows both', async () => {
  const { text, status } = await agent.get(at);
  expect(status).toBe(200);
  const heads = [...text.matchAll(/<th scope="col"><span>([A-Z]\w+)<\/span><\/th>/g)].map(([, head]) => head);
  expect(heads.slice(0, 14).join(' ')).toBe(
    'Gluten Crustaceans Eggs Fish Peanuts Soya Milk Nuts Celery Mustard Sesame Sulphites Lupin Molluscs',
  );
  const u = 'unknown';
  const c = 'contains';
  expect(signs(rowOf(text, 'Smoked mackerel'))).toEqual([
    c,
    u,
    u,
    c,
    u,
    c,
    c,
    u,
    u,
    u,
    'may+unknown',
    u,
    u,
    u,
  ]);
  expect(signs(rowOf(text, 'Celeriac')).filter((state) => state === c)).toHaveLength(2);
  expect(text).toContain('10 cells not known, all in Smoked mackerel pâté with toast: treat as contains.');
  expect(text).toContain('Repeats what labels and the cook say; it does not test food.');
});

test('on paper the allergens that one label leaves open stand in one line', async () => {
  const { text } = await agent.get(at);
  const sources = text.slice(text.indexOf('What brings them in'));
  expect(sources).toMatch(
    /<td>Crustaceans, Eggs, Peanuts, Nuts, Celery, Mustard, Sulphites, Lupin and Molluscs<\/td><td>not known/,
  );
  expect(sources.match(/label not read/g)!.length).toBeLessThan(8);
});

test('a cell leads to what brings it in, through which components, and how that is known', async () => {
  const { text } = await agent.get(at);
  const href =
    /href="([^"]*-celery)"[^>]*aria-label="Lentil pie with crushed potato and oil: Celery, contains/.exec(
      text,
    )![1]!;
  const [page, id] = href.split('#');
  const one = await agent.get(page!);
  const row = one.text.slice(one.text.indexOf(`id="${id}"`)).split('</li>\n<li class="row')[0]!;
  expect(row).toContain('through Lentil and mushroom ragù, then Tomato sauce, then');
  expect(row).toContain('as the cook says by R.T.');
  expect(row).toContain('href="/ingredients/celery/label');
  expect(one.text.match(/class="row ruled-row item-row"/g)).toHaveLength(14);
});

test('guests by dishes end in words; who has not answered is asked', async () => {
  const { text } = await agent.get(at);
  expect(rowOf(text, 'Gwen &lt;i&gt;')).toContain('No pudding');
  expect(rowOf(text, 'Gwen &lt;i&gt;')).toContain('<b>Lemon posset with shortbread</b>: no, because of');
  expect(rowOf(text, 'Priya')).toContain('Starter only with a may contain');
  expect(rowOf(text, '2 pescatarian')).toContain('Starter not known');
  expect(rowOf(text, 'Oskar Venn')).toContain('Ask today');
  expect(rowOf(text, '1 guest')).toContain('Ask today');
});

test('for the table it is words alone, and what nobody has read is not checked', async () => {
  const { text } = await agent.get(`${at}/table`);
  const pate = text.slice(text.indexOf('<h3>Smoked mackerel'), text.indexOf('<h3>Hummus'));
  expect(pate).toContain('<b>Contains:</b> cereals containing gluten (wheat), fish, soya and milk.');
  expect(pate).toContain('<b>Not checked: ask us.</b> crustaceans, eggs');
  const hummus = text.slice(text.indexOf('<h3>Hummus'), text.indexOf('<h3>Chicken'));
  expect(hummus).toContain(
    '<b>Not listed</b> on the labels of what is in it, in part by the cook’s word: gluten, crustaceans',
  );
  const paper = text.slice(text.indexOf('cut-cards'));
  expect(paper.match(/<article class="cut-card /g)).toHaveLength(7);
  expect(paper).not.toMatch(/class="cell|class="mark|£/);
});

test('the same answer as CSV and JSON', async () => {
  const { body } = await agent.get(`${at}.json`);
  expect(body.about.notKnown).toBe('10');
  expect(body.tables[0].rows[0].sesame).toBe('may contain; in part not known: treat as contains');
  expect((await agent.get(`${at}.csv`)).text).toContain('matrix,Starter,Smoked mackerel pâté with toast');
  expect((await agent.get('/events/no-such/allergens')).status).toBe(404);
});

test('another law’s list has its own columns', async () => {
  const kitchen = exampleKitchen();
  const us = await agentOn({ ...kitchen, kitchen: { ...kitchen.kitchen, allergenList: 'us' } });
  const { text } = await us.get(at);
  expect(signs(rowOf(text, 'Smoked mackerel'))).toHaveLength(9);
  expect(text).toContain('List in force: United States, 9.');
  await us.close();
});
