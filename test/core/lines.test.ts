import { describe, expect, test } from 'vitest';
import { costOf } from '../../src/core/costing.js';
import type { Rational } from '../../src/core/quantity/rational.js';
import { Rational as R } from '../../src/core/quantity/rational.js';
import { scale } from '../../src/core/scaling.js';
import { eventSummary } from '../../src/core/sheets/event-summary.js';
import { jobsOf, prepList, prepListSheet } from '../../src/core/sheets/prep-list.js';
import { scaledRecipe } from '../../src/core/sheets/scaled-recipe.js';
import { dish, factsOf, food, lines, pack, party, steps } from './small.js';

const said = (figure: Rational | undefined) => figure?.toString();
const at = (facts: ReturnType<typeof factsOf>, times: string, key = 'dish') => {
  const { value, problems } = scale(facts.recipes.get(key)!, R.parse(times), facts);
  return { lines: value[0]!.lines, problems, value };
};

describe('a range', () => {
  // "2–3 cloves" × 4 = "8–12 cloves": 12 are needed, of 3 g each, and 12 are paid for at 10 a clove.
  test('keeps both ends and scales both; the upper end is needed, weighed and costed', () => {
    const garlic = food('garlic', {
      weights: [{ unit: 'clove', grams: '3' }],
      ...pack('10 clove at 100'),
    });
    const facts = factsOf([dish('dish', '1 portion', ['2-3 clove garlic']), garlic]);
    const { value } = at(facts, '4');
    const [need] = value[0]!.lines;
    expect([said(need!.least), said(need!.amount), said(need!.prepared)]).toEqual(['8', '12', '36']);
    expect([said(need!.baseLeast), said(need!.base)]).toEqual(['2', '3']);
    expect(said(costOf(value, facts).value[0]!.cost)).toBe('120');
    expect(
      scaledRecipe(facts.recipes.get('dish')!, undefined, facts).value.lines[0]!.straight,
    ).toBeUndefined();
  });

  // 1/2 to 3/4 of an egg at 5 times are 2.5 to 3.75: both ends go up, to 3 and 4.
  test('of whole pieces rounds both ends up', () => {
    const facts = factsOf([dish('dish', '1 portion', ['1/2-3/4 each egg pieces']), food('egg')]);
    const [need] = at(facts, '5').lines;
    expect([said(need!.least), said(need!.amount)]).toEqual(['3', '4']);
  });

  // Parties of 10 and 20 are one job of 20–30 and 40–60 g.
  test('adds up end by end where two parties share a job', () => {
    const facts = factsOf([dish('dish', '1 portion', ['2-3 g salt'], steps({ minutes: 5 })), food('salt')]);
    const both = [party(10, ['dish']), { ...party(20, ['dish']), key: 'other' }];
    const answer = prepList(both, facts);
    const [need] = jobsOf(answer.value.days)[0]!.lines;
    expect([said(need!.least), said(need!.amount)]).toEqual(['60', '90']);
    const { tables, foot } = prepListSheet(answer);
    expect(tables[1]!.rows[0]).toMatchObject({ least: '60', amount: '90', amountUnit: 'g' });
    expect(foot.join(' ')).toContain('the upper one is what is needed');
  });
});

// A bouquet for each batch begun: half a batch takes one, one and a bit two, three batches three.
test('what goes in once for each batch goes by whole batches', () => {
  const facts = factsOf([dish('dish', '1 portion', ['1 bunch bouquet batch']), food('bouquet')]);
  const amounts = ['1/2', '1', '1.01', '3', '0'].map((times) => said(at(facts, times).lines[0]!.amount));
  expect(amounts).toEqual(['1', '1', '2', '3', '0']);
});

