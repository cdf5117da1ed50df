/** What people write in several ways and means the same, brought to the one way that the rest reads. */

/** Halves to 64ths, as on an inch scale or of a turn: their decimals are exact. */
const FRACTION =
  /(?<![\d.,/\p{L}])(?:(\d{1,3})[\s-]+)?(\d{1,2})\s*[/\u2044]\s*(2|4|8|16|32|64)(?=\s*(?:["\u2033\u201d]|(?:in|inch|inches|turns?|revs?)\b))/giu;
const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** Behind a whole number each is a decimal of two digits at most, whatever the unit. */
const DECIMALS: Readonly<Record<string, string>> = { '½': '.5', '¼': '.25', '¾': '.75' };

/** `lock no. 22` and `40 Nm x 12`: what only leads to the number; `mA 12.0`: a unit before it. */
const BESIDE: readonly (readonly [RegExp, string])[] = [
  [/(\block\s+)(?:no\.?|nr\.?|number|#)\s*(?=\d)/gi, '$1'],
  [
    /(^\s*|[,;]\s*)(psi|bar|kpa|ma)\s+([+\-\u2212]?\d[\d.,]*)(?=[\s;]|$)(?!\s*(?:psi|bar|kpa|ma|mm|in)\b|\s*["%])/gi,
    '$1$3 $2',
  ],
  [/(?<=[\p{L}\d])\s+[x\u00d7]\s+(?=\d)/giu, ' '],
];

const WHO = '(?:it|they|he|she)';
const VERB = '(?:does|do|did|is|are|was|were|has|have)';
/** `yes, it does` and `no, it doesn't` say one thing; `yes, it doesn't` says two, and stays as it is. */
const ECHOES: readonly (readonly [RegExp, string])[] = [
  [
    new RegExp(`\\b(yes|yep|yeah|y)[\\s,]+${WHO}\\s+${VERB}\\b(?!\\s*(?:not\\b|n['\\u2019]t\\b))`, 'gi'),
    '$1',
  ],
  [new RegExp(`\\b(no|nope|n)[\\s,]+${WHO}\\s+${VERB}(?:\\s+not\\b|n['\\u2019]t\\b)`, 'gi'), '$1'],
];

/** `9.5,50`: behind a decimal point a comma only parts; where three digits stand between, it may be either. */
const COMMA_BEHIND_POINT = /(?<![\d.,])(\d+\.(?:\d{1,2}|\d{4,})),(?=\d)/g;

/** `9 and a half`: said behind a whole number, before its unit or alone. */
const AND_PARTS: readonly (readonly [RegExp, string])[] = [
  [/(?<![\d.,/\p{L}])(\d{1,3})\s+and\s+(?:a|one)?\s*half\b/giu, '$1.5'],
  [/(?<![\d.,/\p{L}])(\d{1,3})\s+and\s+(?:a|one)\s+quarter\b/giu, '$1.25'],
  [/(?<![\d.,/\p{L}])(\d{1,3})\s+and\s+three\s+quarters\b/giu, '$1.75'],
];

/**
 * @example tidyText('49½ %') // '49.5 %'
 * @example tidyText('9 and a half psi') // '9.5 psi'
 * @example tidyText('9 psi 3/8"') // '9 psi 0.375"'
 * @example tidyText('no, it doesn’t') // 'no'
 */
export function tidyText(text: string): string {
  let tidy = text.replaceAll(
    /(\d)([½¼¾])/g,
    (_, whole: string, mark: string) => whole + (DECIMALS[mark] ?? mark),
  );
  for (const [pattern, by] of BESIDE) tidy = tidy.replaceAll(pattern, by);
  tidy = tidy.replaceAll(
    /(\d?)([½¼¾⅛⅜⅝⅞])/g,
    (_, whole: string, mark: string) => `${whole}${whole === '' ? '' : ' '}${VULGAR[mark] ?? mark}`,
  );
  tidy = tidy.replaceAll(FRACTION, (met, whole: string | undefined, top: string, bottom: string) => {
    const part = Number(top) / Number(bottom);
    return part > 0 && part < 1 ? String(Number(whole ?? 0) + part) : met;
  });
  for (const [pattern, by] of [...AND_PARTS, ...ECHOES]) tidy = tidy.replaceAll(pattern, by);
  return tidy.replaceAll(COMMA_BEHIND_POINT, '$1 , ');
}
