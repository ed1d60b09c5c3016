/** Full stops that end no sentence. */
const abbreviations = new Set(
  'approx min mins hr hrs tsp tbsp oz lb lbs fl e.g i.e no pt qt deg temp ca c approx. etc vs sec secs'.split(
    ' ',
  ),
);

/** A text cut into sentences, each with its end mark. */
export const sentencesOf = (text: string): string[] => {
  const sentences: string[] = [];
  let start = 0;
  for (let at = 0; at < text.length; at++) {
    if (!'.!?;'.includes(text[at]!)) continue;
    const next = text[at + 1];
    if (next !== undefined && !/\s/.test(next)) continue;
    if (text[at] === '.' && joins(text, start, at)) continue;
    sentences.push(text.slice(start, at + 1).trim());
    start = at + 1;
  }
  const rest = text.slice(start).trim();
  if (rest) sentences.push(rest);
  return sentences.filter(Boolean);
};

/** "30 min. more" goes on; "30 min. Serve" does not. */
const joins = (text: string, start: number, at: number): boolean => {
  const word = /[\p{L}.]{1,8}$/u.exec(text.slice(Math.max(start, at - 8), at))?.[0] ?? '';
  const follows = /^\s*(\S)/.exec(text.slice(at + 1, at + 10))?.[1];
  return abbreviations.has(word.toLowerCase()) && follows !== undefined && !/\p{Lu}/u.test(follows);
};

const numbered = /^\s*(?:step\s*)?(\d{1,3})\s*[.):-]\s+(?=\S)/i;
const bullet = /^\s*(?:[•·▪◦‣●*–-]|\[[ xX]?\])\s+/u;
const stepWord = /^\s*step\s+\d{1,3}\s*[.:]?\s*$/i;

/** "1. Mix. 2. Shape.": numbered steps that run on in one line. */
const inSteps = (line: string): string[] => {
  if (!/^\s*1[.)]\s/.test(line)) return [line];
  const steps: string[] = [];
  let start = 0;
  for (let next = 2; next < 100; next++) {
    const marks = [`. ${next}. `, `. ${next}) `]
      .map((mark) => line.indexOf(mark, start))
      .filter((at) => at >= 0);
    if (marks.length === 0) break;
    const end = Math.min(...marks) + 1;
    steps.push(line.slice(start, end));
    start = end + 1;
  }
  return [...steps, line.slice(start)];
};

/** A heading or one step's text, in order. Numbers of a list go; lines that go on belong to the step before. */
export const paragraphsOf = (text: string): string[] => {
  const lines = text.replace(/\r\n?/g, '\n').split('\n').flatMap(inSteps);
  const list = lines.some((line) => numbered.test(line));
  const blocks = lines.some(
    (line, at) => at > 0 && line.trim() === '' && lines[at - 1]!.trim() !== '' && at < lines.length - 1,
  );
  const found: string[] = [];
  let open = false;
  for (const line of lines) {
    if (line.trim() === '' || stepWord.test(line)) {
      open = false;
      continue;
    }
    const own = numbered.test(line) || bullet.test(line);
    const plain = line.replace(numbered, '').replace(bullet, '').trim();
    const heading = isHeading(plain);
    const goesOn = open && !own && !heading && (list || blocks);
    if (goesOn) found.push(`${found.pop()} ${plain}`);
    else found.push(plain);
    open = !heading;
  }
  return found;
};

/** "For the sauce:", a short line that ends in a colon. */
export const isHeading = (line: string): boolean =>
  /^[^.!?]{2,60}:$/.test(line) || /^for the [\p{L} ]{2,40}$/iu.test(line);
