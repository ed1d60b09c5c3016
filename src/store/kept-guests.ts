import { sql } from 'kysely';
import { type AnyEvent, type AnyGuest, hasSaid } from '../core/forget.js';
import { type BackupGuests, guestsInBackups } from './backup-guests.js';
import { read } from './documents.js';
import type { Db } from './schema.js';

/** A guest of an event, listed now or before, with where it is kept what they said. */
export type KeptGuest = {
  key: string;
  /** The name as it was last; empty for guests by number. */
  name: string;
  count: number;
  /** Diets and words as they are listed now, or were last. */
  diets: string[];
  other: string;
  /** How many ingredients they do not eat. */
  avoids: number;
  listed: boolean;
  /** How many saves of the history, and how many backups, hold something they said. */
  saves: number;
  backups: number;
};

export type Kept = { guests: KeptGuest[]; unreadable: string[] };

/** What a save of the event's history has of guests. */
export type Save = { id: number; before: AnyEvent | null; after: AnyEvent | null };

/** Everything that is kept of what an event's guests eat: in its list, in its history, in the backups. */
export const keptOfGuests = async (db: Db, dataDir: string, event: string): Promise<Kept> => {
  const listed = (await read(db, 'event', event))?.doc.guests ?? [];
  const saves = await savesOf(db, event);
  const files = guestsInBackups(dataDir, event);
  const found = new Map<string, KeptGuest>();
  // The oldest first, so that what stands is what was said last.
  for (const { guests } of files) for (const guest of guests ?? []) found.set(guest.key, keptOf(guest));
  for (const save of saves) for (const guest of guestsOf(save)) found.set(guest.key, keptOf(guest));
  for (const guest of listed) found.set(guest.key, { ...keptOf(guest), listed: true });
  const holds = (guests: readonly AnyGuest[], key: string) =>
    guests.some((guest) => guest.key === key && hasSaid(guest));
  for (const guest of found.values()) {
    guest.saves = saves.filter((save) => holds(guestsOf(save), guest.key)).length;
    guest.backups = files.filter(({ guests }) => holds(guests ?? [], guest.key)).length;
  }
  const places = new Map(listed.map(({ key }, place) => [key, place]));
  const placeOf = ({ key }: KeptGuest) => places.get(key) ?? listed.length;
  return {
    guests: [...found.values()].sort((a, b) => placeOf(a) - placeOf(b)),
    unreadable: unreadable(files),
  };
};

const keptOf = ({ key, name = '', count = 1, diets = [], other = '', avoids = [] }: AnyGuest): KeptGuest => ({
  key,
  name,
  count,
  diets,
  other,
  avoids: avoids.length,
  listed: false,
  saves: 0,
  backups: 0,
});

export const guestsOf = ({ before, after }: Save): AnyGuest[] => [
  ...(before?.guests ?? []),
  ...(after?.guests ?? []),
];

const unreadable = (files: readonly BackupGuests[]): string[] =>
  files.filter(({ guests }) => !guests).map(({ name }) => name);

/** The saves of an event that are kept, the oldest first; without what was served, which is megabytes and of no guest. */
export const savesOf = async (db: Db, event: string): Promise<Save[]> => {
  const { rows } = await sql<Save>`select id, before - 'served' as before, after - 'served' as after
    from change where entity = 'event' and key = ${event} order by id`.execute(db);
  return rows;
};
