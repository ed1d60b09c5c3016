import type { DishChange, GuestChange } from '../../core/guest-change.js';
import { headCount } from '../../core/requirements.js';
import type { EventSummary } from '../../core/sheets/event-summary.js';
import { type Format, formatFor } from '../format.js';
import type { Html } from '../html.js';
import { costShown, portionsPlain, sizeShown } from './dishes.js';

export type PreviewRow = {
  what: string;
  was: Html | string;
  now: Html | string;
  moves: boolean;
  why: string;
  loud: boolean;
};
export type GuestPreview = {
  was: number;
  now: number;
  /** Beside the number: how many more, and what that leaves open. */
  words: string;
  rows: PreviewRow[];
  cost: PreviewRow | undefined;
};

/** What other numbers of guests would change, as it is shown before it is saved; no rows when nothing changes. */
export const guestPreview = (change: GuestChange): GuestPreview => {
  const { before, after } = change;
  const f = formatFor(before.facts.kitchen);
  const was = headCount(before.event);
  const now = headCount(after.event);
  const moved = before.event.groups.some(({ guests }, i) => guests !== after.event.groups[i]?.guests);
  return {
    was,
    now,
    words: inWords(was, now, moved, f),
    rows: moved ? change.dishes.map((dish) => dishRow(dish, before, f)) : [],
    cost: moved && change.dishes.length > 0 ? costRow(change, f) : undefined,
  };
};

const inWords = (was: number, now: number, moved: boolean, f: Format): string => {
  if (!moved)
    return 'Type another number, and what it changes is shown here first. Nothing changes until you save.';
  if (now === was) return 'As many as held, in other groups. Nothing changes until you save.';
  if (now < was)
    return `${f.number(was - now)} fewer than held. Diets that were stated stay as they are. Nothing changes until you save.`;
  const more = now - was;
  const who = more === 1 ? 'the new guest' : `the ${f.number(more)} new guests`;
  return `${f.number(more)} more than held. Diets not yet known for ${who}. Nothing changes until you save.`;
};

const dishRow = (change: DishChange, { facts, event }: EventSummary, f: Format): PreviewRow => {
  const { before, after, overset } = change;
  const size = sizeShown(after.need.portion, facts.kitchen);
  const over = overset.map(
    ({ name, set, guests }) => `Set for ${f.number(set)} ${lower(name)}; there would be ${f.number(guests)}`,
  );
  const why = [
    ...over,
    over.length === 0 ? stays(change, event, f) : '',
    trays(change, f),
    more(change.more, f),
  ];
  return {
    what: size ? `${after.need.recipe.name}, ${size} each` : after.need.recipe.name,
    was: portionsPlain(before.need.portions, facts.kitchen),
    now: portionsPlain(after.need.portions, facts.kitchen),
    moves: !before.need.portions.equals(after.need.portions),
    why: capital(why.filter(Boolean).join('; ')),
    loud: over.length > 0,
  };
};

/** Says of a dish that is set by number that it does not follow. */
const stays = ({ after, setByNumber }: DishChange, { groups }: EventSummary['event'], f: Format): string => {
  const { eaters } = after.need.dish;
  if (!setByNumber || !('counts' in eaters)) return '';
  const named = eaters.counts.map(({ group, guests }) => {
    const name = groups.find(({ key }) => key === group)?.name ?? group;
    return groups.length > 1 ? `${f.number(guests)} ${lower(name)}` : f.number(guests);
  });
  return `Set by number, stays at ${f.list(named)}`;
};

const trays = ({ before, after }: DishChange, f: Format): string => {
  if (before.trays === undefined || after.trays === undefined) return '';
  const made = f.count(after.trays, 'tray');
  return before.trays === after.trays ? `still ${made}` : `${made} instead of ${f.number(before.trays)}`;
};

const more = (minor: number | undefined, f: Format): string => {
  if (!minor) return '';
  return minor > 0 ? `${f.money(minor)} more` : `${f.money(-minor)} less`;
};

const costRow = (change: GuestChange, f: Format): PreviewRow => {
  const [was, now] = [change.before.cost, change.after.cost];
  const sum = ({ total, complete }: typeof was) => costShown(total, complete, f);
  const aGuest =
    was.aGuest === undefined || now.aGuest === undefined
      ? ''
      : was.aGuest === now.aGuest
        ? `${f.money(now.aGuest)} a guest, as before`
        : `${f.money(was.aGuest)} a guest is now ${f.money(now.aGuest)}`;
  const known = [more(change.more, f), aGuest].filter(Boolean).join('; ');
  return {
    what: 'Food cost',
    was: sum(was),
    now: sum(now),
    moves: was.total !== now.total,
    why: change.more === undefined ? 'Incomplete: see what is open' : known,
    loud: change.more === undefined,
  };
};

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

const lower = (name: string): string => name.toLowerCase();
