/** The safety officer's pages as documents for paper; the newest line of the log stands at the foot of each sheet. */
import type { Language } from '../../views/language/language.ts';
import { RULES } from '../audit/exceptions/exception.ts';
import type { AuditFound, Query } from '../pages/audit-query.ts';
import type { PaperAnchor } from '../pages/paper-anchor.ts';
import { shownTime } from '../shown-time.ts';
import { type Cell, type Column, Paper, type PaperSize } from './paper.ts';
import type { Faces } from './pen.ts';

export interface PdfOptions {
  readonly size: PaperSize;
  readonly printedAtMs: number;
  readonly faces: Faces;
  readonly language: Language;
}

/** More would keep the server from others; the table for spreadsheets has all. */
const ROWS_MAX = 1000;
export const PAPER_MOST = { rows: ROWS_MAX, exceptions: ROWS_MAX } as const;

const plain = (text: string): Cell => ({ text });
const bold = (text: string): Cell => ({ text, isBold: true });

function paperOf(
  title: string,
  { anchor, ...options }: PdfOptions & { readonly anchor: PaperAnchor },
): Paper {
  const { plant, printedAt, printedBy, line, check } = anchor;
  const paper = new Paper({
    ...options,
    title,
    shout: '',
    foot: [
      title,
      plant,
      `printed ${printedAt} by ${printedBy}`,
      `newest line of the log ${line}, check number ${check}`,
    ].filter((text) => text !== ''),
  });
  paper.heading(title, 18);
  return paper;
}

const NO_OFFENCE =
  'None of it is an offence: each has honest reasons, and the rarest here stands first. Quick work alone is never listed.';
const ANCHOR =
  'The check number at the foot is an anchor: the log is tamper-evident against anyone who cannot also change the anchors. Keep this paper where nobody who can write to the server can change it. A letter that this typeface lacks is printed as a question mark.';

export interface AuditOnPaper extends AuditFound {
  readonly query: Query;
  readonly anchor: PaperAnchor;
}

/** What is worth a question, then sign-offs, isolations and locks, then how each rule goes. */
export async function auditPdf(
  { anchor, query, ...found }: AuditOnPaper,
  options: PdfOptions,
): Promise<Uint8Array<ArrayBuffer>> {
  const paper = paperOf('Audit', { ...options, anchor });
  paper.text(
    `${found.jobs} jobs opened from ${found.from} ${found.to === '' ? 'on' : `to ${found.to}`}. ${narrowed(query)}`,
  );
  await questions(paper, found);
  await rows(paper, found);
  paper.heading('How these are found');
  paper.table(
    [
      { label: 'what', share: 1 },
      { label: 'what counts', share: 2.4 },
    ],
    Object.values(RULES).map(({ says, how }) => [bold(says), plain(how)]),
  );
  paper.text(ANCHOR);
  return await paper.finish();
}

/** @example narrowed({ kind: 'lock', person: 't1' }) // 'Lines of kind lock, person t1.' */
function narrowed({ from: _, to: __, page: ___, ...query }: Query): string {
  const given = Object.entries(query).filter(([name, value]) => value !== '' && name !== 'paper');
  return given.length === 0 ? '' : `Only ${given.map(([name, value]) => `${name} ${value}`).join(', ')}.`;
}

async function questions(
  paper: Paper,
  { rules, exceptions, exceptionCount, site }: AuditFound,
): Promise<void> {
  paper.heading('Worth a question');
  paper.text(exceptions.length === 0 ? 'Nothing in these jobs.' : NO_OFFENCE);
  const counted: readonly Column[] = [
    { label: 'what', share: 5 },
    { label: 'jobs with it', share: 1, isNumber: true },
    { label: 'lines', share: 1, isNumber: true },
  ];
  if (rules.length > 0)
    paper.table(
      counted,
      rules.map(({ says, jobs, of, entries }) => [
        bold(says),
        plain(`${jobs} of ${of}`),
        plain(String(entries)),
      ]),
    );
  const columns: readonly Column[] = [
    { label: 'what', share: 2 },
    { label: 'where, when', share: 1.6 },
    { label: 'lines', share: 1 },
    { label: 'figures', share: 2.6 },
  ];
  if (exceptions.length > 0)
    await paper.longTable(
      columns,
      exceptions.map(({ says, job, tag, at, lines, what }) => [
        bold(says),
        plain(`job ${job}, ${tag}, ${shownTime(at)}`),
        plain(lines.join(', ')),
        plain(what),
      ]),
    );
  more(paper, exceptionCount);
  if (site.length === 0) return;
  paper.heading('Of the whole site');
  paper.table(
    [
      { label: 'what', share: 2 },
      { label: 'when', share: 1 },
      { label: 'figures', share: 2 },
    ],
    site.map(({ says, at, what }) => [bold(says), plain(shownTime(at)), plain(what)]),
  );
}

