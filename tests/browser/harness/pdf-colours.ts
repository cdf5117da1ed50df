import { inflateSync } from 'node:zlib';

/**
 * Colours other than black, white and greys that a printed file sets, as `r g b`; a printer without colour would turn
 * them into a grey of its own choice.
 */
export function coloursOfPdf(pdf: Buffer): readonly string[] {
  const text = pdf.toString('latin1');
  const colours = new Set<string>();
  for (const { 0: head, index } of text.matchAll(/\/Filter\s*\/FlateDecode[^>]*>>\s*stream\r?\n/g)) {
    const start = index + head.length;
    const drawn = inflateSync(pdf.subarray(start, text.indexOf('endstream', start))).toString('latin1');
    for (const [, r = '', g = '', b = ''] of drawn.matchAll(
      /(?<![\d.])([\d.]+) ([\d.]+) ([\d.]+) (?:rg|RG)\b/g,
    ))
      if (r !== g || g !== b) colours.add(`${r} ${g} ${b}`);
  }
  return [...colours];
}
