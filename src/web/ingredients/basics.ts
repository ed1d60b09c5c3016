import type { Kitchen } from '../../core/facts/kitchen.js';
import { normalName } from '../../core/names.js';
import { namesOf, sectionsOf } from '../../store/names.js';
import type { Db } from '../../store/schema.js';
import { text } from '../form.js';
import { pageOf } from '../links.js';
import { inOrder } from '../listing.js';
import type { Part } from './part.js';

export type BasicsAround = { sections: string[]; namesake: { name: string; href: string } | undefined };

/** What it is called, where it stands in the shop, how it is bought. */
export const basics: Part<BasicsAround> = {
  name: 'basics',
  title: 'Name and shop',
  button: 'Save',
  form: ({ name, section, frozen, notBought, note }) => ({
    name,
    section,
    frozen: frozen ? 'on' : '',
    notBought: notBought ? 'on' : '',
    note,
  }),
  read: (reading) => {
    const read = {
      name: reading.words('name', 'Name', 'Enter what the ingredient is called.'),
      section: reading.text('section'),
      frozen: reading.ticked('frozen'),
      notBought: reading.ticked('notBought'),
      note: reading.text('note'),
    };
    return (before) => ({ ...before, ...read });
  },
  around: async ({ key }, form, { db, kitchen }) => ({
    sections: await sectionsIn(db, kitchen),
    namesake: namesakeOf((await namesOf(db)).ingredients, text(form, 'name'), key),
  }),
};

/** The shop's sections there are, in the kitchen's order. */
export const sectionsIn = async (db: Db, { locale }: Pick<Kitchen, 'locale'>): Promise<string[]> =>
  inOrder(
    (await sectionsOf(db)).map((name) => ({ name })),
    locale,
  ).map(({ name }) => name);

/** The ingredient that has a name already, with a link to it. */
export const namesakeOf = (
  all: readonly { key: string; name: string }[],
  name: string,
  own: string,
): { name: string; href: string } | undefined => {
  const wanted = normalName(name);
  const other = wanted && all.find((one) => one.key !== own && normalName(one.name) === wanted);
  return other ? { name: other.name, href: pageOf('ingredient', other.key) } : undefined;
};
