import { traitOf } from '../../core/diets.js';
import type { Known } from '../../core/facts/common.js';
import { type Ingredient, type Trait, traits } from '../../core/facts/ingredient.js';
import { text } from '../form.js';
import type { Part } from './part.js';

export type DietsAround = { facts: { trait: Trait; name: string; byLabel: string }[] };

export const traitNames: Record<Trait, string> = {
  meat: 'meat',
  pork: 'pork',
  beef: 'beef',
  poultry: 'poultry',
  fish: 'fish',
  shellfish: 'shellfish',
  dairy: 'dairy',
  egg: 'egg',
  honey: 'honey',
  gelatine: 'gelatine',
  lard: 'lard',
  suet: 'suet',
  rennet: 'animal rennet',
  alcohol: 'alcohol',
};

/** Facts that diets turn on. */
export const diets: Part<DietsAround> = {
  name: 'diets',
  title: 'What diets turn on',
  button: 'Save these facts',
  form: (doc) => ({
    traits: Object.fromEntries(traits.map((trait) => [trait, doc.traits[trait] ?? 'unknown'])),
  }),
  read: (reading) => {
    const plain = text(reading.form, 'do') === 'plain';
    const read = traits.map((trait): [Trait, Known] => [
      trait,
      plain ? 'no' : reading.oneOf(`traits.${trait}`, ['yes', 'no', 'unknown'], 'unknown'),
    ]);
    // Saying nothing and saying "not known" are one; a form sent back as it was drawn must not swap them.
    const said = (before: Ingredient) =>
      read.filter(([trait, one]) => one !== 'unknown' || before.traits[trait] === one);
    return (before) => ({ ...before, traits: Object.fromEntries(said(before)) });
  },
  around: (doc) => ({
    facts: traits.map((trait) => ({
      trait,
      name: traitNames[trait],
      byLabel:
        traitOf({ ...doc, traits: {} }, trait) === 'unknown' ? '' : traitOf({ ...doc, traits: {} }, trait),
    })),
  }),
};
