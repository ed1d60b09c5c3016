import type { EntityName } from '../core/facts/facts.js';
import type { Subject } from '../core/problem.js';

const folders: Record<EntityName, string> = {
  kitchen: '/kitchen',
  place: '/places',
  ingredient: '/ingredients',
  recipe: '/recipes',
  event: '/events',
};

/** The page of one thing. */
export const pageOf = (entity: EntityName, key: string): string =>
  entity === 'kitchen' ? folders.kitchen : `${folders[entity]}/${encodeURIComponent(key)}`;

/** The page that lists all of a kind. */
export const listOf = (entity: EntityName): string => folders[entity];

type Forms = { whole: string; parts?: Record<string, string> };

/** The form that changes a thing, and the forms of those of its fields that have one of their own. */
const forms: Record<EntityName, Forms> = {
  kitchen: { whole: '' },
  place: { whole: '/change' },
  ingredient: {
    whole: '/basics',
    parts: {
      packs: '/packs',
      edibleYield: '/yield',
      density: '/yield',
      weights: '/yield',
      cookedYields: '/yield',
      allergens: '/label',
      labelText: '/label',
      traits: '/diets',
      substitutes: '/substitutes',
      keeping: '/keeping',
    },
  },
  recipe: { whole: '/edit' },
  event: {
    whole: '/edit',
    parts: { guests: '/guests/diets', courses: '/menu', costs: '/costs', price: '/costing' },
  },
};

/** The page where a problem is mended, at the field that mends it. */
export const whereMended = ({ entity, key, field }: Subject): string =>
  field === undefined
    ? pageOf(entity, key)
    : `${changeOf(entity, key, field)}#${field.replaceAll('/', '-').replaceAll(/[^\w-]/g, '')}`;

/** The form that changes a thing, or one field of it. */
export const changeOf = (entity: EntityName, key: string, field = ''): string => {
  const { whole, parts = {} } = forms[entity];
  return `${pageOf(entity, key)}${parts[field.split('/')[0]!] ?? whole}`;
};

export const historyOf = (entity: EntityName, key: string): string =>
  `/history/${entity}/${encodeURIComponent(key)}`;

export const menuOfPages = [
  { word: 'Week', href: '/', phone: true },
  { word: 'Events', href: '/events', phone: false },
  { word: 'Recipes', href: '/recipes', phone: false },
  { word: 'Prep', href: '/prep', phone: true },
  { word: 'Costing', href: '/costing', phone: false },
] as const;

export type Word = (typeof menuOfPages)[number]['word'];
