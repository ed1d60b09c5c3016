import type { Mark } from '../core/marks.js';
import type { Weight } from '../core/problem.js';
import { type Html, html, nothing, type Printable } from './html.js';

/** An event's letter in its box; `name` is what a screen reader says with it. Nothing for an event without one. */
export const mark = (drawn: Mark | undefined, name = ''): Html => {
  if (!drawn) return nothing;
  const { letter, fill } = drawn;
  return html`<span class="mark ${fill}">${letter}${name && html`<span class="hid"> ${name}</span>`}</span>`;
};

/** A strip of tape: use by, made on. */
export const tape = (words: string): Html => html`<span class="tape">${words}</span>`;

/** A strip of tape with a day in capitals. */
export const dayTape = (words: string): Html => html`<span class="tape day">${words}</span>`;

export type Warning = Weight | 'changed' | 'not-saved' | 'new' | 'new-ask';

const warnings: Record<Warning, string> = {
  stop: 'Stop',
  ask: 'Ask',
  check: 'Check',
  changed: 'Changed',
  'not-saved': 'Not saved',
  new: 'New',
  'new-ask': 'New',
};

/** A warning word: Stop, Ask, Check, Changed, Not saved or New. */
export const warning = (kind: Warning): Html => html`<span class="warning ${kind}">${warnings[kind]}</span>`;

export type AllergenCell = 'contains' | 'may' | 'free' | 'unknown';
/** word: free, and of some of what is in it not by a label but in the cook's word. */
export type AllergenSign = AllergenCell | 'word';

const cells: Record<AllergenSign, { sign: string; words: string }> = {
  contains: { sign: 'C', words: 'contains' },
  may: { sign: 'M', words: 'may contain' },
  free: { sign: '–', words: 'not listed' },
  word: { sign: '–*', words: 'not listed, in part by the cook’s word' },
  unknown: { sign: '?', words: 'not known: treat as contains' },
};

/** One cell of the allergen matrix, with the words a screen reader says. */
export const allergenCell = (state: AllergenSign): Html =>
  html`<span class="cell ${state}"><span aria-hidden="true">${cells[state].sign}</span><span class="hid">${cells[state].words}</span></span>`;

const legend: Record<AllergenSign, string> = {
  contains: 'contains',
  may: 'may contain',
  free: 'not listed, labels read',
  word: 'not listed, cook’s word too',
  unknown: 'not known: treat as contains',
};

/** The signs of the matrix and what they mean. */
export const allergenLegend = (): Html =>
  html`<p class="legend">${(Object.keys(cells) as AllergenSign[]).map(
    (state) =>
      html`<span><span class="cell ${state}" aria-hidden="true">${cells[state].sign}</span> ${legend[state]}</span> `,
  )}</p>`;

export const tick = html`<svg class="tick" viewBox="0 0 16 16" width="16" height="16" aria-hidden="true"><path d="M2 8.6 6 12.6 14 3.6"/></svg>`;

export type Coverage = 'can' | 'no' | 'may' | 'unknown';

/** Whether a guest can eat a dish: a tick, no, M or ?. */
export const coverageCell = (state: Coverage): Html => {
  if (state === 'can') return html`${tick}<span class="hid">can eat</span>`;
  if (state === 'no') return html`<b class="cannot">no</b>`;
  return state === 'may'
    ? allergenCell('may')
    : html`<span class="cell unknown"><span aria-hidden="true">?</span><span class="hid">not known</span></span>`;
};

const barWidth = 144;

/** A load bar: what is taken within what there is, on a scale shared by the page; more than there is is hatched. */
export const loadBar = (used: number, have: number, scale: number): Html => {
  const x = (hours: number) => Math.round((Math.max(0, hours) / (scale || 1)) * barWidth * 10) / 10;
  const over = used > have;
  return html`<svg class="load" width="${barWidth + 4}" height="20" viewBox="-2 0 ${barWidth + 4} 20" aria-hidden="true"><rect class="have" y="3" height="14" width="${x(have)}"/><rect class="used" y="3" height="14" width="${x(Math.min(used, have))}"/>${over ? html`<rect class="over" x="${x(have)}" y="1" height="18" width="${Math.max(7, x(used) - x(have))}"/>` : nothing}</svg>`;
};

export type Rung = 'cost' | 'sum' | 'margin' | 'loss';

/** One bar of a ladder that begins where the last one ended; `floor` draws the line not to go below. */
export const ladderBar = (from: number, to: number, scale: number, kind: Rung, floor?: number): Html => {
  const x = (value: number) => Math.round((value / (scale || 1)) * 6000) / 10;
  const line =
    floor === undefined ? nothing : html`<rect class="floor" x="${x(floor)}" y="0" width="2" height="28"/>`;
  return html`<svg class="ladder" viewBox="-2 0 604 28" preserveAspectRatio="none" aria-hidden="true"><rect class="${kind}" x="${x(from)}" y="5" height="18" width="${x(to) - x(from)}"/>${line}</svg>`;
};

/** A sentence with figures or names in bold: the parts alternate plain and bold. */
export const withBold = (...parts: Printable[]): Html =>
  html`${parts.map((part, i) => (i % 2 ? html`<b>${part}</b>` : part))}`;

/** First in a form, so that Enter in a field saves and does not press the first button there happens to be. */
export const defaultButton = html`<button class="hid" tabindex="-1" aria-hidden="true">Save</button>`;
