import type { Answerer } from './house.js';
import { menuOfPages } from './links.js';
import { page } from './page.js';

/** The menu of pages, which a phone has no room for in its head. */
export const menu: Answerer = ({ kitchen }, reply) =>
  page(reply, 'menu/show', { title: 'Menu', pages: menuOfPages, kitchen: kitchen.name });

/** The few keys there are. */
export const showKeys: Answerer = (_request, reply) => page(reply, 'menu/keys', { title: 'Keys' });
