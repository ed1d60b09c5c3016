import type { Receipt } from '../receipt.js';
import type { CopyPage } from './copy.js';
import type { EditPage } from './edit.js';
import type { GuestPage } from './guest-form.js';
import type { EventsPage } from './list.js';
import type { MenuPage } from './menu.js';
import type { NewEventPage } from './new.js';
import type { RemovePage } from './remove.js';
import type { EventPage } from './show.js';

/** The models of the event pages. */
export type EventViews = {
  'events/list': EventsPage;
  'events/new': NewEventPage;
  'events/_new': NewEventPage;
  'events/new-update': NewEventPage;
  'events/edit': EditPage;
  'events/_edit': EditPage;
  'events/edit-update': EditPage;
  'events/menu': MenuPage;
  'events/_menu-form': MenuPage;
  'events/ripple-update': MenuPage;
  'events/copy': CopyPage;
  'events/_copy': CopyPage;
  'events/copy-update': CopyPage;
  'events/remove': RemovePage;
  'events/show': EventPage;
  'events/guests': GuestPage;
  'events/_guests': GuestPage;
  'events/guest-preview-update': GuestPage;
  'events/guests-update': EventPage & { receipt: Receipt | undefined };
};
