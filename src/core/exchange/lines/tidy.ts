/** Bullets, boxes to tick and the numbers of a list say nothing of the line itself. */
const bullet = /^(?:[•·▪▫◦‣●○■□☐☑☒✓✔➢➤»*†–—-]+|\[[ xX]?\])\s*/u;
const listNumber = /^\d{1,2}[.)]\s+(?=[\d½⅓⅔¼¾⅛])/;

/** One line as it is read: one kind of space, nothing invisible, no bullet. */
export const tidy = (text: string): string =>
  text
    .normalize('NFC')
    .replace(/[\u00ad\u200b-\u200f\u2028-\u202e\u2060-\u2064\ufeff]/g, '')
    .replace(/[\s\p{Cc}]+/gu, ' ')
    .trim()
    .replace(/\((?:e?s)\)/g, '')
    .replace(bullet, '')
    .replace(bullet, '')
    .replace(listNumber, '')
    .trim();
