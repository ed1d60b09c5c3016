import type { EatenAverage, HoursAverage } from '../averages.js';
import type { Sheet } from './sheet.js';

/** What the last parties taught for the next, as tables. */
export const averagesSheet = (
  eaten: readonly EatenAverage[],
  kinds: readonly HoursAverage[],
  lines: readonly HoursAverage[],
): Sheet => ({
  sheet: 'averages',
  title: 'What the last parties taught',
  about: {},
  get tables() {
    const hours = (name: string, title: string, list: readonly HoursAverage[]) => ({
      name,
      title,
      columns: [
        { key: 'kind', label: 'Kind' },
        { key: 'name', label: 'Line' },
        { key: 'perTen', label: 'Hours for ten guests', unit: 'h' },
        { key: 'parties', label: 'Parties' },
      ],
      rows: list.map(({ kind, name: of, perTen, parties }) => ({
        kind,
        name: of,
        perTen: perTen.toString(),
        parties: String(parties),
      })),
    });
    return [
      {
        name: 'eaten',
        title: 'Portions eaten',
        columns: [
          { key: 'recipe', label: 'Dish' },
          { key: 'aGuest', label: 'Portions a guest' },
          { key: 'share', label: 'Of the portions of all who came', unit: '%' },
          { key: 'parties', label: 'Parties' },
          { key: 'ranOut', label: 'Of which nothing was left' },
        ],
        rows: eaten.map(({ name, aGuest, share, parties, ranOut }) => ({
          recipe: name,
          aGuest: aGuest.toString(),
          share: share.toString(),
          parties: String(parties),
          ranOut: String(ranOut),
        })),
      },
      hours('kinds', 'Hours by kind of cost', kinds),
      hours('lines', 'Hours by line', lines),
    ];
  },
  problems: [],
  foot: [restsOn],
});

const restsOn =
  'Each rests on the last three done parties that noted it and who came: all portions, or hours, over all guests. What a party cooks over is added on top. Nothing of it is used unasked.';
