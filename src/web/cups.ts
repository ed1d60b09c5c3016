import { cupWords } from '../core/cup-words.js';

export const cupChoices = Object.entries(cupWords).map(([value, label]) => ({ value, label }));
