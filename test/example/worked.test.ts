import Fraction from 'fraction.js';
import { expect, test } from 'vitest';
import answers from '../../shared/example/answers.json' with { type: 'json' };

// The figures that shared/example/README.md works out in words, typed here from the pencil, not from the program.
const tea = answers['birthday-tea'];
const supper = answers['choir-supper'];
const lunch = answers['retirement-lunch'];
const is = (figure: string, exact: string) =>
  expect(new Fraction(figure).toFraction()).toBe(new Fraction(exact).toFraction());
const near = (figure: string, decimal: number) =>
  expect(new Fraction(figure).valueOf()).toBeCloseTo(decimal, 3);

test('portions and batches: shares, counts, children at a half, ten per cent over, whole pieces', () => {
  is(supper.dishes['beef-stew'].portions, '40.5');
  is(supper.dishes['beef-stew'].factor, '2.025');
  is(supper.dishes['lentil-pie'].portions, '9.5');
  is(supper.dishes['apple-crumble'].factor, '49/12');
  is(tea.dishes['beef-rolls'].portions, '38');
  is(tea.dishes['beef-rolls'].factor, '3.8');
  is(tea.dishes.hummus.portions, '17.6');
  is(tea.dishes.hummus.factor, '0.88');
  is(lunch.dishes['mackerel-pate'].portions, '21');
});

test('components through any depth, by weight, by volume and by the piece', () => {
  is(supper.dishes['lentil-pie'].batches['vegetable-stock'], '0.178125');
  is(supper.dishes['lentil-pie-oil'].batches['tomato-sauce'], '0.25');
  is(tea.dishes['beef-rolls'].batches['horseradish-cream'], '2.375');
  is(lunch.dishes['mackerel-pate'].batches['horseradish-cream'], '0.875');
  is(lunch.dishes['lemon-posset'].batches.shortbread, '4/3');
});

test('ingredients as prepared and as bought', () => {
  is(supper.ingredients['shin-of-beef'].prepared, '7290');
  is(supper.ingredients['shin-of-beef'].bought, '12150');
  is(supper.ingredients.potato.prepared, '10800');
  is(supper.ingredients.potato.bought, '14400');
  near(supper.ingredients.onion.prepared, 3124.7917);
  near(supper.ingredients.onion.bought, 3471.9907);
  near(supper.ingredients['rolled-oats'].bought, 826.9547);
  is(supper.ingredients['tinned-tomatoes'].bought, '3');
  is(tea.ingredients.leek.prepared, '1254');
  is(tea.ingredients.egg.bought, '10');
  is(tea.ingredients['bread-roll'].bought, '76');
});

test('costs, and a whole tea added up by hand', () => {
  is(supper.ingredients['shin-of-beef'].cost, '10874.25');
  is(supper.ingredients.potato.cost, '835.2');
  is(tea.ingredients.leek.cost, '783.75');
  near(tea.cost.exact, 14904.5959);
  expect(tea.cost.minor).toBe(14905);
  near(tea.cost.aGuest, 392.2262);
  expect(tea.cost.aGuestMinor).toBe(392);
});

test('the whole tea, as used and in whole packs', () => {
  const { used, bought } = tea.whole;
  near(used.exact, 47_541.6371);
  expect([used.minor, used.aGuestMinor, used.food.minor]).toEqual([47_542, 1251, 14_905]);
  near(used.parts.cooking.exact, 11_333.3333);
  near(used.parts.driving.exact, 1866.6667);
  near(used.parts.rings.exact, 63.3333);
  near(used.parts.contingency.exact, 1384.7079);
  const { serving, boxes, ovens, sundries } = used.parts;
  expect([serving, boxes, ovens, sundries].map((part) => part.minor)).toEqual([9450, 665, 390, 684]);
  expect(bought.food.exact).toBe('23735');
  near(bought.exact, 56_636.9533);
  expect(bought.minor).toBe(56_637);
});

test('what is shown adds up: lines to their dish, dishes to their event', () => {
  type Dish = { minor: number; lines: { minor: number }[] };
  for (const event of Object.values(answers)) {
    const dishes: Dish[] = Object.values(event.dishes);
    expect(dishes.reduce((all, dish) => all + dish.minor, 0)).toBe(event.cost.minor);
    for (const dish of dishes) {
      expect(dish.lines.reduce((all, line) => all + line.minor, 0)).toBe(dish.minor);
    }
  }
});
