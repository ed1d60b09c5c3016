import request from 'supertest';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { read } from '../../../src/store/documents.js';
import { beginnings } from '../../arbitraries/photograph.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
});
afterAll(() => agent.close());

const page = '/ingredients/butter/label';
const at = `${page}/photograph`;
const jpeg = Buffer.concat([Buffer.from(beginnings['image/jpeg']), Buffer.alloc(200, 7)]);
const send = (bytes: Buffer, filename = 'label.jpg', taken = '12 Oct', url = at) =>
  request(agent.app.server)
    .post(url)
    .set('host', 'localhost')
    .set('origin', 'http://localhost')
    .set('accept', 'text/html')
    .field('taken', taken)
    .attach('photograph', bytes, { filename, contentType: 'text/html' });

test('a photograph is kept, shown as a picture and nothing else, and marks nothing', async () => {
  const before = (await read(agent.db, 'ingredient', 'butter'))!;
  const kept = await send(jpeg, '../<script>.html');
  expect([kept.status, kept.headers.location]).toEqual([303, `${page}?photograph=kept`]);
  const shown = await agent.get(at);
  expect(shown.status).toBe(200);
  expect(shown.headers['content-type']).toBe('image/jpeg');
  expect(shown.headers['x-content-type-options']).toBe('nosniff');
  expect(shown.headers['content-security-policy']).toBe("default-src 'none'; sandbox");
  expect(Buffer.from(shown.body).equals(jpeg)).toBe(true);
  expect((await agent.get(page)).text).toContain('Photographed on Mon 12 Oct 2026');
  expect((await read(agent.db, 'ingredient', 'butter'))!.doc).toEqual(before.doc);
});

test('it is taken out and brought back', async () => {
  expect((await agent.post(`${at}/out`)).status).toBe(303);
  expect((await agent.get(at)).status).toBe(404);
  expect((await agent.get(page)).text).toContain('was taken out');
  expect((await agent.post(`${at}/back`)).status).toBe(303);
  expect((await agent.get(at)).status).toBe(200);
});

test('what is no picture, too large, missing or of tomorrow is refused in words', async () => {
  const refused = async (bytes: Buffer, taken?: string) => {
    const { status, text } = await send(bytes, 'label.jpg', taken);
    expect(status).toBe(422);
    return text;
  };
  expect(await refused(Buffer.from('<svg onload=alert(1)>'))).toContain(
    'This is no JPEG, PNG or WebP picture',
  );
  expect(await refused(Buffer.concat([jpeg, Buffer.alloc(8 * 1024 * 1024)]))).toContain('larger than 8 MB');
  expect(await refused(Buffer.alloc(0))).toContain('Choose a photograph first');
  expect(await refused(jpeg, '20 Oct 2026')).toContain('Everything you typed is kept');
  expect((await send(jpeg, 'a.jpg', '12 Oct', '/ingredients/nowhere/label/photograph')).status).toBe(404);
  expect((await agent.get('/ingredients/nowhere/label/photograph')).status).toBe(404);
});

test('another brand makes it the photograph of the pack before', async () => {
  const packs = '/ingredients/butter/packs';
  expect((await agent.get(page)).text).not.toContain('shows the pack before');
  const form = fieldsOf((await agent.get(packs)).text);
  const asked = await agent.post(packs, { ...form, 'packs[0].brand': 'Low Barn' });
  expect((await agent.post(packs, { ...fieldsOf(asked.text), relabel: 'forget' })).status).toBe(303);
  expect((await agent.get(page)).text).toContain('It shows the pack before, not the one you buy now');
  expect((await agent.get('/ingredients/butter')).text).toContain('Photograph of the pack before');
});
