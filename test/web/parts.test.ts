import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import type { Sheet } from '../../src/core/sheets/sheet.js';
import { formOf } from '../../src/web/answer.js';
import { csvOf } from '../../src/web/csv.js';
import { fieldOf, labelOf } from '../../src/web/faults.js';
import { Fields } from '../../src/web/fields.js';
import type { Form } from '../../src/web/form.js';
import { html, print } from '../../src/web/html.js';
import { keyFrom, nextKey } from '../../src/web/keys.js';
import { mark } from '../../src/web/marks.js';
import { rowsChanged, withKeys } from '../../src/web/rows.js';

test('markup passes as it is and everything else is escaped', () => {
  expect(html`<b>${'<i> & "'}</b>${html`<i>x</i>`}${[1, html`<br>`]}${null}${undefined}${false}`.markup).toBe(
    '<b>&lt;i&gt; &amp; &quot;</b><i>x</i>1<br>',
  );
  expect(print(0)).toBe('0');
  expect(mark({ letter: '<', fill: 'solid' }, 'A & B').markup).toBe(
    '<span class="mark solid">&lt;<span class="hid"> A &amp; B</span></span>',
  );
  expect(mark(undefined).markup).toBe('');
});

test('a field keeps what was typed, and a refused one says what to do where it stands', () => {
  const fields = new Fields({ lines: [{ amount: '7"20' }] }, [
    { field: 'lines[0].amount', label: 'Line 1, quantity', sentence: 'Did you mean <72>?' },
  ]);
  const { markup } = fields.text({ name: 'lines[0].amount', label: 'Quantity' });
  expect(markup).toContain('value="7&quot;20"');
  expect(markup).toContain('aria-invalid="true" aria-describedby="f-lines-0-amount-fault"');
  expect(markup).toContain('<p class="fault" id="f-lines-0-amount-fault">Did you mean &lt;72&gt;?</p>');
  expect(markup).toContain('fix this');
  expect([fields.anyFault('lines[0]'), fields.anyFault('lines'), fields.anyFault('line')]).toEqual([
    true,
    true,
    false,
  ]);
});

describe('a refusal of the rules finds its field', () => {
  const form: Form = {
    lines: [
      { key: 'l1', amount: '1' },
      { key: 'l7', amount: '', size: '2 kg' },
    ],
    tax: { rate: '' },
  };
  test.each([
    ['lines/l7/amount', 'lines[1].amount', 'Line 2, amount'],
    ['lines/l7/size/unit', 'lines[1].size', 'Line 2, size'],
    ['tax/rate', 'tax.rate', 'Tax, rate'],
    ['timeZone', 'timeZone', 'Time zone'],
  ])('%s', (path, name, label) => {
    expect(fieldOf(path, form)).toBe(name);
    expect(labelOf(name)).toBe(label);
  });
});

test('keys are readable and free', () => {
  expect(keyFrom('Café crème (large)')).toBe('cafe-creme-large');
  expect([keyFrom('???'), keyFrom('New')]).toEqual(['one', 'new-2']);
  expect(keyFrom('Leek', (key) => ['leek', 'leek-2'].includes(key))).toBe('leek-3');
  expect(nextKey('l', ['l1', 'l9', 'x4', 'l2b'])).toBe('l10');
});

test('rows are added, taken out and moved, and know where to go on', () => {
  const form = () => ({ lines: [{ key: 'a' }, { key: 'b' }, { key: 'c' }] });
  const after = (what: string) => {
    const changed = rowsChanged({ ...form(), do: what });
    return changed && [(changed.form.lines as { key?: string }[]).map(({ key }) => key), changed.at];
  };
  expect(after('add:lines')).toEqual([['a', 'b', 'c', undefined], 'lines[3]']);
  expect(after('out:lines:1')).toEqual([['a', 'c'], 'lines[1]']);
  expect(after('up:lines:2')).toEqual([['a', 'c', 'b'], 'lines[1]']);
  expect(after('up:lines:0')).toEqual([['a', 'b', 'c'], 'lines[0]']);
  expect(after('down:lines:0')).toEqual([['b', 'a', 'c'], 'lines[1]']);
  expect(after('down:lines:2')).toEqual([['a', 'b', 'c'], 'lines[2]']);
  expect([after(''), after('add:__proto__'), after('save')]).toEqual([undefined, undefined, undefined]);
  const keyed = withKeys({ lines: [{ key: 'l2' }, {}, { key: '' }] }, 'lines', 'l');
  expect(keyed.map(({ key }) => key)).toEqual(['l2', 'l3', 'l4']);
});

const sheet: Sheet = {
  sheet: 'prep',
  title: 'Prep',
  about: {},
  tables: [
    {
      name: 'jobs',
      title: 'Jobs',
      columns: [
        { key: 'quantity', label: 'Quantity', unit: 'g' },
        { key: 'job', label: 'Job' },
      ],
      rows: [
        { quantity: '740', job: '=SUM(A1)' },
        { quantity: '-3.5', job: 'a "b", c' },
        { quantity: '', job: '@x' },
      ],
    },
  ],
  problems: [
    {
      weight: 'ask',
      code: 'no-price',
      sentence: 'No price for saffron.',
      subject: { entity: 'ingredient', key: 'saffron', name: 'Saffron' },
    },
  ],
  foot: ['Whole pieces are rounded up once.'],
};

test('a sheet as CSV holds its figures, what is open and the notes, and no formula', () => {
  const csv = csvOf(sheet);
  expect(csv).toMatch(/\r\n$/);
  expect(parse(csv)).toEqual([
    ['table', 'Quantity (g)', 'Job', 'note'],
    ['jobs', '740', "'=SUM(A1)", ''],
    ['jobs', '-3.5', 'a "b", c', ''],
    ['jobs', '', "'@x", ''],
    ['to settle', '', '', 'No price for saffron.'],
    ['notes', '', '', 'Whole pieces are rounded up once.'],
  ]);
});

test('a sheet answers as its ending says, else as the reader accepts', () => {
  const asked = (url: string, accept?: string) => formOf({ url, headers: { accept } });
  expect(asked('/prep.csv', 'text/html')).toBe('csv');
  expect(asked('/prep.json?day=1', 'text/html')).toBe('json');
  expect(asked('/prep')).toBe('page');
  expect(asked('/prep', 'application/json')).toBe('json');
  expect(asked('/prep', 'text/csv')).toBe('csv');
  expect(asked('/prep', 'text/html,application/json')).toBe('page');
});
