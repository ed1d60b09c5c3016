import type { RawBuilder } from 'kysely';
import type { EntityName, EntityOf } from '../../core/facts/facts.js';

export type Row = Record<string, unknown>;

/** A list inside a document, kept as rows of their own that the document's row owns. */
export type Part<D> = {
  table: string;
  /** The column that holds the owner's id. */
  owner: string;
  /** The columns that tell one row from another within its owner. */
  identity: readonly string[];
  order: string;
  rows(doc: D): Row[];
  /** Rows that leave the document are marked withdrawn and stay. */
  withdraws?: true;
  /** Columns that are never rewritten: another value withdraws the row and adds a new one. */
  written?: readonly string[];
  /** The rows wanted where only the latest do, for the owners in `t`. */
  latest?: RawBuilder<unknown>;
};

/** How one kind of document becomes rows and comes back; what it refers to is a key in a column. */
export type Shape<N extends EntityName> = {
  table: N;
  /** The document's own row, without its key and revision. */
  row(doc: EntityOf[N]): Row;
  /** In the order they are written: what others refer to comes first. */
  parts: readonly Part<EntityOf[N]>[];
  /** The document from its row and the rows of its parts, each under its table's name. */
  doc(row: never): EntityOf[N];
};

export const placed = <T>(list: readonly T[], row: (one: T) => Row): Row[] =>
  list.map((one, position) => ({ ...row(one), position }));
