import type { Wary } from '../core/wary.js';

/** What is done at the pot where a line was scaled far. */
export const atThePot: Record<Wary, string> = {
  salt: 'hold some back and taste',
  leavening: 'try it once first',
  setting: 'test a spoonful in the cold first',
};
