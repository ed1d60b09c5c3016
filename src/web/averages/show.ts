import type { HoursAverage } from '../../core/averages.js';
import { averagesSheet } from '../../core/sheets/averages-sheet.js';
import { answerSheet } from '../answer.js';
import { printedNow } from '../coming.js';
import { kindWords } from '../cost-lines/choices.js';
import { type Format, formatFor } from '../format.js';
import type { Answerer } from '../house.js';
import { pageOf } from '../links.js';
import { averagesNow } from './parties.js';
import { partiesInWords, ranOutWords } from './words.js';

type HoursRow = { perTen: string; name: string; parties: string };
export type AveragesPage = {
  eaten: { aGuest: string; name: string; href: string; share: string; parties: string; ranOut: string }[];
  kinds: HoursRow[];
  lines: HoursRow[];
  foot: readonly string[];
  paper: { left: string; middle: string; right: string; foot: string };
};

/** What the last parties taught for the next: portions eaten of a dish, hours for ten guests. */
export const showAverages: Answerer = async (request, reply) => {
  const { kitchen, server } = request;
  const f = formatFor(kitchen);
  const { eaten, kinds, lines } = await averagesNow(server.house.db);
  const dishes = [...eaten.values()].sort((a, b) => a.name.localeCompare(b.name, kitchen.locale));
  const sheet = averagesSheet(dishes, kinds, lines);
  return answerSheet(reply, sheet, 'averages/show', {
    title: sheet.title,
    nav: 'Costing',
    eaten: dishes.map((one) => ({
      aGuest: one.aGuest.toFixed(2),
      name: one.name,
      href: pageOf('recipe', one.recipe),
      share: f.percent(one.share, 0),
      parties: partiesInWords(one.parties, f),
      ranOut: ranOutWords(one, f),
    })),
    kinds: kinds.map((one) => hoursRow(one, kindWords[one.kind], f)),
    lines: lines.map((one) => hoursRow(one, one.name, f)),
    foot: sheet.foot,
    paper: { left: kitchen.name, middle: '', right: sheet.title, foot: printedNow(request) },
  });
};

const hoursRow = ({ perTen, parties }: HoursAverage, name: string, f: Format): HoursRow => ({
  perTen: `${perTen.toFixed(1)} h`,
  name,
  parties: partiesInWords(parties, f),
});
