import type { Test } from 'supertest';
import { read } from '../../../src/store/documents.js';
import type { Agent } from '../agent.js';

/** As htmx asks for a part of a page. */
export const asPart = (test: Test): Test => test.set('hx-request', 'true').set('hx-request-type', 'partial');

/** Every field of a page's forms with its value, as a browser would send them; later fields of a name join a list. */
export const fieldsOf = (page: string): Record<string, string | string[]> => {
  const form: Record<string, string | string[]> = {};
  const put = (name: string, value: string) => {
    const before = form[name];
    form[name] = before === undefined ? value : [before, value].flat();
  };
  for (const [field] of page.matchAll(/<input[^>]*>/g)) {
    const name = / name="([^"]*)"/.exec(field)?.[1];
    const boxed = /type="(checkbox|radio)"/.test(field);
    if (!name || name === 'q' || (boxed && !/ checked/.test(field))) continue;
    put(name, plain(/ value="([^"]*)"/.exec(field)?.[1] ?? ''));
  }
  for (const [, start = '', inside = ''] of page.matchAll(/<select([^>]*)>([\s\S]*?)<\/select>/g)) {
    const name = / name="([^"]*)"/.exec(start)?.[1] ?? '';
    const chosen = /value="([^"]*)" selected/.exec(inside) ?? /value="([^"]*)"/.exec(inside);
    put(name, plain(chosen?.[1] ?? ''));
  }
  for (const [, start = '', inside = ''] of page.matchAll(/<textarea([^>]*)>\n?([\s\S]*?)<\/textarea>/g))
    put(/ name="([^"]*)"/.exec(start)?.[1] ?? '', plain(inside));
  return form;
};

const plain = (markup: string): string =>
  markup
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&');

/** An event as it is kept. */
export const stored = async ({ db }: Agent, key: string) => (await read(db, 'event', key))?.doc;
