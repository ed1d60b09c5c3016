import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { exampleKitchen } from '../world.js';
import { type Agent, agentOn } from './agent.js';

const passphrase = 'lamp river onion brick';
const cookieOf = (response: { headers: Record<string, unknown> }): string =>
  String((response.headers['set-cookie'] as unknown as string[] | undefined)?.[0] ?? '').split(';')[0]!;

describe('beyond loopback', () => {
  let agent: Agent;
  beforeAll(async () => {
    agent = await agentOn(exampleKitchen(), { host: '0.0.0.0', loopback: false });
  });
  afterAll(() => agent.close());

  test('nothing but health and the doors is open, and the first account needs the code', async () => {
    for (const url of ['/menu', '/kitchen', '/workbook.json', '/find?q=a', '/nowhere'])
      expect((await agent.get(url)).headers.location).toBe('/account/first');
    expect((await agent.get('/health')).status).toBe(200);
    const wrong = await agent.post('/account/first', { name: 'Tamsin', passphrase, code: 'AAAA-BBBB-CCCC' });
    expect(wrong.status).toBe(422);
    expect(wrong.text).toContain('Enter the code that the workbook printed');
    expect(wrong.text).not.toContain(passphrase);
    const short = await agent.post('/account/first', {
      name: 'Tamsin',
      passphrase: 'short',
      code: agent.app.house.firstCode,
    });
    expect(short.text).toContain('at least 12 characters');
    const made = await agent.post('/account/first', {
      name: 'Tamsin',
      passphrase,
      code: agent.app.house.firstCode.toLowerCase(),
    });
    expect(made.status).toBe(303);
    expect((await agent.get('/kitchen').set('cookie', cookieOf(made))).text).toContain(
      'You are signed in as <b>Tamsin</b>',
    );
  });

  test('signing in says of neither name nor passphrase which was wrong, and takes as long', async () => {
    const answers = await Promise.all([
      agent.post('/account/sign-in', { name: 'Nobody', passphrase }),
      agent.post('/account/sign-in', { name: 'Tamsin', passphrase: 'not the passphrase' }),
    ]);
    const sentences = answers.map(({ text }) => /<p class="fault"[^>]*>([^<]*)/.exec(text)?.[1]);
    expect(answers.map(({ status }) => status)).toEqual([422, 422]);
    expect(sentences[0]).toBe('Name and passphrase do not belong together.');
    expect(sentences[1]).toBe(sentences[0]);
  });

  test('a session begins at signing in, is kept by its hash, and ends at signing out', async () => {
    const asked = await agent.get('/kitchen');
    expect(asked.headers.location).toBe('/account/sign-in?to=%2Fkitchen');
    const before = 'workbook=AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA';
    const entered = await agent
      .post('/account/sign-in', { name: ' tamsin', passphrase, to: '/kitchen' })
      .set('cookie', before);
    expect(entered.headers.location).toBe('/kitchen');
    const set = String((entered.headers['set-cookie'] as unknown as string[])[0]);
    expect(set).toMatch(/HttpOnly/);
    expect(set).toMatch(/SameSite=Lax/);
    expect(set).not.toMatch(/Secure/);
    const cookie = cookieOf(entered);
    expect(cookie).not.toBe(before);
    const rows = await agent.db.selectFrom('session').selectAll().execute();
    expect(JSON.stringify(rows)).not.toContain(cookie.slice('workbook='.length));
    const page = await agent.get('/kitchen').set('cookie', cookie);
    expect(page.status).toBe(200);
    expect(page.headers['set-cookie']).toBeUndefined();
    await agent.post('/account/sign-out').set('cookie', cookie);
    expect((await agent.get('/kitchen').set('cookie', cookie)).status).toBe(303);
  });

  test('it never leads to another site, and a part of a page asks in the notice line', async () => {
    for (const to of ['https://evil.example/', '//evil.example', '/\\evil.example']) {
      const entered = await agent.post('/account/sign-in', { name: 'Tamsin', passphrase, to });
      expect(entered.headers.location).toBe('/');
    }
    const part = await agent.post('/kitchen', { name: 'x' }).set('hx-request', 'true');
    expect(part.status).toBe(401);
    expect(part.headers['hx-retarget']).toBe('#notice');
    expect(part.text).toContain('What you typed stays on the page');
  });

  test('tries are counted', async () => {
    const tries = [];
    for (let i = 0; i < 12; i++)
      tries.push((await agent.post('/account/sign-in', { name: 'x', passphrase: 'y' })).status);
    expect(tries.at(-1)).toBe(429);
  });
});

describe('on loopback', () => {
  test('everybody is let in until somebody has an account', async () => {
    const agent = await agentOn(exampleKitchen());
    expect((await agent.get('/workbook.json')).status).toBe(200);
    const made = await agent.post('/account/first', { name: 'Owner', passphrase });
    expect(made.status).toBe(303);
    expect((await agent.get('/workbook.json')).status).toBe(303);
    expect((await agent.get('/workbook.json').set('cookie', cookieOf(made))).status).toBe(200);
    expect((await agent.post('/account/first', { name: 'Second', passphrase })).headers.location).toBe(
      '/account/sign-in',
    );
    await agent.close();
  });
});
