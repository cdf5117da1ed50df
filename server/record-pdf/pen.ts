import PDFDocument from 'pdfkit';

export const FACE = { plain: 'plain', bold: 'bold' } as const;

export interface Look {
  readonly fill: string | undefined;
  readonly line: string | undefined;
  readonly lineWidth: number;
  readonly dash: readonly number[];
}

type Outline =
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

/** What a document of pdfkit knows of the face that is set; not among its declared types. */
interface FaceSet {
  readonly _font: { readonly font: { hasGlyphForCodePoint(code: number): boolean } };
}

/** The few strokes that pictures are drawn with, on a page of a document. */
export class Pen {
  readonly doc: PDFKit.PDFDocument;
  readonly #known = new Map<string, boolean>();

  constructor(faces: Faces, options: PDFKit.PDFDocumentOptions) {
    this.doc = new PDFDocument({ ...options, bufferPages: true, autoFirstPage: false });
    this.doc.registerFont(FACE.plain, Buffer.from(faces.plain));
    this.doc.registerFont(FACE.bold, Buffer.from(faces.bold));
  }

  /** A letter that the typeface lacks is printed as a question mark: nothing on paper is ever silently missing. */
  printable(text: string): string {
    return [...text.replace(/\s+/g, ' ')].map((letter) => (this.#has(letter) ? letter : '?')).join('');
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

  shape(of: Outline & Look): void {
    const { doc } = this;
    const { fill, line, lineWidth, dash } = of;
    if (fill === undefined && line === undefined) return;
    doc.save().lineWidth(lineWidth);
    if (dash.length > 0) doc.dash(dash[0] ?? 1, { space: dash[1] ?? dash[0] ?? 1 });
    if ('path' in of) doc.path(of.path);
    else if ('circle' in of) doc.circle(...of.circle);
    else doc.rect(...of.rect);
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
