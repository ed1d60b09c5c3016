import type { JSONColumnType, Kysely, Transaction } from 'kysely';
import type { Served } from '../core/facts/event.js';
import type {
  ChangeTable,
  CourseTable,
  CsvDraftTable,
  DishTable,
  DraftTable,
  EventTable,
  GroupTable,
  GuestTable,
  Id,
  IngredientTable,
  Instant,
  Json,
  KitchenTable,
  LineTable,
  PackTable,
  PlaceTable,
  PriceTable,
  RecipeTable,
  StepTable,
  TickTable,
} from './tables.js';

export type Schema = {
  kitchen: KitchenTable;
  place: PlaceTable;
  ingredient: IngredientTable;
  pack: PackTable;
  price: PriceTable;
  recipe: RecipeTable;
  recipe_line: LineTable;
  recipe_step: StepTable;
  event: EventTable;
  guest_group: GroupTable;
  guest: GuestTable;
  course: CourseTable;
  dish: DishTable;
  event_snapshot: { event_id: number; served: JSONColumnType<Served> };
  change: ChangeTable;
  prep_period: { id: Id; key: string; from_day: string; to_day: string };
  prep_period_event: { period_id: number; event: string };
  tick: TickTable;
  draft: DraftTable;
  csv_draft: CsvDraftTable;
  account: {
    id: Id;
    key: string;
    name: string;
    name_key: string;
    password_hash: string;
    created_at: Instant;
  };
  session: {
    id_hash: string;
    account_id: number | null;
    session: Json<Record<string, unknown>>;
    expires_at: Instant;
  };
};

export type Db = Kysely<Schema>;
export type Trx = Transaction<Schema>;
