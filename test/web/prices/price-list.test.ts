import request from 'supertest';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';

let agent: Agent;
beforeAll(async () => {
  const kitchen = exampleKitchen();
  // Paid before the day these tests play on, so that a later price takes its place.
  for (const { packs } of kitchen.ingredients.filter(({ key }) => key === 'leek'))
    for (const { prices } of packs) for (const price of prices) price.date = '2026-08-01';
  agent = await agentOn(kitchen);
});
afterAll(() => agent.close());

const head = 'Code,Description,Pack size,Price,Valid from';
const send = (text: string, fields: Record<string, string> = {}) =>
  agent.post('/ingredients/prices', { supplier: 'Harbour Foods', date: '12 Oct 2026', text, ...fields });

/** Sends a list, takes its columns as guessed, and gives the address of what it changes. */
const looked = async (text: string): Promise<string> => {
  const sent = await send(text);
  expect(sent.status).toBe(303);
  const to = sent.headers.location!;
  if (!to.endsWith('/columns')) return to;
  const columns = await agent.get(to);
  const saved = await agent.post(to, fieldsOf(columns.text, to));
  expect(saved.status).toBe(303);
  return saved.headers.location!;
};

const file = async () => JSON.parse((await agent.get('/workbook.json')).text);
const leek = async () => (await file()).ingredients.find((one: { key: string }) => one.key === 'leek');

test('columns are chosen once, what changes is shown first, one Undo takes all of it back', async () => {
  const before = (await agent.get('/workbook.json')).text;
  const address = await looked(
    `${head}\r\nL1,Leek,7 kg,£9.40,12/10/2026\r\nX9,"<script>alert(1)</script>",1 kg,2.00,\r\n`,
  );
  const page = await agent.get(address);
  expect(page.status).toBe(200);
  expect(page.text).toContain('Take over 1 price');
  expect(page.text).toContain('a new pack, matched by its name');
  expect(page.text).toContain('Moves no recipe’s cost.');
  expect(page.text).toContain('&lt;script&gt;');
  expect(page.text).not.toContain('<script>alert');
  expect(await leek()).toEqual(
    JSON.parse(before).ingredients.find((one: { key: string }) => one.key === 'leek'),
  );

  const taken = await agent.post(address, fieldsOf(page.text, address));
  expect(taken.status).toBe(303);
  expect((await leek()).packs.at(-1)).toMatchObject({
    supplier: 'Harbour Foods',
    code: 'L1',
    size: { amount: '7', unit: 'kg' },
    prices: [{ date: '2026-10-12', price: 940 }],
  });
  const receipt = await agent.get(taken.headers.location!);
  expect(receipt.text).toContain('Saved 1 ingredient together.');
  const [, undo = ''] = /action="(\/undo\/together\/\d+)"/.exec(receipt.text)!;
  expect((await agent.post(undo)).status).toBe(303);
  expect((await leek()).packs).toEqual(
    JSON.parse(before).ingredients.find((one: { key: string }) => one.key === 'leek').packs,
  );
  expect((await agent.get(address)).status).toBe(404);
});

test('next month the list matches by its code, whatever its name and the order of its columns', async () => {
  const first = await looked(`${head}\r\nL1,Leek,7 kg,9.40,12/10/2026\r\n`);
  await agent.post(first, fieldsOf((await agent.get(first)).text, first));
  const sent = await send(
    'Price;Description;Code;Pack size;Valid from\n10.20;LEEKS LONG;L1;7 kg;13/10/2026\n',
  );
  expect(sent.headers.location).not.toContain('/columns');
  const page = await agent.get(sent.headers.location!);
  expect(page.text).toContain('£10.20');
  expect(page.text).toContain('£9.40');
  expect(page.text).toContain('+8.5%');
});

test('an older price goes into the history and does not stand', async () => {
  const address = await looked(`${head}\r\nL1,Leek,7 kg,8.00,1/9/2026\r\n`);
  const page = await agent.get(address);
  expect(page.text).toContain('goes into the history; a later price stands');
  await agent.post(address, fieldsOf(page.text, address));
  expect((await leek()).packs.at(-1).prices.map(({ price }: { price: number }) => price)).toEqual([940, 800]);
  const again = await agent.get(await looked(`${head}\r\nL1,Leek,7 kg,8.00,1/9/2026\r\n`));
  expect(again.text).toContain('no new price');
});

test('what changed between looking and taking over is seen, and nothing is taken over', async () => {
  const [one, two] = [
    await looked(`${head}\r\nL1,Leek,7 kg,11,14/10/2026\r\n`),
    await looked(`${head}\r\nL1,Leek,7 kg,12,14/10/2026\r\n`),
  ];
  const [first, second] = [await agent.get(one), await agent.get(two)];
  expect((await agent.post(two, fieldsOf(second.text, two))).status).toBe(303);
  const late = await agent.post(one, fieldsOf(first.text, one));
  expect(late.status).toBe(409);
  expect(late.text).toContain('Nothing was taken over.');
  expect((await leek()).packs.at(-1).prices.at(-1).price).toBe(1200);
});

