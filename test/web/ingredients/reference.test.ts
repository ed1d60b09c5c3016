import { afterAll, beforeAll, expect, test } from 'vitest';
import { ingredient } from '../../../src/core/facts/ingredient.js';
import { read } from '../../../src/store/documents.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';

const script = '<script>alert(1)</script>';
let agent: Agent;
beforeAll(async () => {
  const kitchen = exampleKitchen();
  kitchen.ingredients.push(
    ingredient.parse({ key: 'broccoli', name: 'Broccoli', edibleYield: { yield: '0.61' } }),
    ingredient.parse({ key: 'stardust', name: 'Stardust' }),
  );
  agent = await agentOn(kitchen);
});
afterAll(() => agent.close());

type Sent = Record<string, string | string[]>;
const stored = async (key: string) => (await read(agent.db, 'ingredient', key))!.doc;
const plain = (html: string) => html.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');
const seen = async (key: string) => plain((await agent.get(`/ingredients/${key}`)).text);
const newForm = async (): Promise<Sent> => fieldsOf((await agent.get('/ingredients/new')).text);
const save = async (key: string, change: Sent) =>
  agent.post(`/ingredients/${key}/yield`, {
    ...fieldsOf((await agent.get(`/ingredients/${key}/yield`)).text),
    ...change,
  });
const take = async (key: string, what: string) =>
  agent.post(`/ingredients/${key}/reference`, {
    ...fieldsOf((await agent.get(`/ingredients/${key}`)).text, `/ingredients/${key}/reference`),
    take: what,
  });

test('the offer follows what is typed: slips and other Englishes too, with figures and source', async () => {
  const offered = async (name: string) =>
    (
      await agent
        .post('/ingredients/new/reference', { ...(await newForm()), name })
        .set({ 'hx-request': 'true', 'hx-request-type': 'partial' })
    ).text;
  expect(plain(await offered('zuchini'))).toMatch(/Courgette 95 % eaten; 196 g a piece; .*USDA 11477/);
  expect(await offered('plain flower')).toContain('value="flour-plain"');
  const nothing = await offered(script);
  expect(nothing).toContain('nothing of a like name');
  expect(nothing).not.toContain('<script>alert');
  expect(await offered('leek')).not.toContain('<!doctype');
});

test('choosing fills the yield and says what goes with it; what is typed over it is one’s own', async () => {
  const form: Sent = { ...(await newForm()), name: 'Leg of lamb', reference: 'lamb-leg' };
  const chosen = await agent.post('/ingredients/new/figures', form);
  expect(fieldsOf(chosen.text)).toMatchObject({ yield: '79 %', yieldSource: 'USDA SR28 17011, less bone' });
  expect(plain(chosen.text)).toContain('roasted: 58.4 % of the bought weight');
  const own = { ...fieldsOf(chosen.text), yield: '75' };
  expect((await agent.post('/ingredients/new', own)).status).toBe(303);
  expect(await stored('leg-of-lamb')).toMatchObject({
    edibleYield: { yield: '0.75', source: 'own figure, instead of USDA SR28 17011' },
    cookedYields: [{ name: 'roasted', yield: '0.584', from: 'bought' }],
  });
  expect(await seen('leg-of-lamb')).toMatch(
    /75% of what is bought is eaten yours; the USDA’s figure is 79% \(17011\) Take the USDA’s/,
  );
});

test('choosing none takes the figures out again; without script a choice counts when it is saved', async () => {
  const form: Sent = { ...(await newForm()), name: 'Couscous', reference: 'couscous', filled: 'couscous' };
  const none = await agent.post('/ingredients/new/figures', { ...form, yield: '60', reference: '' });
  expect(fieldsOf(none.text)).toMatchObject({ yield: '100 %', yieldSource: 'as weighed', filled: '' });
  expect((await agent.post('/ingredients/new', { ...form, filled: '' })).status).toBe(303);
  expect(await seen('couscous')).toContain('× 3.05 the prepared weight once steeped USDA SR28 20029');
});

test('where published sources disagree both stand on the page, and before it is chosen', async () => {
  expect(await seen('broccoli')).toContain(
    'Published sources disagree: 61% (USDA 11090) or 81% (other published figure, source not kept).',
  );
  expect(await seen('leek')).toContain('44% (USDA 11246) looks low for leeks bought trimmed');
  const offer = await agent.get('/ingredients/new?name=Broccoli');
  expect(plain(offer.text)).toContain('61 % eaten (elsewhere 81 %)');
});

