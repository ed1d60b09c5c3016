import type { Step } from '../../facts/recipe.js';
import type { Kind } from '../method/kinds.js';
import type { StepReading } from '../method/read-method.js';

/** What a step asks of the kitchen beside its minutes. */
export type Needs = Pick<Step, 'attended' | 'oven' | 'rings' | 'mixers' | 'fridgeShelves'>;
export type Need = keyof Needs;

type Preset = Partial<Needs> & { kind: string };

/** What a step of a kind usually asks; the cook's own figures take its place. */
const presets: Partial<Record<Kind, Preset>> = {
  roast: { kind: 'a roast', attended: false, oven: { heat: 200, tolerance: 10 } },
  bake: { kind: 'a bake', attended: false, oven: { heat: 180, tolerance: 0 } },
  braise: { kind: 'a braise', attended: false, oven: { heat: 160, tolerance: 10 } },
  grill: { kind: 'a grill', attended: true },
  simmer: { kind: 'a simmer', attended: false, rings: 1 },
  boil: { kind: 'boiling', attended: false, rings: 1 },
  steam: { kind: 'steaming', attended: false, rings: 1 },
  fry: { kind: 'frying', attended: true, rings: 1 },
  chill: { kind: 'chilling', attended: false, fridgeShelves: 1 },
  prove: { kind: 'a prove', attended: false },
  rest: { kind: 'a rest', attended: false },
  soak: { kind: 'a soak', attended: false },
  mix: { kind: 'mixing', attended: true },
};

// Two dishes that go through one of these pass on what is in them.
const shared = ['fryer', 'grill'] as const;

/** The equipment food touches that a step's words name. */
export const sharedIn = ({ equipment }: StepReading): string[] =>
  shared.filter((one) => equipment.includes(one));

/**
 * What a step needs: what its words say, and what steps of its kind usually ask where they say nothing. `preset` names
 * those that are usual and not said, `kind` what they are usual for. Heat is in whole degrees Celsius.
 */
export const needsOf = (read: StepReading): { needs: Needs; preset: Need[]; kind: string } => {
  const usual: Preset = presets[read.kind] ?? { kind: '' };
  const oven =
    read.oven !== null || read.equipment.includes('oven') || (read.rings === 0 && usual.oven !== undefined);
  const needs: Needs = {
    attended: read.attended,
    oven: read.oven
      ? { heat: read.oven.heat, tolerance: usual.oven?.tolerance ?? 0 }
      : oven
        ? (usual.oven ?? null)
        : null,
    rings: oven ? read.rings : read.rings || (usual.rings ?? 0),
    mixers: read.mixers,
    fridgeShelves: read.fridgeShelves || (usual.fridgeShelves ?? 0),
  };
  const preset: Need[] = [];
  if (!read.oven && needs.oven) preset.push('oven');
  if (needs.rings !== read.rings) preset.push('rings');
  if (needs.fridgeShelves !== read.fridgeShelves) preset.push('fridgeShelves');
  return { needs, preset, kind: usual.kind };
};
