import { dietOf, mindsTraces } from './diet-list.js';
import type { Course, Dish, Guest, Service } from './facts/event.js';
import type { Facts } from './facts/facts.js';

type Served = Pick<Dish, 'service' | 'keptApart' | 'keptFor'>;

/** How a dish reaches its guests: its own way, else that of its course. */
export const serviceOf = (dish: Pick<Dish, 'service'>, course: Pick<Course, 'service'>): Service =>
  dish.service ?? course.service;

/**
 * Whether what a guest eats must be kept apart from what others serve themselves of: an allergy or a medical diet. One
 * that brings no more than facts such as alcohol and a caution in words needs no portion of its own; a diet that nobody
 * knows does.
 */
export const needsApart = ({ diets }: Pick<Guest, 'diets'>, { kitchen }: Pick<Facts, 'kitchen'>): boolean =>
  diets.some((id) => {
    const diet = dietOf(id, kitchen);
    if (!diet) return true;
    return mindsTraces(diet) && (diet.caution === '' || diet.avoidsAllergens.length > 0);
  });

/** Whether a portion of a dish is kept back for a guest: by name, or apart for all who need it so. */
export const isKeptFor = (guest: Pick<Guest, 'key' | 'diets'>, dish: Served, facts: Facts): boolean =>
  dish.keptFor.includes(guest.key) || (dish.keptApart !== '' && needsApart(guest, facts));

/**
 * Whether a dish counts for a guest by the way it is served: plated always; one that guests serve themselves from only
 * where no allergy or medical diet is at stake, where it says how portions are kept apart, or keeps one for that guest.
 */
export const countsFor = (
  guest: Pick<Guest, 'key' | 'diets'>,
  dish: Served,
  course: Pick<Course, 'service'>,
  facts: Facts,
): boolean =>
  serviceOf(dish, course) === 'plated' || !needsApart(guest, facts) || isKeptFor(guest, dish, facts);
