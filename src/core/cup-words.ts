import type { Cup } from './facts/kitchen.js';

/** Which cup and spoons there are, in words. */
export const cupWords: Record<Cup, string> = {
  metric: 'Metric: cup 250 ml, tablespoon 15 ml',
  us: 'US: cup 237 ml, tablespoon 14.8 ml',
  'us-label': 'US labels: cup 240 ml, tablespoon 15 ml',
  imperial: 'Imperial: half a pint 284 ml, tablespoon 15 ml',
  australian: 'Australian: cup 250 ml, tablespoon 20 ml',
};