test('an unmatched row is matched, made new or left out, and remembered', async () => {
  const list = `${head}\r\nZ1,Sea buckthorn juice,1 l,6.50,\r\nZ2,Baby leek trimmed,1 kg,5,\r\nZ3,Paper towels,12,9,\r\nZ4,Blue roll,6 each,9,\r\n`;
  const address = await looked(list);
  const page = await agent.get(address);
  expect(page.text).toContain('It is Leek');
  expect(page.text).toContain('says no unit');
  const form = fieldsOf(page.text, `${address}/rows`);
  const at = (id: string) =>
    Object.entries(form)
      .find(([, value]) => value === id)![0]
      .replace('.id', '');
  const lost = await agent.post(`${address}/rows`, {
    ...form,
    [`${at('Z1')}.to`]: 'named',
    [`${at('Z2')}.to`]: 'out',
  });
  expect(lost.status).toBe(422);
  expect(lost.text).toContain('There is no ingredient Sea buckthorn juice.');
  expect(lost.text).toMatch(/value="out" selected/);
  const chosen = { [`${at('Z1')}.to`]: 'new', [`${at('Z2')}.to`]: 'k:leek', [`${at('Z4')}.to`]: 'out' };
  expect((await agent.post(`${address}/rows`, { ...form, ...chosen })).status).toBe(303);
  const ready = await agent.get(address);
  await agent.post(address, fieldsOf(ready.text, address));
  const { kitchen, ingredients } = await file();
  expect(kitchen.priceLists[0].leftOut).toEqual(['Z4']);
  expect(ingredients.find((one: { name: string }) => one.name === 'Sea buckthorn juice').packs[0].code).toBe(
    'Z1',
  );
  expect((await leek()).packs.at(-1).code).toBe('Z2');
  const next = await agent.get(await looked(list.replace('6.50', '6.90')));
  expect(next.text).toContain('Every row is matched, left out or refused');
});

test('what can’t be read is said, and what was typed stays', async () => {
  const empty = await send('', { supplier: '' });
  expect(empty.status).toBe(422);
  expect(empty.text).toContain('Enter whose price list this is.');
  const broken = await send('a,b\n"c,d');
  expect(broken.status).toBe(422);
  expect(broken.text).toContain('is never closed');
  expect(broken.text).toContain('&quot;c,d');
  expect((await send('a\0b')).text).toContain('This is no text.');
  expect((await send('x\n'.repeat(50_002))).text).toContain('This has more than 50 000 rows.');
  expect((await agent.get('/ingredients/prices/nosuch')).status).toBe(404);
  expect((await agent.post('/ingredients/prices/nosuch', {})).status).toBe(404);
});

test('a file in Latin-1 with commas before its pennies; signs that can be read both ways are asked about', async () => {
  const bytes = Buffer.from(
    'Bezeichnung;Preis;Pack size\r\nCrème fraîche;1.234,50;5 kg\r\nMehl;"12,00";25 kg\r\n',
    'latin1',
  );
  const sent = await request(agent.app.server)
    .post('/ingredients/prices')
    .set({ host: 'localhost', origin: 'http://localhost', accept: 'text/html' })
    .field('supplier', 'Alpen')
    .field('date', '1 Oct 2026')
    .attach('file', bytes, { filename: 'prices.csv', contentType: 'text/csv' });
  const to = sent.headers.location!;
  const columns = await agent.get(to);
  expect(columns.text).toContain('Crème fraîche');
  expect(columns.text).toContain('Its letters are Latin-1.');
  const saved = await agent.post(to, fieldsOf(columns.text, to));
  expect((await agent.get(saved.headers.location!)).text).toContain('£1,234.50');

  const both = (await send('Name,Price,Unit\nSalt,"1,234",kg\n', { supplier: 'Third' })).headers.location!;
  const asked = await agent.post(both, fieldsOf((await agent.get(both)).text, both));
  expect(asked.status).toBe(422);
  expect(asked.text).toContain('the figures can be read both ways');
});

test('every row can be had as CSV, with nothing in it that a spreadsheet runs', async () => {
  const address = await looked(`${head}\r\nF1,"=HYPERLINK(""x"")",1 kg,2,\r\nF2,Leek,7 kg,0,\r\n`);
  const { text, headers } = await agent.get(`${address}/rows.csv`);
  expect(headers['content-type']).toContain('text/csv');
  expect(text).toContain(`"'=HYPERLINK(""x"")"`.replace(/^"|"$/g, ''));
  expect(text).toContain('3,refused,Leek');
});

test('which recipes cost something else is said before anything is taken over', async () => {
  const { packs } = await leek();
  const used = packs.find(({ preferred }: { preferred: boolean }) => preferred);
  const { amount, unit } = used.size;
  const rows = `Description,Pack size,Price\r\nLeek,${amount} ${unit},99.00\r\n`;
  const sent = await send(rows, { supplier: used.supplier, date: '14 Oct 2026' });
  const to = sent.headers.location!;
  const saved = await agent.post(to, fieldsOf((await agent.get(to)).text, to));
  const page = await agent.get(saved.headers.location!);
  expect(page.text).toMatch(/Moves \d+ recipes?; most: .+ → .+ a portion\./);
});