async function rows(paper: Paper, { rows: latest, count }: AuditFound): Promise<void> {
  paper.heading('Sign-offs, isolations, locks');
  if (count === 0) paper.text('Nothing fits.');
  const columns: readonly Column[] = [
    { label: 'when', share: 1.1 },
    { label: 'what', share: 2.2 },
    { label: 'shown by', share: 2.6 },
    { label: 'who, at which screen', share: 1.5 },
    { label: 'job, line, valve, procedure', share: 1.8 },
  ];
  const shown = latest.map((row) => [
    plain(shownTime(row.at)),
    bold(`${row.kind}: ${row.about === '' ? '' : `${row.about}, `}${row.what}`),
    plain(row.proof),
    plain(`${row.name}, ${row.screen}`),
    plain(`job ${row.job}, line ${row.line}, ${row.tag}, ${row.title}`),
  ]);
  if (shown.length > 0) await paper.longTable(columns, shown);
  more(paper, count);
}

function more(paper: Paper, count: number): void {
  if (count > ROWS_MAX)
    paper.text(
      `The first ${ROWS_MAX} of ${count} are printed: narrow the days, or save the table, which has all.`,
      {
        isBold: true,
      },
    );
}

export interface JobLogOnPaper {
  readonly job: string;
  readonly tag: string;
  readonly title: string;
  readonly lines: readonly {
    readonly line: number;
    readonly at: string;
    readonly name: string;
    readonly screen: string;
    readonly kind: string;
    readonly step: string;
    readonly what: string;
    readonly outcome: string;
    readonly check: string;
  }[];
  readonly exceptions: readonly {
    readonly says: string;
    readonly lines: readonly number[];
    readonly what: string;
  }[];
  readonly marks: readonly {
    readonly name: string;
    readonly at: string;
    readonly upTo: number;
    readonly note: string;
  }[];
  readonly unreviewed: number;
  readonly anchor: PaperAnchor;
}

/** The card, and what was done on it where it was not simply answered. @example cardWords({ step: '', kind: 'job opened' }) // 'job opened' */
export function cardWords({ step, kind }: { readonly step: string; readonly kind: string }): string {
  if (step === '') return kind;
  return kind === 'answered' ? step : `${step} (${kind})`;
}

/** One job: what is worth a question, who reviewed it, and every line in its order with its check number. */
export async function jobLogPdf(
  { anchor, ...data }: JobLogOnPaper,
  options: PdfOptions,
): Promise<Uint8Array<ArrayBuffer>> {
  const paper = paperOf(`Log of job ${data.job}, ${data.tag}`, { ...options, anchor });
  paper.text(`${data.title}. ${data.lines.length} lines, in the order in which they were written.`);
  paper.heading('Worth a question');
  if (data.exceptions.length === 0) paper.text('Nothing in this job.');
  else
    paper.table(
      [
        { label: 'what', share: 2 },
        { label: 'lines', share: 1 },
        { label: 'figures', share: 2.6 },
      ],
      data.exceptions.map(({ says, lines, what }) => [bold(says), plain(lines.join(', ')), plain(what)]),
    );
  paper.heading('Reviewed');
  for (const { name, at, upTo, note } of data.marks)
    paper.text(`Up to line ${upTo} by ${name}, ${shownTime(at)}.${note === '' ? '' : ` ${note}`}`);
  paper.text(`${data.unreviewed} lines were not reviewed.`);
  paper.heading('The whole log of the job');
  const columns: readonly Column[] = [
    { label: 'line', share: 0.5, isNumber: true },
    { label: 'when', share: 1.1 },
    { label: 'who, at which screen', share: 1.5 },
    { label: 'card', share: 2 },
    { label: 'what was given', share: 3 },
    { label: 'came out', share: 1 },
    { label: 'check number', share: 1.1 },
  ];
  await paper.longTable(
    columns,
    data.lines.map((line) => [
      plain(String(line.line)),
      plain(shownTime(line.at)),
      plain(`${line.name}, ${line.screen}`),
      bold(cardWords(line)),
      plain(line.what),
      plain(line.outcome),
      plain(line.check),
    ]),
  );
  paper.text(ANCHOR);
  return await paper.finish();
}
