import { afterAll, beforeAll, expect, test } from 'vitest';
import { openDrafts, readDraft } from '../../../src/store/drafts.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';
import { jsonLd, plain, traybake } from './texts.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
});
afterAll(() => agent.close());

const idIn = (location: string): number => Number(/^\/recipes\/read\/(\d+)$/.exec(location)?.[1]);
const paste = (text: string) => agent.post('/recipes/read', { text });
const file = (text: string, filename = 'recipe.txt') =>
  agent.upload('/recipes/read', { name: 'file', filename, text });

test('the page asks for text or a file, and the recipes lead to it', async () => {
  const page = await agent.get('/recipes/read');
  expect(page.status).toBe(200);
  expect(page.text).toContain('enctype="multipart/form-data"');
  for (const from of ['/recipes', '/recipes/new'])
    expect((await agent.get(from)).text, from).toContain('href="/recipes/read"');
});

test('pasted text becomes a draft, which stands beside its source and is listed', async () => {
  const sent = await paste(traybake);
  expect(sent.status).toBe(303);
  const page = await agent.get(String(sent.headers.location));
  for (const words of [
    '700 g squash, peeled and cut into chunks',
    'This kitchen has no “sumac” yet.',
    'Serves 4',
  ])
    expect(page.text).toContain(words);
  const list = await agent.get('/recipes/read');
  expect(list.text).toContain('Drafts to confirm');
  expect(list.text).toContain('Chicken traybake');
  expect(list.text).toContain('Wed 14 Oct, 10:20');
});

test('a text file and a saved page are read as well, and both fields may come in one form', async () => {
  const text = await file(plain);
  expect(text.status).toBe(303);
  const page = `<html><head><script type="application/ld+json">${jsonLd({ name: 'Pea soup', lines: ['1 kg peas'] })}</script></head><body><p>Hello</p></body></html>`;
  const saved = await file(page, 'page.html');
  const draft = await readDraft(agent.db, idIn(String(saved.headers.location)));
  expect(draft?.read).toMatchObject({ name: 'Pea soup', source: 'json-ld' });
});

test('a file of an older program is read by its own letters', async () => {
  const bytes = Buffer.concat([
    Buffer.from([0xff, 0xfe]),
    Buffer.from(plain.replace('Garlic oil', 'Huile à l’ail'), 'utf16le'),
  ]);
  const sent = await agent.upload('/recipes/read', { name: 'file', filename: 'x.txt', text: bytes as never });
  expect((await readDraft(agent.db, idIn(String(sent.headers.location))))?.name).toBe('Huile à l’ail');
});

test('several recipes in one page all become drafts', async () => {
  const before = (await openDrafts(agent.db)).length;
  const sent = await paste(
    jsonLd({ name: 'One pot', lines: ['1 onion'] }, { name: 'Two pots', lines: ['2 onions'] }),
  );
  expect(sent.headers.location).toBe('/recipes/read?read=2#drafts');
  expect(await openDrafts(agent.db)).toHaveLength(before + 2);
  const page = await agent.get('/recipes/read?read=2');
  expect(page.text).toContain('Two recipes were found.');
});

test.each([
  ['', 'Paste a recipe, or choose a file'],
  ['Dear Anna, see you on Sunday.', 'No recipe was found.'],
])('%s is refused with a sentence, and what was typed stays', async (text, sentence) => {
  const sent = await paste(text);
  expect(sent.status).toBe(422);
  expect(sent.text).toContain(sentence);
  expect(sent.text).toContain(`${text}</textarea>`);
});

test.each([
  ['10 MB of text in the field', (text: string) => agent.app.inject(form('text', '', text))],
  ['10 MB in a file', (text: string) => agent.app.inject(form('file', 'x.html', text))],
  ['40 MB in a file', (text: string) => agent.app.inject(form('file', 'x.html', text.repeat(4)))],
])('%s is refused in a sentence, within two seconds', async (_, send) => {
  const started = performance.now();
  const answer = await send('2 x 400 g tins chickpeas, drained\n'.repeat(300_000));
  expect(performance.now() - started).toBeLessThan(2000);
  expect(answer.statusCode).toBe(422);
  expect(answer.body).toMatch(/larger than|more text than/);
  expect(answer.body.length).toBeLessThan(100_000);
});

const form = (name: string, filename: string, text: string) => {
  const boundary = 'a-line-between';
  const said = filename ? `; filename="${filename}"` : '';
  return {
    method: 'POST' as const,
    url: '/recipes/read',
    headers: {
      host: 'localhost',
      origin: 'http://localhost',
      accept: 'text/html',
      'content-type': `multipart/form-data; boundary=${boundary}`,
    },
    payload: `--${boundary}\r\nContent-Disposition: form-data; name="${name}"${said}\r\n\r\n${text}\r\n--${boundary}--\r\n`,
  };
};

test('what a text says stays text: no mark-up of it reaches the page', async () => {
  const sent = await paste(
    traybake
      .replace('Chicken traybake', '<script>alert(1)</script> & pie')
      .replace('sumac', '<img src=x onerror=alert(1)>'),
  );
  const page = await agent.get(String(sent.headers.location));
  expect(page.status).toBe(200);
  expect(page.text).not.toMatch(/<script>alert|<img/);
  expect((await agent.get('/recipes/read')).text).not.toMatch(/<script>alert/);
});

test('a draft is thrown away, and that can be taken back', async () => {
  const address = String((await paste(plain)).headers.location);
  const thrown = await agent.post(`${address}/throw`);
  expect(thrown.headers.location).toBe(`/recipes/read?thrown=${idIn(address)}`);
  const list = await agent.get(String(thrown.headers.location));
  expect(list.text).toContain('Threw away the draft of Garlic oil.');
  expect(list.text).not.toContain(`href="${address}"`);
  expect((await agent.get(address)).headers.location).toBe(thrown.headers.location);
  const back = await agent.post(`${address}/back`);
  expect(back.headers.location).toBe(address);
  expect((await agent.get(address)).status).toBe(200);
});

test('what is no draft is not found', async () => {
  for (const at of ['/recipes/read/999999', '/recipes/read/x', '/recipes/read/1e3'])
    expect((await agent.get(at)).status, at).toBe(404);
  for (const at of ['/recipes/read/999999', '/recipes/read/999999/throw', '/recipes/read/999999/back'])
    expect((await agent.post(at)).status, at).toBe(404);
});

test('a recipe with cups says whose they are, and keeps what the cook chose; one without is not asked', async () => {
  const lines =
    'Fudge\nServes 4\nIngredients\n1 US cup olive oil\n3 cloves garlic\nMethod\nSimmer for 20 minutes.';
  const american = String((await paste(lines)).headers.location);
  expect((await agent.get(american)).text).toMatch(/<option value="us" selected>US: cup 237 ml/);
  const bare = String((await paste(lines.replace('US ', ''))).headers.location);
  const page = await agent.get(bare);
  expect(page.text).toMatch(/<option value="" selected>the kitchen’s own: Metric: cup 250 ml/);
  const sent = { ...fieldsOf(page.text, bare), cup: 'australian' };
  const made = String((await agent.post(bare, sent)).headers.location);
  expect((await agent.get(made)).text).toContain('Australian: cup 250 ml, tablespoon 20 ml');
  const without = String((await paste(plain)).headers.location);
  expect((await agent.get(without)).text).not.toContain('<select name="cup"');
});
