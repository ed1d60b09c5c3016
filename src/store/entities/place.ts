import type { Selectable } from 'kysely';
import { normalName } from '../../core/names.js';
import type { PlaceTable } from '../tables.js';
import type { Shape } from './shape.js';

export const placeShape: Shape<'place'> = {
  table: 'place',
  row: (doc) => ({
    name: doc.name,
    name_key: normalName(doc.name),
    kind: doc.kind,
    ovens: doc.ovens,
    rings: doc.rings,
    mixers: doc.mixers,
    pans: doc.pans,
    fridge_shelves: doc.fridgeShelves,
    freezer_shelves: doc.freezerShelves,
    water: doc.water,
    access: doc.access,
    drive: doc.drive,
    note: doc.note,
    origin: doc.origin,
  }),
  parts: [],
  doc: (row: Selectable<PlaceTable>) => ({
    key: row.key,
    name: row.name,
    kind: row.kind,
    ovens: row.ovens,
    rings: row.rings,
    mixers: row.mixers,
    pans: row.pans,
    fridgeShelves: row.fridge_shelves,
    freezerShelves: row.freezer_shelves,
    water: row.water,
    access: row.access,
    drive: row.drive,
    note: row.note,
    archived: row.archived_at !== null,
    origin: row.origin,
  }),
};
