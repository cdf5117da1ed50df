/** Words as people type them, made comparable: small letters, no articles, no endings. */

/** Said beside a reading without changing what it is. */
const FILLERS = new Set(
  'it its is was the a an at and on of with to reads read reading gives shows now says stands sits my that then i we so got for by as'.split(
    ' ',
  ),
);

const ARTICLES = new Set(['the', 'a', 'an']);

/** One spelling for each way to deny. */
const DENIED: readonly (readonly [RegExp, string])[] = [
  [/[\u2018\u2019]/g, "'"],
  [/\bwon't\b/g, 'will not'],
  [/\b(?:did|does|do|is|was|has|have)n'?t\b/g, 'does not'],
  [/\b(?:can't|cant|can not)\b/g, 'cannot'],
  [/\b(?:did|do|is|was|has|have) not\b/g, 'does not'],
];

/** @example plainText('The STEM, didn’t move!') // 'the stem does not move' */
export function plainText(text: string): string {
  let plain = text.normalize('NFC').toLowerCase();
  for (const [pattern, by] of DENIED) plain = plain.replaceAll(pattern, by);
  return plain
    .replaceAll(/[^\p{L}\p{N}%/'_.+-]+/gu, ' ')
    .replaceAll(/[.'-]+(?= |$)/g, '')
    .trim();
}

/** @example wordsOf('Moves, then rests.') // ['moves', 'then', 'rests'] */
export function wordsOf(text: string): readonly string[] {
  const plain = plainText(text);
  return plain === '' ? [] : plain.split(' ');
}

/** `moved`, `moves` and `move` are one word here. @example stem('moved') // 'mov' */
export function stem(word: string): string {
  return word.replace(/(?<=..[^s])(?:ing|ed|es|s|e)$/, '');
}

/** Words as they are compared: without the article in front. */
export function stems(words: readonly string[]): string {
  const [first = '', ...rest] = words;
  return (ARTICLES.has(first) && rest.length > 0 ? rest : words).map(stem).join(' ');
}

export function isFiller(word: string): boolean {
  return FILLERS.has(word);
}
