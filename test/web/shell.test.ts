import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../world.js';
import { type Agent, agentOn } from './agent.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
});
afterAll(() => agent.close());

test('health says which engine answers, at which step, and that it is ready', async () => {
  const { body, status } = await agent.get('/health');
  expect(status).toBe(200);
  expect(body).toEqual({
    engine: expect.stringMatching(/^(embedded|postgresql)$/),
    schemaVersion: expect.stringMatching(/^\d{4}-/),
    ready: true,
  });
});

test('every answer carries the whole policy and no inline script or style', async () => {
  const page = await agent.get('/menu');
  expect(page.headers['content-security-policy']).toBe(
    "default-src 'none';script-src 'self';style-src 'self';img-src 'self' data:;font-src 'self';connect-src 'self';form-action 'self';frame-ancestors 'none';base-uri 'none'",
  );
  expect(page.headers['x-content-type-options']).toBe('nosniff');
  expect(page.headers['referrer-policy']).toBe('same-origin');
  expect(page.headers['strict-transport-security']).toBeUndefined();
  expect(page.text).not.toMatch(/<style|style="|<script>|onclick=|hx-on/);
});

test('a name that is not allowed is refused before anything else', async () => {
  for (const url of ['/', '/health', '/nowhere']) {
    const { status, text } = await agent.get(url).set('host', 'evil.example');
    expect(status).toBe(403);
    expect(text).toContain('does not answer to the name &quot;evil.example&quot;');
  }
  for (const host of ['localhost:4680', '127.0.0.1:4680', '[::1]:4680'])
    expect((await agent.get('/health').set('host', host)).status).toBe(200);
  expect((await agent.get('/health').set('host', '10.0.0.9')).status).toBe(403);
});

test('only the workbook’s own pages change anything', async () => {
  const refused = [
    { origin: 'http://evil.example' },
    { origin: 'null' },
    { 'sec-fetch-site': 'cross-site', origin: 'http://localhost' },
    { 'sec-fetch-site': 'same-site' },
  ];
  for (const headers of refused) {
    const post = agent.post('/undo/1').unset('origin').set(headers);
    expect((await post).status).toBe(403);
  }
  expect((await agent.post('/undo/1').unset('origin')).status).toBe(403);
  expect((await agent.post('/nowhere')).status).toBe(404);
  expect((await agent.post('/nowhere').unset('origin').set('sec-fetch-site', 'same-origin')).status).toBe(
    404,
  );
});

test('errors are whole pages, and to htmx a line above the page', async () => {
  const whole = await agent.get('/nowhere');
  expect(whole.status).toBe(404);
  expect(whole.text).toContain('<!doctype html>');
  expect(whole.text).toContain('Nothing at this address');
  const line = await agent.get('/nowhere').set('hx-request', 'true').set('hx-request-type', 'partial');
  expect(line.status).toBe(404);
  expect(line.text).not.toContain('<!doctype');
  expect(line.headers['hx-retarget']).toBe('#notice');
  expect(line.headers.vary).toContain('HX-Request');
});

test('a form larger than two megabytes is refused in plain words', async () => {
  const { status, text } = await agent.post('/undo/1', { note: 'x'.repeat(3 * 1024 * 1024) });
  expect(status).toBe(413);
  expect(text).toContain('larger than the workbook takes');
});

test('assets are kept for ever under one hash', async () => {
  const { text } = await agent.get('/menu');
  const [css = ''] = /\/assets\/[0-9a-f]{16}\/fonts\.css/.exec(text) ?? [];
  const asset = await agent.get(css);
  expect(asset.headers['cache-control']).toBe('public, max-age=31536000, immutable');
  expect(asset.headers['content-type']).toBe('text/css; charset=utf-8');
  const fonts = asset.text.match(/url\("[a-z-]+\.woff2"\)/g) ?? [];
  expect(fonts).toHaveLength(4);
  for (const font of fonts)
    expect((await agent.get(css.replace('fonts.css', font.slice(5, -2)))).status).toBe(200);
  expect((await agent.get(css.replace('fonts.css', 'nothing.css'))).status).toBe(404);
});

test('a database that is lost gives 503 and says nothing was saved', async () => {
  const lost = await agentOn(exampleKitchen());
  await lost.db.destroy();
  const page = await lost.get('/menu');
  expect(page.status).toBe(503);
  expect(page.headers['retry-after']).toBe('5');
  expect(page.text).toContain('Nothing was saved just now');
  expect((await lost.get('/health')).body.ready).toBe(false);
  await lost.app.close();
});
