import diets from '../../shared/diets.json' with { type: 'json' };
import { type Choices, keyOf, span } from './choices.js';
import type { Recipe, Written } from './written.js';

/** A party of adults and children with three courses, the last after midnight. */
export const eventAt = (
  i: number,
  recipes: Recipe[],
  { upTo, pick, once }: Choices,
): Written['events'][number] => {
  const [adults, children] = [1 + upTo(80), upTo(20)];
  const eaters = () =>
    pick([
      { everybody: true as const },
      { shares: [{ group: 'adults', percent: '37.5' }] },
      {
        counts: [
          { group: 'adults', guests: 1 },
          { group: 'children', guests: upTo(children) },
        ],
      },
    ]);
  const dish = (course: number) => (n: number) => ({
    key: keyOf(`dish-${course}`, n),
    recipe: pick(recipes).key,
    portion: once(30) ? { amount: '6', unit: 'oz' } : null,
    eaters: eaters(),
  });
  const courses = ['18:00', '19:15', '00:30'].map((time, n) => ({
    key: keyOf('course', n),
    name: `Course ${n + 1}`,
    time,
    dayAfter: time === '00:30',
    dishes: span(1 + upTo(2)).map(dish(n)),
  }));
  return {
    key: keyOf('event', i),
    name: `Party ${i}`,
    date: `2027-03-${String(10 + upTo(9))}`,
    place: 'home',
    state: pick(['quoted', 'confirmed'] as const),
    groups: [
      { key: 'adults', name: 'Adults', guests: adults },
      { key: 'children', name: 'Children', guests: children, portion: '2/3' },
    ],
    guests: [
      { key: 'guest', name: 'A guest', group: 'adults', diets: [pick(diets).id], answered: !once(20) },
    ],
    overCatering: pick(['0', '0', '7.5']),
    courses,
  };
};