test('a figure of one’s own says so, and one press takes it back', async () => {
  await save('onion', { 'edibleYield.yield': '80', 'weights[0].grams': '140' });
  const { edibleYield, weights } = await stored('onion');
  expect([edibleYield?.source, weights[0]?.source]).toEqual(
    Array(2).fill('own figure, instead of USDA SR28 11282'),
  );
  const said = await seen('onion');
  expect(said).toMatch(/80% of what is bought is eaten yours; the USDA’s figure is 90% \(11282\)/);
  expect(said).toMatch(/the part that is eaten yours; the USDA’s figure is 110 g \(11282\)/);
  const back = await take('onion', 'edibleYield');
  expect(back.headers.location).toMatch(/^\/ingredients\/onion\?saved=\d+#yield$/);
  expect((await stored('onion')).edibleYield).toMatchObject({
    yield: '0.9',
    source: expect.stringMatching(/^USDA SR28 11282/),
  });
  await take('onion', 'weights/each');
  expect(await seen('onion')).not.toContain('yours;');
});

test('what the reference has and the ingredient lacks is taken in one press', async () => {
  expect(await seen('onion')).toContain(
    'The reference also has for Onion: 0.6763 g a ml; 14 g a slice; boiled: 85.5 %',
  );
  await take('onion', 'lacking');
  expect(await stored('onion')).toMatchObject({
    density: { gramsPerMl: '0.6763' },
    cookedYields: [{ name: 'boiled', yield: '0.855', from: 'prepared' }],
  });
  expect(await seen('onion')).not.toContain('also has');
});

test('cooked yields are added by name, changed and taken out; what can’t be is said', async () => {
  const row = (name: string, share: string, from = 'bought', at = 0): Sent => ({
    [`cookedYields[${at}].name`]: name,
    [`cookedYields[${at}].yield`]: share,
    [`cookedYields[${at}].from`]: from,
    [`cookedYields[${at}].source`]: 'weighed',
  });
  const added = await save('pear', { do: 'add:cookedYields' });
  expect(fieldsOf(added.text)).toHaveProperty('cookedYields[0].name', '');
  const wrong = await save('pear', { ...row('poached', '0'), ...row('', '90', 'prepared', 1) });
  expect(wrong.status).toBe(422);
  expect(plain(wrong.text)).toContain('nothing is left of it once cooked');
  expect(plain(wrong.text)).toContain('Enter how it is cooked, such as roasted');
  expect(plain((await save('pear', row('poached', '720 %'))).text)).toContain('Did you mean 72?');
  const twice = await save('pear', { ...row('Poached', '90'), ...row('poached', '80', 'prepared', 1) });
  expect([twice.status, plain(twice.text).includes('The yield once poached stands twice')]).toEqual([
    422,
    true,
  ]);
  await save('pear', {
    ...row('poached', '90', 'prepared'),
    ...row('dried, swelling', '2.5', 'prepared', 1),
  });
  expect((await stored('pear')).cookedYields).toEqual([
    { name: 'poached', yield: '0.9', from: 'prepared', source: 'weighed' },
    { name: 'dried, swelling', yield: '2.5', from: 'prepared', source: 'weighed' },
  ]);
  await save('pear', row(script, '58.4'));
  const page = (await agent.get('/ingredients/pear')).text;
  expect(page).not.toContain('<script>alert');
  expect(plain(page)).toContain('with bone and trim in it, so trim is not taken off again');
  const out = await save('pear', { do: 'out:cookedYields:0' });
  expect((await agent.post('/ingredients/pear/yield', fieldsOf(out.text))).status).toBe(303);
  expect((await stored('pear')).cookedYields.map(({ name }) => name)).toEqual(['dried, swelling']);
});

test('the reference fills a whole form in one press, cooked yields too', async () => {
  const filled = await save('stardust', { do: 'fill:lamb-shoulder' });
  expect(fieldsOf(filled.text)).toMatchObject({
    'cookedYields[0].name': 'roasted',
    'cookedYields[0].yield': '58 %',
    'cookedYields[0].from': 'bought',
    'cookedYields[1].yield': '47 %',
  });
});

test('what is not there is not found, and a second press of an old page asks', async () => {
  for (const key of ['none', 'stardust'])
    expect((await agent.post(`/ingredients/${key}/reference`, { take: 'edibleYield' })).status).toBe(404);
  await save('broccoli', { 'edibleYield.yield': '70' });
  const old = fieldsOf((await agent.get('/ingredients/broccoli')).text, '/ingredients/broccoli/reference');
  await save('broccoli', { 'edibleYield.yield': '75' });
  expect((await agent.post('/ingredients/broccoli/reference', { ...old, take: 'edibleYield' })).status).toBe(
    409,
  );
});
