import type { Workbook } from '../facts/facts.js';
import { type LabelPhotograph, mostPhotographs } from '../facts/label-photograph.js';
import { photographType } from '../photograph.js';
import { meant } from '../rules/refuse.js';

export type PhotographFault = { path: string[]; sentence: string };

/** Photographs in the one order of the file. */
export const photographsInOrder = (all: readonly LabelPhotograph[]): LabelPhotograph[] =>
  all.toSorted((a, b) => (a.ingredient < b.ingredient ? -1 : a.ingredient > b.ingredient ? 1 : 0));

/** Why photographs of labels cannot be kept, each with its place among them. */
export const photographFaults = ({
  labelPhotographs,
  ingredients,
}: Pick<Workbook, 'labelPhotographs' | 'ingredients'>): PhotographFault[] => {
  const there = new Set(ingredients.map(({ key }) => key));
  const seen = new Set<string>();
  let size = 0;
  const faults = labelPhotographs.flatMap(({ ingredient, type, bytes }): PhotographFault[] => {
    const twice = seen.has(ingredient);
    seen.add(ingredient);
    size += (bytes.length * 3) / 4;
    const say = (field: string, sentence: string) => [{ path: [ingredient, field], sentence }];
    if (!there.has(ingredient))
      return say(
        'ingredient',
        `There is no ingredient with the key "${ingredient}".${meant(ingredient, there)}`,
      );
    if (twice) return say('ingredient', 'This ingredient has two photographs: keep the later one.');
    if (photographType(firstBytes(bytes)) !== type)
      return say('bytes', `These bytes are not a picture of the type ${type}.`);
    return [];
  });
  if (size > mostPhotographs)
    faults.push({ path: [], sentence: 'The photographs together take more than 40 MB: leave some out.' });
  return faults;
};

const firstBytes = (base64: string): Uint8Array => {
  const head = base64.slice(0, 16);
  return head.length % 4 === 0 ? Uint8Array.from(atob(head), (sign) => sign.charCodeAt(0)) : new Uint8Array();
};
