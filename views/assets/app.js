/* Everything here adds to pages that work without it. */

const fields = 'input, select, textarea, [contenteditable]';
const rowOf = (element) => element.closest('[data-row]');
const press = (scope, what) => scope?.querySelector(what)?.click();

/* Focus goes where the page says, else to where it came from. */

let opener;

const focusIn = (scope) => {
  const wanted = scope.matches?.('[data-focus]') ? scope : scope.querySelector('[data-focus]');
  const target = wanted ?? (opener && document.getElementById(opener));
  if (!target) return;
  opener = undefined;
  target.focus();
  if (target.matches('input')) target.select?.();
};

document.addEventListener('htmx:after:settle', ({ target }) => focusIn(target));
document.addEventListener('DOMContentLoaded', () => {
  focusIn(document);
  for (const hidden of document.querySelectorAll('[data-print][hidden]')) hidden.hidden = false;
});

/* A paper that was noted as printed opens the print dialog, once. */

window.addEventListener('load', () => {
  const fresh = performance.getEntriesByType('navigation')[0]?.type === 'navigate';
  if (fresh && document.querySelector('[data-print-now]')) window.print();
});

/* A pressed button says that it works. */

const busy = new Map();

const quiet = () => {
  for (const [button, label] of busy) button.textContent = label;
  busy.clear();
};

document.addEventListener('submit', ({ submitter }) => {
  if (!submitter?.matches('.primary') || busy.has(submitter)) return;
  busy.set(submitter, submitter.textContent);
  submitter.textContent = submitter.dataset.busy ?? 'Saving…';
});
document.addEventListener('htmx:finally:request', quiet);
window.addEventListener('pageshow', quiet);

/* Steppers, print buttons. */

document.addEventListener('click', ({ target }) => {
  if (target.closest('[data-print]')) window.print();
  const step = target.closest('[data-step]');
  if (!step) return;
  const field = step.parentElement.querySelector('input');
  const now = field.value.replace(',', '.');
  const places = now.split('.')[1]?.length ?? 0;
  const next = Math.max(0, (Number.parseFloat(now) || 0) + Number(step.dataset.step));
  field.value = next.toFixed(places);
  field.dispatchEvent(new Event('input', { bubbles: true }));
});

/* A box flips at once; one that could not be saved flips back and says so. */

const unsaved = ({ target }) => {
  const row = target.closest?.('[data-tick]')?.closest('li');
  if (!row) return;
  row.dataset.failed = '';
  document.getElementById('said').textContent = 'Not saved, tap again.';
};
for (const failing of ['htmx:error', 'htmx:response:error']) document.addEventListener(failing, unsaved);

/* Rows of a form: Enter settles one, goes on or adds one, Alt and an arrow moves one. */

const typed = 'input:not([type=hidden], [type=checkbox], [type=radio]), textarea';

/* The same field of the next row, or the first one of a row that is still empty. */
const fieldBelow = (row, field) => {
  const all = [...row.querySelectorAll(typed)];
  if (all.every(({ value }) => value === '')) return all[0];
  return row.querySelectorAll(fields)[[...rowOf(field).querySelectorAll(fields)].indexOf(field)];
};

const inRows = (event) => {
  const row = rowOf(event.target);
  if (!row) return false;
  if (event.altKey && event.key === 'ArrowUp') press(row, '[data-up]');
  else if (event.altKey && event.key === 'ArrowDown') press(row, '[data-down]');
  else if (event.key === 'Enter' && event.target.matches('input')) {
    const settle = row.querySelector('[data-confirm]');
    const next = row.nextElementSibling?.matches('[data-row]') ? row.nextElementSibling : undefined;
    if (settle) settle.click();
    else if (next) fieldBelow(next, event.target)?.focus();
    else press(row.closest('form'), `[data-add="${row.dataset.row}"]`);
  } else return false;
  return true;
};

/* Lists: arrows move. */

const inList = ({ key, target }) => {
  const list = target.closest('[data-list]');
  if (!list || !['ArrowUp', 'ArrowDown'].includes(key) || target.matches('input:not([type=checkbox])'))
    return false;
  const items = [...list.querySelectorAll('input[type=checkbox], [role=checkbox], a[data-item]')];
  const at = items.indexOf(target);
  const next = at < 0 ? undefined : items[at + (key === 'ArrowUp' ? -1 : 1)];
  next?.focus();
  return Boolean(next);
};

/* Escape closes what was opened and gives the focus back. */

const close = ({ key, target }) => {
  const panel = key === 'Escape' && target.closest('[data-panel]');
  if (!panel) return false;
  opener = panel.dataset.panel;
  press(panel, '[data-close]');
  return true;
};

/* Single letters, off in fields and by the kitchen's setting. */

const letters = {
  '/': () => document.getElementById('find').focus(),
  '?': () => window.location.assign('/keys'),
  n: () => press(document, '[data-key="n"]'),
  e: () => press(document, '[data-key="e"]'),
  p: () => {
    const button = document.querySelector('[data-key="p"]');
    if (button) button.click();
    else window.print();
  },
};

const letter = ({ key, target, ctrlKey, metaKey, altKey }) => {
  const off =
    ctrlKey || metaKey || altKey || target.matches(fields) || !('letterKeys' in document.body.dataset);
  if (off || !Object.hasOwn(letters, key)) return false;
  letters[key]();
  return true;
};

document.addEventListener('keydown', (event) => {
  if (event.isComposing || !(event.target instanceof Element)) return;
  if (inRows(event) || close(event) || inList(event) || letter(event)) event.preventDefault();
});
