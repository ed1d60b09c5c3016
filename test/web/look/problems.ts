import { mark } from '../../../src/web/marks.js';

const subject = { entity: 'event' as const, key: 'silver', name: 'Silver wedding buffet' };

/** Sentences of every weight, to look at. */
export const problems = [
  {
    weight: 'stop',
    sentence: 'Greta (tree nuts) has no pudding. Moss (vegan) has no main.',
    mend: 'See who can eat what',
  },
  {
    weight: 'stop',
    sentence: 'Oven 1, Sat 14:50: pies and plum cakes want different heats.',
    mend: 'See the ovens',
  },
  { weight: 'ask', sentence: '6 of 46 guests have not answered about diet.', mend: 'Open diets' },
  {
    weight: 'ask',
    sentence: 'Seeded soda bread: new seed mix, label not read. Nuts, peanuts and soya not known.',
    mend: 'Read the label',
  },
  {
    weight: 'check',
    sentence: 'Friday is 1 h over on hands. Thursday has 30 min free.',
    mend: 'Open Friday',
  },
].map((one) => ({ ...one, subject, mark: mark({ letter: 'B', fill: 'outline' }) }));
