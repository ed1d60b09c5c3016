import type { RecipeDraft, Section } from '../recipe/draft.js';

/** As many as a recipe keeps. */
const mostLines = 200;
const mostSteps = 100;

/** A draft cut to what one recipe holds; what is cut off is said. */
export const withinRecipe = (draft: RecipeDraft): RecipeDraft => {
  const lines = draft.sections.reduce((sum, one) => sum + one.lines.length, 0);
  const unsure = [...draft.unsure];
  if (lines > mostLines)
    unsure.push(`Only the first ${mostLines} of ${lines} lines stand here; a recipe holds no more.`);
  if (draft.steps.length > mostSteps)
    unsure.push(
      `Only the first ${mostSteps} of ${draft.steps.length} steps stand here; a recipe holds no more.`,
    );
  return { ...draft, unsure, sections: firstLines(draft.sections), steps: draft.steps.slice(0, mostSteps) };
};

const firstLines = (sections: readonly Section[]): Section[] => {
  const kept: Section[] = [];
  let left = mostLines;
  for (const { title, lines } of sections) {
    if (left > 0 && lines.length > 0) kept.push({ title, lines: lines.slice(0, left) });
    left -= lines.length;
  }
  return kept;
};