describe('a per cent of the flour', () => {
  const bread = (cut: string[], more = {}) =>
    factsOf([dish('dish', '1 portion', cut, more), food('flour'), food('rye'), food('water'), food('salt')]);
  const amounts = (facts: ReturnType<typeof factsOf>, times = '1') =>
    at(facts, times).lines.map(({ amount, unit }) => amount && `${amount} ${unit}`);

  // 500 g and 100 g of flour are 600 g: 65 % are 390 g of water, 2–3 % 12 to 18 g of salt; twice at two batches.
  test('is of all flour lines together, and of a range both ends', () => {
    const facts = bread(['500 g flour flour', '0.1 kg rye flour', '65 percent water', '2-3 percent salt']);
    expect(amounts(facts)).toEqual(['500 g', '0.1 kg', '390 g', '18 g']);
    expect(said(at(facts, '2').lines[3]!.least)).toBe('24');
    expect(amounts(facts, '2')).toEqual(['1000 g', '0.2 kg', '780 g', '36 g']);
  });

  // 950 g of bread at a loss of 5 % are 1000 g of dough; less 30 g of salt 970 g are 200 per cent: 485 g of flour.
  test('with flour in per cent goes by the weight made, before the loss in cooking and less what has a weight', () => {
    const cut = ['80 percent flour flour', '20 percent rye flour', '100 percent water', '30 g salt'];
    const yields = { yield: { portions: '10', weight: { amount: '950', unit: 'g' } }, cookingLoss: '5' };
    expect(amounts(bread(cut, yields))).toEqual(['388 g', '97 g', '485 g', '30 g']);
  });

  test('that cannot be worked out says why, at the line or where it is mended', () => {
    const why = (cut: string[], more = {}) => {
      const { problems, lines } = at(bread(cut, more), '1');
      expect(lines[0]!.amount).toBeUndefined();
      return problems
        .filter(({ code }) => code === 'no-flour')
        .map((one) => [one.subject.field, one.sentence]);
    };
    expect(why(['65 percent water'])).toEqual([
      [
        'lines/l0/amount',
        'Water in Dish: no flour in this recipe to take a per cent of. Let the line of the flour scale as flour.',
      ],
    ]);
    expect(why(['65 percent water', '2 each flour flour'])[0]![1]).toContain(
      'what the flour weighs is not known',
    );
    expect(why(['100 percent flour flour'])[0]).toEqual([
      'yield',
      "Dish: its flour is in per cent, so the amounts can't be worked out until it says what one batch weighs.",
    ]);
    const kilo = { yield: { portions: '1', weight: { amount: '1', unit: 'kg' } } };
    expect(why(['100 percent flour flour', '2 each salt'], kilo)[0]![1]).toContain(
      'its other lines weigh is not',
    );
    expect(why(['100 percent flour flour', '1 kg salt'], kilo)[0]![1]).toContain(
      'nothing is left for the flour',
    );
  });
});

describe('stated once cooked', () => {
  const yields = (...list: object[]) => ({ edibleYield: { yield: '0.8' }, cookedYields: list });
  const roast = (more: object, line = '100 g lamb once roasted') =>
    factsOf([dish('dish', '1 portion', [line]), food('lamb', more)]);

  // Of 100 g roast at a half: 200 g with its bone; from prepared meat, of which 80 % is left after trimming, 250 g.
  test('is divided by the edible yield only where the cooked yield starts from prepared meat', () => {
    const bought = (from: string) =>
      said(at(roast(yields({ name: 'Roasted', yield: '0.5', from })), '1').lines[0]!.bought!.value);
    expect([bought('bought'), bought('prepared')]).toEqual(['200', '250']);
  });

  test('weighs in the dish what it weighs cooked, and asks where nobody has said how it cooks', () => {
    const none = at(roast(yields()), '1');
    expect([said(none.lines[0]!.prepared), none.lines[0]!.bought]).toEqual(['100', undefined]);
    expect(none.problems[0]).toMatchObject({
      code: 'no-cooked-yield',
      weight: 'ask',
      sentence: "Lamb: what it weighs once roasted is not known, so what to buy can't be worked out.",
      subject: { entity: 'ingredient', field: 'cookedYields' },
    });
    const other = at(roast(yields({ name: 'braised', yield: '0.5', from: 'bought' })), '1').problems[0]!;
    expect(other.sentence).toContain('It has braised.');
    expect(other.subject).toMatchObject({ entity: 'recipe', field: 'lines/l0/cooked' });
  });
});

// 100 g of thyme and 1 kg of leeks for one; at ten times 6 × 100 g go in, not 10 × 100 g: 10.6 kg for ten guests.
test('a dish without a stated weight weighs what goes in', () => {
  const facts = factsOf([
    dish('dish', '1 portion', ['100 g thyme herb', '1 kg leek']),
    food('thyme'),
    food('leek'),
  ]);
  const { value } = eventSummary(party(10, ['dish']), facts);
  expect(said(value.gramsAGuest)).toBe('1060');
  expect(said(lines(party(10, ['dish']), facts).get('dish/l0')!.amount)).toBe('600');
  const asked = { portions: R.of(10), portion: null };
  const [herb, leek] = scaledRecipe(facts.recipes.get('dish')!, asked, facts).value.lines;
  expect([said(herb!.straight), leek!.straight]).toEqual(['1000', undefined]);
});
