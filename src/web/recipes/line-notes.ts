import type { Line } from '../../core/facts/recipe.js';
import { share } from '../../core/flour.js';
import type { Rational } from '../../core/quantity/rational.js';
import { inWords, type Shown } from '../../core/quantity/show.js';
import type { ScaledLine } from '../../core/sheets/scaled-line.js';
import { type Html, html } from '../html.js';
import { withMend } from '../mends.js';
import { typedAmount } from '../typed.js';
import { atThePot } from '../wary.js';

/** What stands below a line: how it scaled where not straight, what to be wary of, what it lacks and where to add it. */
export type LineNote = { words: Html | string; screen: boolean };

const ways: Partial<Record<Line['scales'], string>> = {
  herb: 'herb',
  chilli: 'hot chilli',
  batch: 'once a batch',
};

/** The notes of a line; `shown` says an amount of it as its page shows it. */
export const lineNotes = (
  { need, straight, over, open }: ScaledLine,
  shown: (amount: Rational) => Shown,
): LineNote[] => {
  const { line } = need;
  const said = [
    need.unit !== share && line.unit === share && `${shareInWords(line)} of the flour`,
    straight && over && `whole ones: ${inWords(shown(over), 'of one')} left over`,
    straight && !over && `${ways[line.scales]}: straight it would be ${inWords(shown(straight))}`,
    need.wary && `scaled far: ${atThePot[need.wary]}`,
  ].filter((one) => typeof one === 'string');
  return [
    ...said.map((words) => ({ words, screen: false })),
    ...open.map(({ problem, offer }) => ({ words: missing(problem, offer), screen: true })),
  ];
};

const shareInWords = ({ amount, amountTo }: Line): string =>
  `${typedAmount(amount)}${amountTo === null ? '' : `–${typedAmount(amountTo)}`} %`;

const missing = (problem: ScaledLine['open'][number]['problem'], offer: string): Html => {
  const { sentence, href, mend } = withMend(problem);
  return html`<span class="loud">${sentence}</span>${offer && ` ${offer}`} <a href="${href}">${mend}</a>`;
};
