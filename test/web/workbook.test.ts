import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { workbookText } from '../../src/core/exchange/workbook.js';
import { exampleKitchen } from '../world.js';
import { type Agent, agentOn } from './agent.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
});
afterAll(() => agent.close());

const send = (text: string) => agent.upload('/workbook', { name: 'file', filename: 'workbook.json', text });

test('the file leaves as it is kept, and the schema tells what it may hold', async () => {
  const file = await agent.get('/workbook.json');
  expect(file.headers['content-type']).toBe('application/json; charset=utf-8');
  expect(file.text).toBe(workbookText(exampleKitchen()));
  const schema = await agent.get('/workbook.schema.json');
  expect(schema.headers['content-type']).toContain('application/schema+json');
  expect(JSON.parse(schema.text).$defs.workbook.properties.format.const).toBe('catering-workbook');
});

test('a file with faults changes nothing and names each with its place', async () => {
  const broken = { ...exampleKitchen(), version: 2, places: [] };
  const { status, text } = await send(JSON.stringify(broken));
  expect(status).toBe(422);
  expect(text).toContain('Nothing was changed.');
  expect(text).toContain('<b>version</b>');
  expect((await send('{"kitchen": ')).text).toContain('This is not JSON');
  expect((await send('')).text).toContain('Choose a workbook file first.');
  expect((await agent.get('/workbook.json')).text).toBe(workbookText(exampleKitchen()));
});

test('opening a file takes the place of the kitchen, after a backup of it', async () => {
  const other = exampleKitchen();
  other.kitchen.name = 'Another kitchen';
  const opened = await send(workbookText(other));
  expect(opened.status).toBe(303);
  const [, backup = ''] = /^\/workbook\?opened=(.+)$/.exec(opened.headers.location!) ?? [];
  const { dataDir } = agent.app.house.config;
  expect(readdirSync(join(dataDir, 'backups'))).toContain(backup);
  expect(readFileSync(join(dataDir, 'backups', backup), 'utf8')).toBe(workbookText(exampleKitchen()));
  const page = await agent.get(opened.headers.location!);
  expect(page.text).toContain(`backups/${backup}`);
  expect(page.text).toContain('Another kitchen');
});

test('a file is taken at its own address only', async () => {
  const { status } = await agent.upload('/kitchen', { name: 'name', filename: 'x.json', text: '{}' });
  expect(status).toBe(415);
});

test('the example goes out with one button, but for what is used', async () => {
  const removed = await agent.post('/example/remove');
  expect(removed.status).toBe(200);
  expect(removed.text).toContain('The example is out');
  const left = JSON.parse((await agent.get('/workbook.json')).text);
  expect(left.events).toEqual([]);
  expect(left.recipes).toEqual([]);
  expect(left.places.map((place: { kind: string }) => place.kind)).toEqual(['home']);
});
