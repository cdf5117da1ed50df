import type { Language } from '../../views/language/language.ts';
import { textIn } from '../../views/language/speak.ts';
import { turns } from '../long/turns.ts';
import { drawSvg, sizeOf } from './draw-svg.ts';
import { FACE, type Faces, Pen } from './pen.ts';

export type PaperSize = 'a4' | 'letter';

export interface Column {
  readonly label: string;
  /** Share of the width. */
  readonly share: number;
  readonly isNumber?: boolean;
}

export interface Cell {
  readonly text: string;
  readonly isBold?: boolean;
  /** Outside its limit. */
  readonly isBoxed?: boolean;
}

/** A photo as JPEG or PNG; null for one that is named and not shown. */
export interface Image {
  readonly image: Uint8Array | null;
  readonly title: string;
  readonly text: string;
}

interface PaperOptions {
  readonly size: PaperSize;
  readonly title: string;
  readonly printedAtMs: number;
  readonly faces: Faces;
  readonly language: Language;
  /** Shouted at the head of each page; blank once the job is closed. */
  readonly shout: string;
  /** Along the foot of each page. */
  readonly foot: readonly string[];
}

/** Points. The left margin is the binding edge, 20 mm. */
const EDGE = { left: 57, right: 34, top: 40, bottom: 62 } as const;
const TABLE_LETTERS = 8.5;
const TEXT_LETTERS = 10;
const CELL_ROOM = 3;
/** A heading never stands alone at the foot of a page. */
const HEADING_ROOM = 110;

/** A document that is filled from top to bottom; what does not fit begins a new page. */
export class Paper {
  readonly #pen: Pen;
  readonly #options: PaperOptions;
  readonly #pieces: Uint8Array[] = [];
  readonly #done: Promise<void>;
  #y = 0;

