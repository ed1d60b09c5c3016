import type { Line } from '../../core/facts/recipe.js';
import { share } from '../../core/flour.js';
import type { Rational } from '../../core/quantity/rational.js';
import { inWords, type Shown } from '../../core/quantity/show.js';
import type { ScaledLine } from '../../core/sheets/scaled-line.js';
import { type Html, html } from '../html.js';
import { withMend } from '../mends.js';
import { typedRange } from '../typed.js';
import { atThePot } from '../wary.js';

/** What stands below a line: how it scaled where not straight and what to be wary of; what it lacks, for screens. */
export type LineNotes = { said: string; open: Html[] };

const ways: Partial<Record<Line['scales'], string>> = {
  herb: 'herb',
  chilli: 'hot chilli',
  batch: 'once a batch',
};

/** The notes of a line; `shown` says an amount of it as its page shows it. */
export const lineNotes = (
  { need, straight, over, open }: ScaledLine,
  shown: (amount: Rational) => Shown,
): LineNotes => {
  const { line } = need;
  const said = [
    need.unit !== share && line.unit === share && `${shareInWords(line)} of the flour`,
    straight && over && `whole ones: ${inWords(shown(over), 'of one')} left over`,
    straight && !over && `${ways[line.scales]}: straight it would be ${inWords(shown(straight))}`,
    need.wary && `scaled far: ${atThePot[need.wary]}`,
  ].filter((one) => typeof one === 'string');
  return { said: said.join('; '), open: open.map((one) => missing(one, need.ingredient?.name)) };
};

const shareInWords = ({ amount, amountTo }: Line): string => `${typedRange(amount, amountTo)} %`;

/** What is missing, without the name that stands above it; the reference's figure; and where to add it. */
const missing = ({ problem, offer }: ScaledLine['open'][number], name = ''): Html => {
  const { sentence, href, mend } = withMend(problem);
  const rest = sentence.startsWith(`${name}: `) ? sentence.slice(name.length + 2) : sentence;
  const said = rest.charAt(0).toUpperCase() + rest.slice(1);
  return html`<b class="loud">${said}</b>${offer && ` ${offer}`} <a href="${href}">${mend}</a>`;
};
