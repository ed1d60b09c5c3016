import { afterAll, beforeAll, expect, test } from 'vitest';
import { read } from '../../src/store/documents.js';
import { type Agent, agentOn } from './agent.js';
import { fieldsOf } from './forms.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn();
});
afterAll(() => agent.close());

const form = async () => fieldsOf((await agent.get('/kitchen')).text, '/kitchen');

const kitchen = async () => (await read(agent.db, 'kitchen', 'kitchen'))!.doc;

test('with no kitchen every page leads to the first run, which begins one and goes on', async () => {
  for (const url of ['/menu', '/kitchen', '/places']) {
    const { status, headers } = await agent.get(url);
    expect([status, headers.location]).toEqual([303, '/first-run']);
  }
  const first = await agent.get('/first-run');
  expect(first.text).toContain('An empty week');
  expect(first.text).toContain('Look round a sample weekend');
  const begun = await agent.post('/first-run', { do: 'kitchen' });
  expect([begun.status, begun.headers.location]).toEqual([303, '/kitchen']);
  expect((await kitchen()).name).toBe('Your kitchen');
  expect((await read(agent.db, 'place', 'home'))?.doc.kind).toBe('home');
  expect((await agent.get('/first-run')).headers.location).toBe('/');
});

test('the settings save with people and their hours, and leave a receipt that undoes them', async () => {
  const saved = await agent.post('/kitchen', {
    ...(await form()),
    name: 'Hob Lane Kitchen',
    'tax.name': 'VAT',
    'tax.rate': '20',
    scaleStep: '5 g',
    'people[0].name': 'Tamsin',
    'people[0].hourlyCost': '13.50',
    'people[0].hours.mon': '9 to 1pm, 14:00-18.30',
  });
  expect(saved.status).toBe(303);
  expect(saved.headers.location).toMatch(/^\/kitchen\?saved=\d+$/);
  const now = await kitchen();
  expect(now.name).toBe('Hob Lane Kitchen');
  expect(now.scaleStep).toBe('5');
  expect(now.tax).toEqual({ name: 'VAT', rate: '20', included: false, rounding: 'whole-nearest' });
  expect(now.people[0]).toMatchObject({
    key: 'p1',
    hourlyCost: 1350,
    hours: {
      mon: [
        { from: '09:00', to: '13:00' },
        { from: '14:00', to: '18:30' },
      ],
      tue: [],
    },
  });
  const page = await agent.get(saved.headers.location!);
  expect(page.text).toContain('Saved Hob Lane Kitchen.');
  const [, undo = ''] = /action="(\/undo\/\d+)"/.exec(page.text) ?? [];
  const undone = await agent.post(undo);
  expect(undone.headers.location).toMatch(/^\/kitchen\?undone&saved=\d+$/);
  expect((await agent.get(undone.headers.location!)).text).toContain('Took back the change of Your kitchen.');
  expect((await kitchen()).name).toBe('Your kitchen');
});

test('what can’t be read is named with what to type, and all that was typed stays', async () => {
  const typed = {
    ...(await form()),
    name: 'Kept <as> typed',
    currency: 'XQQ',
    'tax.name': 'VAT',
    'tax.rate': '200',
    'people[0].name': '',
    'people[0].hours.sat': 'all day',
  };
  const { status, text } = await agent.post('/kitchen', typed);
  expect(status).toBe(422);
  expect(text).toContain('value="Kept &lt;as&gt; typed"');
  expect(text).toContain('Three answers need you.');
  expect(text).toContain('<a href="#f-tax-rate">');
  expect(text).toContain('must be between 0 and 100. You entered 200. Did you mean 20?');
  expect(text).toContain('Enter who this is');
  expect(text).toContain('value="all day"');
  expect(text).toMatch(
    /id="f-people-0-hours-sat"[^>]*aria-invalid="true"[^>]*aria-describedby="f-people-0-hours-sat-fault"/,
  );
  const ruled = await agent.post('/kitchen', { ...(await form()), currency: 'XQQ' });
  expect(ruled.status).toBe(422);
  expect(ruled.text).toContain('&quot;XQQ&quot; is no currency code; type one such as GBP.');
});

