import { expect, test } from 'vitest';
import { readMethod } from '../../../../src/core/exchange/method/read-method.js';

const only = (words: string) => {
  const steps = readMethod(words);
  expect(steps).toHaveLength(1);
  return steps[0]!;
};

test.each([
  ['Simmer for 25 minutes.', 25, null],
  ['Simmer for 20–25 minutes.', 20, 25],
  ['Simmer for 20 to 25 mins until thick.', 20, 25],
  ['Braise for 1½ hours.', 90, null],
  ['Braise for 2 1/2 hours.', 150, null],
  ['Leave to rise for an hour.', 60, null],
  ['Leave to rise for half an hour.', 30, null],
  ['Leave to rise for an hour and a half.', 90, null],
  ['Cook for 1 hour 20 minutes.', 80, null],
  ['Cook for 1 hr and 20 min.', 80, null],
  ['Simmer for 1 hr 20.', 80, null],
  ['Simmer for 1 h 10, then serve.', 70, null],
  ['Roast for 2 hours 15 at 180C.', 135, null],
  ['Simmer for 1 hour 2 onions in the pan.', 60, null],
  ['Bake at 180°C for 45 minutes to 1 hour.', 45, 60],
  ['Blanch for 30 seconds.', 1, null],
  ['Chill for at least 4 hours.', 240, null],
  ['Cure in the fridge for 2 days.', 2880, null],
  ['Chill for 90min.', 90, null],
  ['Rest for 3-hour.', 180, null],
])('%s', (words, minutes, minutesLongest) => {
  expect(only(words)).toMatchObject({ minutes, minutesLongest });
});

test.each([
  ['Chill overnight.', 480, /Overnight/],
  ['Fry for 3 minutes on each side.', 6, /each side/],
  ['Fry for 2-3 minutes per side.', 4, /each side/],
  ['Roast at 180C for 20 minutes per 500 g.', 20, /turns on the weight/],
  ['Bake at 200C for 30 minutes, turning after 15 minutes.', 30, /now and then/],
  ['Whisk until stiff.', null, /not said/],
  ['Store in a jar; it keeps for 3 weeks.', null, /not said/],
])('%s is read and marked', (words, minutes, why) => {
  const step = only(words);
  expect(step.minutes).toBe(minutes);
  expect(step.sure).toBe(false);
  expect(step.because.join(' ')).toMatch(why);
});

/** Customary oven table: gas mark 4 is 180 °C; 350 °F is (350 − 32) × 5/9 = 176.67, stored as 177 °C. */
test.each([
  ['Bake at 180°C for 20 minutes.', 180, false],
  ['Bake at 180C/160C fan/gas 4 for 20 minutes.', 180, false],
  ['Bake at 200°C (180°C fan-forced) for 20 minutes.', 200, false],
  ['Bake at 160C fan for 20 minutes.', 160, true],
  ['Roast at 180C fan 160C for an hour.', 180, false],
  ['Bake in the oven at fan 160C for 20 minutes.', 160, true],
  ['Bake at 350°F for 20 minutes.', 177, false],
  ['Bake at 350 degrees F (180C) for 20 minutes.', 180, false],
  ['Bake at gas mark 4 for 20 minutes.', 180, false],
  ['Bake at gas mark ½ for 3 hours.', 120, false],
  ['Bake at 350 degrees for 20 minutes.', 177, false],
  ['Brush with oil, then bake at 220C for 20 minutes.', 220, false],
  ['Braise at 150C/130C fan/gas 2 for 2 hours.', 150, false],
  ['Cover and braise in a low oven (140°C) for 3 hours.', 140, false],
  ['Place in oven at 220°C for 15 minutes.', 220, false],
])('%s sets the oven', (words, heat, fan) => {
  expect(only(words).oven).toEqual({ heat, fan });
});

test.each([
  ['Heat the oil to 180°C and deep-fry for 4 minutes.'],
  ['Cook until the centre reaches 75°C.'],
  ['Boil the syrup to 118°C, about 10 minutes.'],
])('%s is not the oven', (words) => {
  expect(only(words).oven).toBeNull();
});

test('the oven set at the beginning holds until another heat is stated, and says so', () => {
  const steps = readMethod(
    '1. Preheat the oven to 200C/180C fan/gas 6.\n2. Roast the squash for 40 minutes.\n3. Turn the oven down to 160C and bake the tart for 25 minutes.',
  );
  expect(steps.map(({ oven, minutes }) => [oven?.heat ?? null, minutes])).toEqual([
    [null, null],
    [200, 40],
    [160, 25],
  ]);
  expect(steps[1]!.because).toEqual(['The heat is that of the oven set in a step before.']);
  expect(steps[2]!.sure).toBe(true);
});

test('a paragraph is cut where a time ends, and words without a time lead up to the next', () => {
  const steps = readMethod(
    'Peel the onions. Fry them gently for 10 min. Add the stock and simmer for 30 minutes, then chill for 2 hours. Season.',
  );
  expect(steps.map(({ words, minutes, kind, attended }) => [words, minutes, kind, attended])).toEqual([
    ['Peel the onions. Fry them gently for 10 min.', 10, 'fry', true],
    ['Add the stock and simmer for 30 minutes', 30, 'simmer', false],
    ['Then chill for 2 hours.', 120, 'chill', false],
    ['Season.', null, 'other', true],
  ]);
});

test('kinds of step, hands and equipment', () => {
  const read = (words: string) => {
    const { kind, attended, rings, mixers, fridgeShelves, equipment } = only(words);
    return { kind, attended, rings, mixers, fridgeShelves, equipment };
  };
  expect(read('Knead in a stand mixer for 8 minutes.')).toEqual({
    kind: 'mix',
    attended: true,
    rings: 0,
    mixers: 1,
    fridgeShelves: 0,
    equipment: ['mixer'],
  });
  expect(read('Leave to prove in the fridge for 12 hours.')).toMatchObject({
    attended: false,
    fridgeShelves: 1,
  });
  expect(read('Simmer, stirring constantly, for 10 minutes.')).toMatchObject({
    kind: 'simmer',
    attended: true,
    rings: 1,
  });
  expect(read('Let the meat rest for 20 minutes.')).toMatchObject({
    kind: 'rest',
    attended: false,
    equipment: [],
  });
  expect(read('Marinate for 2 hours.')).toMatchObject({ kind: 'soak', attended: false });
  expect(read('Cover and leave to prove for 1 hour until doubled in size.')).toMatchObject({ kind: 'prove' });
});

test('numbers, headings and wrapped lines', () => {
  const steps = readMethod(
    'For the pastry:\nStep 1\nRub the butter in\nuntil fine.\n\nStep 2\nChill for 30 minutes.\n\nFor the filling:\n1) Whisk the eggs.\n2) Bake at 170C for 35 minutes.',
  );
  expect(steps.map(({ part, words }) => [part, words])).toEqual([
    ['For the pastry', 'Rub the butter in until fine.'],
    ['For the pastry', 'Chill for 30 minutes.'],
    ['For the filling', 'Whisk the eggs.'],
    ['For the filling', 'Bake at 170C for 35 minutes.'],
  ]);
});

test('nothing gives nothing', () => {
  expect(readMethod('')).toEqual([]);
  expect(readMethod(' \n\n ')).toEqual([]);
});
