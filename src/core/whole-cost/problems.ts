import type { CostLine, WorkHours } from '../facts/cost-line.js';
import type { Event } from '../facts/event.js';
import type { Place } from '../facts/place.js';
import type { Recipe, Step } from '../facts/recipe.js';
import type { Problem } from '../problem.js';
import { ofEvent, ofRecipe } from '../problems.js';

/** The problem sentences of what an event costs beside its food, as those of `problems.ts`. */

export const noCost = (event: Event, line: CostLine): Problem => ({
  weight: 'ask',
  code: 'no-cost',
  sentence: `${line.name}: what it costs is not known.`,
  subject: ofEvent(event, `costs/${line.key}`),
});

export const noRate = (event: Event, line: CostLine): Problem => ({
  weight: 'ask',
  code: 'no-rate',
  sentence: `${line.name}: what an hour costs is not known.`,
  subject: ofEvent(event, `costs/${line.key}`),
});

export const noHourlyCost = (event: Event, line: CostLine, person: string): Problem => ({
  weight: 'ask',
  code: 'no-rate',
  sentence: `${line.name}: what an hour of ${person} costs is not known.`,
  subject: ofEvent(event, `costs/${line.key}`),
});

const hoursOf: Record<WorkHours, string> = {
  cooking: 'hours of cooking',
  driving: 'hours of driving',
  ovens: 'hours of the ovens',
  rings: 'hours of the rings',
};

export const noDriveCost = (place: Place): Problem => ({
  weight: 'ask',
  code: 'no-drive',
  sentence: `No drive to ${place.name} is stated, so the hours of driving can't be counted.`,
  subject: { entity: 'place', key: place.key, name: place.name, field: 'drive' },
});

export const noWork = (recipe: Recipe, of: WorkHours): Problem => ({
  weight: 'ask',
  code: 'no-work',
  sentence: `${recipe.name} has no steps, so the ${hoursOf[of]} leave it out.`,
  subject: ofRecipe(recipe, 'steps'),
});

export const noMinutes = (recipe: Recipe, step: Step, of: WorkHours): Problem => ({
  weight: 'ask',
  code: 'no-minutes',
  sentence: `${recipe.name}, step ${recipe.steps.indexOf(step) + 1}: no minutes, so the ${hoursOf[of]} leave it out.`,
  subject: ofRecipe(recipe, 'steps'),
});
