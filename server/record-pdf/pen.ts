import { createRequire } from 'node:module';
import type PDFDocument from 'pdfkit';

export const FACE = { plain: 'plain', bold: 'bold' } as const;

export interface Look {
  readonly fill: string | undefined;
  readonly line: string | undefined;
  readonly lineWidth: number;
  readonly dash: readonly number[];
}

export type Outline =
  | { readonly path: string }
  | { readonly circle: readonly [number, number, number] }
  | { readonly rect: readonly [number, number, number, number] };

export interface Letters {
  readonly x: number;
  /** Of the base line. */
  readonly y: number;
  readonly size: number;
  readonly isBold: boolean;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly hasHalo: boolean;
  readonly color: string;
}

export interface Faces {
  readonly plain: Uint8Array;
  readonly bold: Uint8Array;
}

/** Lines or rows of dots over a shape, in the drawing's own dots. */
export interface Hatch {
  readonly every: number;
  readonly angleDegrees: number;
  readonly lineWidth: number;
  readonly dots: boolean;
}

/** One step of a group's transform. */
export interface Move {
  readonly name: 'translate' | 'scale' | 'rotate';
  readonly by: readonly number[];
}

/** A hatch reaches over any drawing, whichever way it is turned; its shape cuts it off. */
const HATCH_REACH = 700;

/** What a document of pdfkit knows of the face that is set; not among its declared types. */
interface FaceSet {
  readonly _font: { readonly font: { hasGlyphForCodePoint(code: number): boolean } };
}

/** Read with the first document: it takes a fifth of a start, and most starts print nothing. */
function newDocument(options: PDFKit.PDFDocumentOptions): PDFKit.PDFDocument {
  const Document = createRequire(import.meta.url)('pdfkit') as typeof PDFDocument;
  return new Document(options);
}

/** The few strokes that pictures are drawn with, on a page of a document. */
export class Pen {
  readonly doc: PDFKit.PDFDocument;
  readonly #known = new Map<string, boolean>();

  readonly #say: (text: string) => string;

  constructor(
    { faces, say }: { readonly faces: Faces; readonly say: (text: string) => string },
    options: PDFKit.PDFDocumentOptions,
  ) {
    this.#say = say;
    this.doc = newDocument({ ...options, bufferPages: true, autoFirstPage: false });
    this.doc.registerFont(FACE.plain, Buffer.from(faces.plain));
    this.doc.registerFont(FACE.bold, Buffer.from(faces.bold));
  }

  /** In the language of the document. A letter that the typeface lacks is printed as a question mark: nothing on paper is ever silently missing. */
  printable(text: string): string {
    return [...this.#say(text.replace(/\s+/g, ' '))]
      .map((letter) => (this.#has(letter) ? letter : '?'))
      .join('');
  }

  #has(letter: string): boolean {
    const known = this.#known.get(letter);
    if (known !== undefined) return known;
    this.doc.font(FACE.plain);
    const has = (this.doc as unknown as FaceSet)._font.font.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0);
    this.#known.set(letter, has);
    return has;
  }

  within(place: { readonly x: number; readonly y: number; readonly scale: number }, draw: () => void): void {
    this.doc.save().translate(place.x, place.y).scale(place.scale);
    draw();
    this.doc.restore();
  }

  /** What is drawn until `leaveGroup` is moved so. */
  enterGroup(moves: readonly Move[]): void {
    this.doc.save();
    for (const { name, by } of moves) {
      const [first = 0, second] = by;
      if (name === 'translate') this.doc.translate(first, second ?? 0);
      else if (name === 'scale') this.doc.scale(first, second ?? first);
      else this.doc.rotate(first);
    }
  }

  leaveGroup(): void {
    this.doc.restore();
  }

  /** Fills a shape with lines or dots, as vectors. */
  hatch(of: Outline, { every, angleDegrees, lineWidth, dots }: Hatch): void {
    const { doc } = this;
    doc.save();
    this.#trace(of);
    doc.clip();
    doc.rotate(angleDegrees).lineWidth(lineWidth);
    if (dots) doc.lineCap('round').dash(0.01, { space: every });
    for (let at = -HATCH_REACH; at <= HATCH_REACH; at += every)
      doc.moveTo(at, -HATCH_REACH).lineTo(at, HATCH_REACH);
    doc.stroke(dots ? '#000000' : '#555555').restore();
  }

  #trace(of: Outline): void {
    if ('path' in of) this.doc.path(of.path);
    else if ('circle' in of) this.doc.circle(...of.circle);
    else this.doc.rect(...of.rect);
  }

  shape(of: Outline & Look): void {
    const { doc } = this;
    const { fill, line, lineWidth, dash } = of;
    if (fill === undefined && line === undefined) return;
    doc.save().lineWidth(lineWidth);
    if (dash.length > 0) doc.dash(dash[0] ?? 1, { space: dash[1] ?? dash[0] ?? 1 });
    this.#trace(of);
    if (fill !== undefined && line !== undefined) doc.fillAndStroke(fill, line);
    else if (fill !== undefined) doc.fill(fill);
    else doc.stroke(line);
    doc.restore();
  }

  letters(text: string, { x, y, size, isBold, anchor, hasHalo, color }: Letters): void {
    const { doc } = this;
    const printed = this.printable(text);
    doc.font(isBold ? FACE.bold : FACE.plain).fontSize(size);
    const width = doc.widthOfString(printed);
    const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
    if (hasHalo) doc.rect(left - 1, y - size * 0.8, width + 2, size).fill('#ffffff');
    doc.fillColor(color).text(printed, left, y, { lineBreak: false, baseline: 'alphabetic' });
  }
}
