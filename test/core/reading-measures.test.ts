import { expect, test } from 'vitest';
import {
  readCookedYield,
  readEdibleYield,
  readHeat,
  readMeasure,
  readMinutes,
  readTolerance,
  typedHeat,
  typedTolerance,
} from '../../src/core/reading-measures.js';

const sentence = (read: object) => ('sentence' in read ? read.sentence : undefined);
const value = (read: object) => ('value' in read ? read.value : read);

test('an amount with its unit is read as cooks write it', () => {
  expect(value(readMeasure('2.5 kg'))).toEqual({ amount: '2.5', unit: 'kg' });
  expect(value(readMeasure('1½ l'))).toEqual({ amount: '1.5', unit: 'l' });
  expect(value(readMeasure('500g'))).toEqual({ amount: '500', unit: 'g' });
  expect(value(readMeasure('3 kgs'))).toEqual({ amount: '3', unit: 'kg' });
  expect(value(readMeasure('12 each'))).toEqual({ amount: '12', unit: 'each' });
  expect(value(readMeasure('2 x 400 g'))).toEqual({ amount: '800', unit: 'g' });
  expect(value(readMeasure('6×1,5 l'))).toEqual({ amount: '9', unit: 'l' });
  expect(value(readMeasure('1/3 cup'))).toEqual({ amount: '1/3', unit: 'cup' });
});

test('what can’t be read says what to type', () => {
  expect(sentence(readMeasure('500'))).toBe('Enter the unit too, such as 500 g, ml or each.');
  expect(sentence(readMeasure(''))).toBe('Enter an amount with its unit, such as 2.5 kg.');
  expect(sentence(readMeasure('a sack'))).toContain('You entered a sack.');
  expect(sentence(readMeasure('1,500 g'))).toBe('1,500 can be read two ways. Type 1500, or 1.500.');
  expect(sentence(readMeasure('0 kg'))).toContain('above zero');
  expect(sentence(readMeasure('-3 kg'))).toContain('below zero');
  expect(sentence(readMeasure('2 l', 'g'))).toContain('Enter a weight');
  expect(sentence(readMeasure('2 kg', 'ml'))).toContain('Enter a volume');
});

test('an edible yield is a per cent, or a factor for what swells', () => {
  for (const typed of ['72', '72 %', '72%', '0.72']) expect(value(readEdibleYield(typed))).toBe('0.72');
  expect(value(readEdibleYield('100 %'))).toBe('1');
  expect(value(readEdibleYield('1'))).toBe('1');
  expect(value(readEdibleYield('5 %'))).toBe('0.05');
  expect(value(readEdibleYield('3.05'))).toBe('3.05');
});

test('an edible yield that can’t be is refused with a guess', () => {
  expect(sentence(readEdibleYield('720 %'))).toBe(
    'Edible yield must be between 1 and 100. You entered 720 %. Did you mean 72? What swells is entered as a factor, such as 7.2.',
  );
  expect(sentence(readEdibleYield('0'))).toContain('nothing of it can be eaten');
  expect(sentence(readEdibleYield('most'))).toContain('You entered most.');
  expect(sentence(readEdibleYield('-3'))).toContain('You entered -3.');
});

test('a cooked yield is read in the same way, and nothing left is refused with the reason', () => {
  expect(value(readCookedYield('58.4 %'))).toBe('0.584');
  expect(value(readCookedYield('3.05'))).toBe('3.05');
  expect(sentence(readCookedYield('0'))).toContain('nothing is left of it once cooked');
  expect(sentence(readCookedYield('720'))).toMatch(
    /^Cooked yield must be between 1 and 100.*Did you mean 72\?/,
  );
});

test('heat is typed in the kitchen’s degrees and comes back as typed', () => {
  const [c, f] = [{ heat: 'C' }, { heat: 'F' }] as const;
  expect(value(readHeat('180', c))).toBe(180);
  // 350 °F are 176.67 °C, and an oven in Celsius is set to 180; 200 °F are 93, which stays.
  expect(['350 °F', '425 °F', '325 °F', '200 °F'].map((typed) => value(readHeat(typed, c)))).toEqual([
    180, 220, 160, 93,
  ]);
  expect(value(readHeat('350', f))).toBe(177);
  for (let celsius = 30; celsius <= 300; celsius++)
    expect(value(readHeat(typedHeat(celsius, f), f))).toBe(celsius);
  for (let apart = 0; apart <= 100; apart++)
    expect(value(readTolerance(typedTolerance(apart, f), f))).toBe(apart);
  expect(sentence(readHeat('1800', c))).toContain('Did you mean 180?');
  expect(sentence(readHeat('hot', c))).toContain('You entered hot.');
  expect(sentence(readTolerance('101', c))).toContain('0 to 100');
});

test('a stretch of time is read as cooks write it', () => {
  for (const [typed, minutes] of [
    ['35', 35],
    ['35 min', 35],
    ['1 h 20', 80],
    ['1h20m', 80],
    ['2 hours', 120],
    ['1.5 h', 90],
    ['0', 0],
  ] as const)
    expect(value(readMinutes(typed, 'how long it takes'))).toBe(minutes);
  for (const typed of ['', 'a while', '-5', '1.5 h 20', '1,500'])
    expect(sentence(readMinutes(typed, 'how long it takes'))).toContain('Enter how long it takes in minutes');
});
