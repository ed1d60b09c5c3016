import type { Option } from '../../core/facts/quote.js';

type Menu = Option['menu'];

/** A menu as its field holds it: each course a block, its name on the first line and its dishes below. */
export const menuText = (menu: Menu): string =>
  menu.map(({ course, dishes }) => [course, ...dishes].join('\n')).join('\n\n');

/** Reads it back; empty lines part the courses. */
export const readMenu = (text: string): Menu =>
  text
    .split(/\n[ \t]*(?:\n[ \t]*)+/)
    .map((block) => block.split('\n').map((line) => line.trim()))
    .map((lines) => lines.filter((line) => line !== ''))
    .filter((lines) => lines.length > 0)
    .map(([course = '', ...dishes]) => ({ course, dishes }));
