import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Faces } from './pen.ts';

const PACKAGE = '@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin';

let faces: Faces | null = null;

/** The typeface of the pages, for embedding; read once. */
export function pdfFaces(): Faces {
  const { resolve } = createRequire(import.meta.url);
  faces ??= {
    plain: readFileSync(resolve(`${PACKAGE}-400-normal.woff`)),
    bold: readFileSync(resolve(`${PACKAGE}-600-normal.woff`)),
  };
  return faces;
}
