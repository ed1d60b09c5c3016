import { type Offer, offer as offerType } from '../../core/facts/quote.js';
import type { Reading } from '../faults.js';

/** Refuses what is longer, or more, than can be kept. */
export const fitting = (reading: Reading, offer: Offer, stood: Offer): Offer => {
  const parsed = offerType.safeParse(offer);
  if (parsed.success) return parsed.data;
  for (const { path, code, ...issue } of parsed.error.issues) {
    const most = code === 'too_big' && 'maximum' in issue ? ` It takes at most ${issue.maximum}.` : '';
    reading.refuse(fieldAt(path), labelAt(path), `This is more than can be kept here.${most}`);
  }
  return stood;
};

/** "terms/included" is the field "included", a dish of a menu the menu's. */
const fieldAt = (path: readonly PropertyKey[]): string => {
  const [first, ...rest] = path[0] === 'terms' ? path.slice(1) : path;
  const menu = rest.indexOf('menu');
  const shown = menu < 0 ? rest : rest.slice(0, menu + 1);
  return [first, ...shown]
    .map((step, i) => (typeof step === 'number' ? `[${step}]` : i === 0 ? String(step) : `.${String(step)}`))
    .join('');
};

const labelAt = (path: readonly PropertyKey[]): string => {
  const last = String(path.findLast((step) => typeof step === 'string') ?? '');
  return last.charAt(0).toUpperCase() + last.slice(1);
};
