/** Bullets, boxes to tick and the numbers of a list say nothing of the line itself. */
const bullet = /^(?:[\p{So}•·‣»›*†–—-]+|>(?=\s)|\[[ xX]?\]|o(?= [\d½⅓⅔¼¾⅛]))\s*/u;
const listNumber = /^(?:\d{1,2}[.)]|[a-z]\))\s+(?=[\d½⅓⅔¼¾⅛])/;

/** Raised and lowered figures of a fraction, "¹⁄₂", as plain ones. */
const raised = /(\d?)([⁰¹²³⁴-⁹]+)\s?[⁄/∕]\s?([₀-₉]+|\d+)/g;
const plainFraction = (_: string, whole: string, above: string, below: string): string =>
  `${whole && `${whole} `}${above.normalize('NFKC')}/${below.normalize('NFKC')}`;

/** One line as it is read: one kind of space, nothing invisible, no bullet. */
export const tidy = (text: string): string =>
  text
    .normalize('NFC')
    .replace(/[\u00ad\u200b-\u200f\u2028-\u202e\u2060-\u2064\ufeff]|[\ufe00-\ufe0f]/gu, '')
    .replace(/[\s\p{Cc}]+/gu, ' ')
    .trim()
    .replace(raised, plainFraction)
    .replace(/(?<=\p{L})[⁰¹²³⁴-⁹]+(?=[\s,]|$)/gu, '')
    .replace(/\bhalf-(?=dozen\b)/gi, 'half ')
    .replace(/(\d)·(?=\d)/g, '$1.')
    .replace(/\((?:e?s)\)/g, '')
    .replace(bullet, '')
    .replace(bullet, '')
    .replace(listNumber, '')
    .trim();
