import { afterAll, beforeAll, expect, test } from 'vitest';
import { read } from '../../../src/store/documents.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';

const page = '/events/birthday-tea/costing/what-if';
const asking = (fields: Record<string, string>) =>
  `${page}?${new URLSearchParams(Object.entries(fields).map(([name, value]): [string, string] => [`if${name}`, value]))}`;
const script = '<script>alert(1)</script>';

let agent: Agent;
beforeAll(async () => {
  const kitchen = exampleKitchen();
  kitchen.ingredients.find(({ key }) => key === 'leek')!.name = `Leek ${script}`;
  agent = await agentOn(kitchen);
});
afterAll(() => agent.close());

const event = async () => (await read(agent.db, 'event', 'birthday-tea'))!;
/** What the row of a label says in each column, in the first view or the second. */
const cells = (text: string, label: string, view = 0): string[] => {
  const row = text.split(`<th scope="row">${label}</th>`)[view + 1]!.split('</tr>')[0]!;
  return [...row.matchAll(/<td class="number[^"]*">([^<]*)/g)].map(([, cell]) => cell!);
};

test('asked nothing it shows the form alone', async () => {
  const { text, status } = await agent.get(page);
  expect(status).toBe(200);
  expect(text).toContain('Work it out');
  expect(text).not.toContain('class="what-ifs');
});

test('up to three stand beside what is, in both views, and nothing is stored', async () => {
  const before = await event();
  const { text, status } = await agent.get(
    asking({
      '[0].guests': '41',
      '[1].ingredient': 'topside-of-beef',
      '[1].percent': '8 %',
      '[2].without': 'tea/hummus',
      '[2].dish': 'tea/beef-rolls',
      '[2].portion': '120 g',
    }),
  );
  expect(status).toBe(200);
  expect(text).toContain('41 guests</th>');
  expect(text).toContain('Topside of beef 8% dearer</th>');
  expect(text).toContain('without Hummus with carrot sticks; Beef and horseradish rolls at 120 g</th>');
  expect(cells(text, 'Guests')).toEqual(['38', '41', '38', '38']);
  for (const [view, address] of ['', '?view=bought'].entries()) {
    const costing = (await agent.get(`/events/birthday-tea/costing${address}`)).text;
    const [aGuest] = cells(text, 'A guest costs', view);
    const [margin] = cells(text, 'Margin', view);
    expect(aGuest).toMatch(/^£\d+\.\d\d$/);
    expect(costing).toContain(`<b class="figure">${aGuest}</b>`);
    expect(costing).toContain(`<b>${margin}</b> of price`);
  }
  expect(await event()).toEqual(before);
});

test('a name of markup is text', async () => {
  const { text } = await agent.get(asking({ '[0].ingredient': 'leek', '[0].percent': '-5' }));
  expect(text).not.toContain(script);
  expect(text).toContain('Leek &lt;script&gt;alert(1)&lt;/script&gt; 5% cheaper');
});

test('what cannot be read is answered with 422, kept as typed, and the other columns stand', async () => {
  const { text, status } = await agent.get(
    asking({ '[0].guests': 'many', '[1].percent': '8', '[2].guests': '50', '[2].without': 'tea/nothing' }),
  );
  expect(status).toBe(422);
  expect(text).toContain('value="many"');
  expect(text).toContain('Enter the number of guests in figures');
  expect(text).toContain('Choose the ingredient whose price changes.');
  expect(text).toContain('Choose one of those offered.');
  const one = await agent.get(asking({ '[0].guests': '0', '[1].guests': '52' }));
  expect(one.status).toBe(422);
  expect(cells(one.text, 'Guests')).toEqual(['38', '52']);
});

test.each([
  [{ '[0].ingredient': 'leek' }, 'Enter how much dearer in per cent'],
  [{ '[0].ingredient': 'leek', '[0].percent': '-120' }, 'must be between 0 and 100'],
  [{ '[0].dish': 'tea/hummus' }, 'Enter what a portion is then'],
  [{ '[0].portion': '150 g' }, 'Choose the dish whose portion changes.'],
  [{ '[0].dish': 'tea/hummus', '[0].portion': 'big' }, 'Enter an amount with its unit'],
])('half an answer asks for the other half: %j', async (fields, sentence) => {
  const { text, status } = await agent.get(asking(fields as Record<string, string>));
  expect(status).toBe(422);
  expect(text).toContain(sentence);
});

test('an event that is not there is not found; a field it does not know is refused', async () => {
  expect((await agent.get('/events/nobody/costing/what-if')).status).toBe(404);
  expect((await agent.get(`${page}?__proto__.x=1`)).status).toBe(400);
});

test('where a cost is not known it says what is missing', async () => {
  const known = await agent.get(asking({ '[0].guests': '41' }));
  expect(known.text).not.toContain('Not known yet');
  const { text } = await agent.get(asking({ '[0].dish': 'tea/leek-tartlets', '[0].portion': '150 g' }));
  expect(cells(text, 'Margin')[1]).toBe('not known');
  const said = text.split('<th scope="row">Not known yet</th>')[1]!.split('</tr>')[0]!;
  expect(said.split('</td>')[0]).not.toContain('<p>');
  expect(said).toMatch(/<p>[^<]{20,}<\/p>/);
});