test('rows are added and taken out by ordinary buttons, keeping what was typed', async () => {
  const added = await agent.post('/kitchen', {
    ...(await form()),
    'people[0].name': 'Joe',
    do: 'add:people',
  });
  expect(added.status).toBe(200);
  expect(added.text).toContain('name="people[0].name" autocomplete="off"');
  expect(added.text).toMatch(/value="Joe"/);
  expect(added.text).toMatch(/id="f-people-1-name"[^>]*data-focus autofocus/);
  const out = await agent.post('/kitchen', {
    ...(await form()),
    'people[0].name': 'Joe',
    'people[1].name': 'Ada',
    do: 'out:people:0',
  });
  expect(out.text).not.toContain('value="Joe"');
  expect(out.text).toContain('value="Ada"');
});

test('a form that is behind joins with what was saved since, and asks where both changed one place', async () => {
  const old = await form();
  expect((await agent.post('/kitchen', { ...old, locale: 'en-IE' })).status).toBe(303);
  const joined = await agent.post('/kitchen', { ...old, name: 'Joined' });
  expect(joined.headers.location).toMatch(/&merged=1$/);
  expect(await kitchen()).toMatchObject({ name: 'Joined', locale: 'en-IE' });

  const clash = await agent.post('/kitchen', { ...old, name: 'Mine' });
  expect(clash.status).toBe(409);
  expect(clash.text).toContain('choose one');
  expect(clash.text).not.toMatch(/type="radio"[^>]*checked/);
  const hidden = fieldsOf(clash.text, '/merge/kitchen/kitchen');
  const asked = await agent.post('/merge/kitchen/kitchen', hidden);
  expect(asked.status).toBe(409);
  const solved = await agent.post('/merge/kitchen/kitchen', { ...hidden, 'choices[0].take': 'yours' });
  expect(solved.status).toBe(303);
  expect(await kitchen()).toMatchObject({ name: 'Mine', locale: 'en-IE' });
});

test('the history tells what each save changed', async () => {
  const { text } = await agent.get('/history/kitchen/kitchen');
  expect(text).toContain('Changed by the owner');
  expect(text).toMatch(/<b>Name<\/b>: <span class="second">was Joined<\/span> <b>Mine<\/b>/);
  expect((await agent.get('/history/nothing/kitchen')).status).toBe(404);
});

test('a venue is added, changed and archived; its ovens read the kitchen’s degrees', async () => {
  const added = await agent.post('/places/new', {
    name: 'Village hall',
    revision: '0',
    rings: '4',
    drive: '12',
    'access.from': '2pm',
    'access.to': '23:00',
    'ovens[0].name': 'Oven',
    'ovens[0].shelves': '2',
    'ovens[0].hottest': '428 F',
  });
  expect(added.headers.location).toMatch(/^\/places\/village-hall\?saved=\d+$/);
  const { doc } = (await read(agent.db, 'place', 'village-hall'))!;
  expect(doc).toMatchObject({
    kind: 'venue',
    rings: 4,
    drive: 12,
    access: { from: '14:00', to: '23:00' },
    ovens: [{ key: 'o1', name: 'Oven', shelves: 2, coolest: 50, hottest: 220 }],
  });
  expect((await agent.get('/places')).text).toContain('Village hall');
  const wrong = await agent.post('/places/village-hall', {
    revision: '1',
    name: 'Village hall',
    'access.from': '14:00',
  });
  expect(wrong.status).toBe(422);
  expect(wrong.text).toContain('Enter both times');
  const gone = await agent.post('/places/nowhere', { revision: '1', name: 'Nowhere' });
  expect(gone.status).toBe(404);
});

test('how long diets are kept: days, or empty for no end', async () => {
  await agent.post('/kitchen', { ...(await form()), dietsKeptDays: '30 days' });
  expect((await kitchen()).dietsKeptDays).toBe(30);
  expect((await form()).dietsKeptDays).toBe('30');
  const wrong = await agent.post('/kitchen', { ...(await form()), dietsKeptDays: 'a month' });
  expect([wrong.status, wrong.text.includes('value="a month"')]).toEqual([422, true]);
  await agent.post('/kitchen', { ...(await form()), dietsKeptDays: '' });
  expect((await kitchen()).dietsKeptDays).toBeNull();
});