  constructor(options: PaperOptions) {
    const { size, title, printedAtMs, faces, language } = options;
    const say = textIn(language);
    this.#options = options;
    const pen = { faces, say };
    this.#pen = new Pen(pen, {
      size: size === 'a4' ? 'A4' : 'LETTER',
      margins: { ...EDGE },
      info: {
        Title: say(title),
        Creator: 'Yokeside',
        Producer: 'Yokeside',
        CreationDate: new Date(printedAtMs),
      },
      lang: language,
      displayTitle: true,
    });
    this.#done = new Promise((resolve, reject) => {
      this.#pen.doc.on('data', (piece: Uint8Array) => this.#pieces.push(piece));
      this.#pen.doc.on('end', () => resolve());
      this.#pen.doc.on('error', reject);
    });
    this.newPage();
  }

  get #width(): number {
    return this.#pen.doc.page.width - EDGE.left - EDGE.right;
  }

  newPage(): void {
    const { doc } = this.#pen;
    doc.addPage();
    this.#y = EDGE.top;
    const { shout } = this.#options;
    if (shout === '') return;
    doc.rect(EDGE.left, this.#y, this.#width, 30).lineWidth(3).stroke('#000000');
    doc.font(FACE.bold).fontSize(22).fillColor('#000000');
    doc.text(this.#pen.printable(shout), EDGE.left, this.#y + 3, {
      width: this.#width,
      align: 'center',
      lineBreak: false,
    });
    this.#y += 40;
  }

  /** Begins a new page where so much does not fit any more. */
  #need(height: number): void {
    if (this.#y + height > this.#pen.doc.page.height - EDGE.bottom) this.newPage();
  }

  /** What comes next begins a new page where it has not so much room. */
  room(height: number): void {
    this.#need(height);
  }

  heading(text: string, size = 13): void {
    this.#need(HEADING_ROOM);
    this.#y += 6;
    this.#put(text, { isBold: true, size });
  }

  text(text: string, { isBold = false }: { readonly isBold?: boolean } = {}): void {
    if (text !== '') this.#put(text, { isBold, size: TEXT_LETTERS });
  }

  #put(text: string, { isBold, size }: { readonly isBold: boolean; readonly size: number }): void {
    const { doc } = this.#pen;
    const printed = this.#pen.printable(text);
    doc.font(isBold ? FACE.bold : FACE.plain).fontSize(size);
    const height = doc.heightOfString(printed, { width: this.#width });
    this.#need(height);
    doc.fillColor('#000000').text(printed, EDGE.left, this.#y, { width: this.#width });
    this.#y += height + 4;
  }

  /** Pictures side by side, each as wide as its share allows. */
  pictures(svgs: readonly string[]): void {
    const width = this.#width / 2 - 8;
    const drawn = svgs.map((svg) => ({ svg, scale: width / sizeOf(svg).width, size: sizeOf(svg) }));
    const heights = drawn.map(({ scale, size }) => scale * size.height);
    this.#need(Math.max(0, ...heights));
    for (const [at, { svg, scale }] of drawn.entries())
      drawSvg(this.#pen, svg, { x: EDGE.left + at * (width + 16), y: this.#y, scale });
    this.#y += Math.max(0, ...heights) + 6;
  }

  /** Photos side by side, each with its words below it, on one page. */
  images(all: readonly Image[]): void {
    const { doc } = this.#pen;
    const width = this.#width / 2 - 8;
    const box = { width, height: width * 0.75 };
    const hasImage = all.some(({ image }) => image !== null);
    const words = all.map((one) => ({
      ...one,
      titleHeight: this.#textHeight(one.title, { width, isBold: true }),
      textHeight: this.#textHeight(one.text, { width, isBold: false }),
    }));
    const below = Math.max(...words.map(({ titleHeight, textHeight }) => titleHeight + textHeight));
    this.#need((hasImage ? box.height + 4 : 0) + below + 8);
    const top = this.#y + (hasImage ? box.height + 4 : 0);
    for (const [at, { image, title, text, titleHeight }] of words.entries()) {
      const x = EDGE.left + at * (width + 16);
      if (image !== null) doc.image(Buffer.from(image), x, this.#y, { fit: [box.width, box.height] });
      doc.font(FACE.bold).fontSize(TABLE_LETTERS).fillColor('#000000');
      doc.text(this.#pen.printable(title), x, top, { width });
      doc.font(FACE.plain).text(this.#pen.printable(text), x, top + titleHeight, { width });
    }
    this.#y = top + below + 8;
  }

  #textHeight(text: string, { width, isBold }: { readonly width: number; readonly isBold: boolean }): number {
    const { doc } = this.#pen;
    doc.font(isBold ? FACE.bold : FACE.plain).fontSize(TABLE_LETTERS);
    return text === '' ? 0 : doc.heightOfString(this.#pen.printable(text), { width });
  }

  /** One picture below its heading, its words beside it, as wide as its share allows; none of it is parted. */
  figure(svg: string, { title, words, share }: { title: string; words: string; share: number }): void {
    const { doc } = this.#pen;
    const width = this.#width * share;
    const { width: across, height: down } = sizeOf(svg);
    const scale = width / across;
    this.#need(scale * down + 40);
    this.heading(title);
    drawSvg(this.#pen, svg, { x: EDGE.left, y: this.#y, scale });
    const left = EDGE.left + width + 12;
    doc.font(FACE.plain).fontSize(TABLE_LETTERS).fillColor('#000000');
    doc.text(this.#pen.printable(words), left, this.#y + 4, { width: this.#width - width - 12 });
    this.#y += scale * down + 8;
  }

  table(columns: readonly Column[], rows: readonly (readonly Cell[])[]): void {
    const add = this.#rowsUnder(columns);
    for (const cells of rows) add(cells);
    this.#y += 8;
  }

  /** The same for a table that may be long: others are let in while it is drawn. */
  async longTable(columns: readonly Column[], rows: readonly (readonly Cell[])[]): Promise<void> {
    const [add, turn] = [this.#rowsUnder(columns), turns()];
    for (const cells of rows) {
      add(cells);
      await turn();
    }
    this.#y += 8;
  }

  /** Draws the head of a table. @returns what draws a row of it, below the head again where a page is full */
  #rowsUnder(columns: readonly Column[]): (cells: readonly Cell[]) => void {
    const head = columns.map(({ label }) => ({ text: label }));
    if (columns.some(({ label }) => label !== '')) this.#row(columns, { cells: head, isHead: true });
    return (cells) => {
      if (this.#y + this.#heightOf(columns, cells) > this.#pen.doc.page.height - EDGE.bottom) {
        this.newPage();
        this.#row(columns, { cells: head, isHead: true });
      }
      this.#row(columns, { cells, isHead: false });
    };
  }

  #widthOf(columns: readonly Column[], at: number): number {
    const all = columns.reduce((sum, { share }) => sum + share, 0);
    return (this.#width * (columns[at]?.share ?? 0)) / all;
  }

  #heightOf(columns: readonly Column[], cells: readonly Cell[]): number {
    const { doc } = this.#pen;
    const heights = cells.map(({ text, isBold = false }, at) => {
      doc.font(isBold ? FACE.bold : FACE.plain).fontSize(TABLE_LETTERS);
      const width = this.#widthOf(columns, at) - 2 * CELL_ROOM;
      return text === '' ? 0 : doc.heightOfString(this.#pen.printable(text), { width });
    });
    return Math.max(TABLE_LETTERS + 2, ...heights) + 2 * CELL_ROOM;
  }

  #row(
    columns: readonly Column[],
    { cells, isHead }: { readonly cells: readonly Cell[]; readonly isHead: boolean },
  ): void {
    const { doc } = this.#pen;
    const height = this.#heightOf(columns, cells);
    this.#need(isHead ? 3 * height : height);
    let x: number = EDGE.left;
    for (const [at, cell] of cells.entries()) {
      const width = this.#widthOf(columns, at);
      this.#cell(cell, { x, width, height, isRight: columns[at]?.isNumber ?? false });
      x += width;
    }
    this.#y += height;
    doc.moveTo(EDGE.left, this.#y).lineTo(EDGE.left + this.#width, this.#y);
    doc.lineWidth(isHead ? 1 : 0.4).stroke(isHead ? '#000000' : '#888888');
  }

  #cell(
    { text, isBold = false, isBoxed = false }: Cell,
    at: { readonly x: number; readonly width: number; readonly height: number; readonly isRight: boolean },
  ): void {
    if (text === '') return;
    const { doc } = this.#pen;
    const { x, width, height, isRight } = at;
    doc.font(isBold ? FACE.bold : FACE.plain).fontSize(TABLE_LETTERS);
    const printed = this.#pen.printable(text);
    doc.fillColor('#000000').text(printed, x + CELL_ROOM, this.#y + CELL_ROOM, {
      width: width - 2 * CELL_ROOM,
      align: isRight ? 'right' : 'left',
    });
    if (isBoxed)
      doc
        .rect(x + 1, this.#y + 1, width - 2, height - 2)
        .lineWidth(1.4)
        .stroke('#000000');
  }

  /** Numbers the pages and closes the document. */
  async finish(): Promise<Uint8Array<ArrayBuffer>> {
    const { doc } = this.#pen;
    const { count } = doc.bufferedPageRange();
    for (let page = 0; page < count; page += 1) {
      doc.switchToPage(page);
      this.#foot(`page ${page + 1} of ${count}`);
    }
    doc.end();
    await this.#done;
    return new Uint8Array(Buffer.concat(this.#pieces));
  }

  #foot(page: string): void {
    const { doc } = this.#pen;
    const top = doc.page.height - EDGE.bottom + 8;
    // Below the margin a text would begin a page of its own.
    doc.page.margins.bottom = 0;
    doc
      .moveTo(EDGE.left, top)
      .lineTo(EDGE.left + this.#width, top)
      .lineWidth(1.4)
      .stroke('#000000');
    doc.font(FACE.plain).fontSize(8).fillColor('#000000');
    const said = (text: string) => this.#pen.printable(text);
    const [first = '', ...more] = this.#options.foot;
    doc.text(`${said(first)}, ${said(page)}`, EDGE.left, top + 4, {
      width: this.#width,
      lineBreak: false,
    });
    doc.text(more.map(said).join(', '), EDGE.left, top + 16, { width: this.#width });
  }
}
