import type { Language } from '../../views/language/language.ts';
import type { JobRecord } from '../jobs/record/schema.ts';
import type { JobSheets } from '../jobs/record.ts';
import { sentenceOf } from './draw-svg.ts';
import { type Cell, type Column, Paper, type PaperSize } from './paper.ts';
import type { Faces } from './pen.ts';
import { photoPages } from './photos.ts';

export interface RecordPdfOptions {
  readonly size: PaperSize;
  readonly printedAtMs: number;
  readonly faces: Faces;
  /** Words of ours are said in it; what people wrote, and what no catalogue has, stays as it is. */
  readonly language?: Language;
  /** Bytes of the photos that are printed, by the line that notes each. */
  readonly photos?: ReadonlyMap<number, Uint8Array>;
}

/** The record of a job as a document for paper: all that its JSON holds, the curves as vectors. */
export async function recordPdf(
  { record, pictures }: JobSheets,
  { size, printedAtMs, faces, language = 'en', photos = new Map() }: RecordPdfOptions,
): Promise<Uint8Array<ArrayBuffer>> {
  const paper = new Paper({
    size,
    printedAtMs,
    faces,
    language,
    title: record.title,
    shout: record.open === '' ? '' : `OPEN: job ${record.job} is not closed`,
    foot: [
      `${record.tag}, ${record.title}`,
      record.procedure,
      record.plant,
      `opened ${record.openedAt}`,
      record.closedAt === '' ? 'not closed' : `closed ${record.closedAt}`,
      `printed ${record.printedAt}`,
      `check number ${record.log.check}`,
    ],
  });
  summary(paper, record);
  cycles(paper, { record, pictures });
  results(paper, record);
  loops(paper, { record, pictures });
  forces(paper, { record, pictures });
  valveDrawn(paper, { record, section: pictures.section });
  for (const hold of record.holds) holdOf(paper, hold);
  standing(paper, record);
  notes(paper, record);
  photoPages(paper, { photos: record.photos, bytes: photos });
  departures(paper, record);
  ending(paper, record);
  return await paper.finish();
}

const bold = (text: string): Cell => ({ text, isBold: true });
const plain = (text: string): Cell => ({ text });
const even = (...labels: readonly string[]): readonly Column[] =>
  labels.map((label) => ({ label, share: 1 }));

function summary(paper: Paper, record: JobRecord): void {
  paper.heading(record.title, 18);
  paper.text(record.open, { isBold: true });
  paper.text(`${record.about} Opened by ${record.openedBy}, ${record.openedAt}.`);
  if (record.closedAt !== '') paper.text(`Closed ${record.closedAt}: ${record.closedAs}.`);
  paper.text(record.conclusion, { isBold: true });
  for (const { number, foundOn, howFar, rightUntil, lines } of record.gearWrong)
    paper.text(
      `Found wrong since: ${number}, on ${foundOn}: ${howFar}. It was known to be right until ${rightUntil}. Lines ${lines} of this job rest on it.`,
      { isBold: true },
    );
}

function cycles(paper: Paper, { record, pictures }: JobSheets): void {
  for (const [title, table] of [
    ['As found', record.asFound],
    ['As left', record.asLeft],
  ] as const) {
    if (table === null) continue;
    paper.heading(`${title}: ${table.caption}`);
    const columns = table.groups.flatMap(({ label, columns: names }) =>
      names.map((name) => ({ label: `${label} ${name}`.trim(), share: 1, isNumber: true })),
    );
    const rows = table.rows.map(({ cells }) =>
      cells.map(({ text, strong = false, boxed = false }) => ({ text, isBold: strong, isBoxed: boxed })),
    );
    paper.table(columns, rows);
    paper.text(table.notes.join(' '));
  }
  paper.text(record.asLeftNote);
  const curves = [pictures.asFound, pictures.asLeft].filter((svg) => svg !== null);
  if (curves.length > 0) paper.pictures(curves);
}

function results(paper: Paper, record: JobRecord): void {
  paper.heading('Results');
  const columns: readonly Column[] = [
    { label: 'result', share: 3 },
    { label: 'as found', share: 1, isNumber: true },
    { label: 'as left', share: 1, isNumber: true },
    { label: 'limit', share: 1.2, isNumber: true },
    { label: 'verdict, by the reading and its uncertainty', share: 4 },
  ];
  const rows = record.results.map((row) => [
    plain(row.label),
    { text: row.asFound, isBold: true, isBoxed: row.foundOutside },
    { text: row.asLeft, isBold: true, isBoxed: row.leftOutside },
    plain(row.limit),
    plain(row.verdict),
  ]);
  if (rows.length > 0) paper.table(columns, rows);
  else if (record.search.length > 0) pairs(paper, record.search);
  else paper.text('No result of a stroke or a seat test was read: the lines of this job tell what was done.');
  pairs(paper, record.turns);
  paper.heading('Signatures');
  const signs = [
    ...record.doneBy.map(({ name, at }) => [plain('work done by'), bold(name), plain(at)]),
    ...record.holds.map(({ hold, state, by, at }) => [plain(`${hold}, ${state}`), bold(by), plain(at)]),
    ...(record.takenBack === null
      ? []
      : [[plain('taken back by'), bold(record.takenBack.by), plain(record.takenBack.at)]]),
  ];
  paper.table(even('what', 'who', 'when'), signs);
}

function forces(paper: Paper, { record, pictures }: JobSheets): void {
  if (record.forces === null || pictures.forces === null) return;
  const { shut, open, rows, more, note } = record.forces;
  const title = 'Force balance at both ends of the travel';
  paper.figure(pictures.forces, { title, words: sentenceOf(pictures.forces), share: 0.6 });
  paper.table(
    [
      { label: 'force', share: 1.2 },
      { label: shut, share: 2, isNumber: true },
      { label: open, share: 2, isNumber: true },
    ],
    rows.map((row) => [plain(row.label), bold(row.shut), bold(row.open)]),
  );
  pairs(paper, more);
  paper.text(note);
}

/** As the page shows it beside the first hold: energies, locks and stem as they stood there; without one, as they stand now. */
function valveDrawn(
  paper: Paper,
  { record, section }: { readonly record: JobRecord; readonly section: string },
) {
  const stood = record.holds.length > 0 ? 'as it stood at the hold' : 'as this job has it';
  const title = `The valve in section, ${stood}`;
  paper.figure(section, { title, words: sentenceOf(section), share: 0.55 });
}

function loops(paper: Paper, { record, pictures }: JobSheets): void {
  record.loops.forEach(({ line, said, struck, rows, table }, at) => {
    paper.heading(`Record of the loop, line ${line}${struck ? ', struck' : ''}`);
    paper.text(said, { isBold: true });
    paper.pictures(pictures.loops[at] ?? []);
    pairs(paper, rows);
    paper.table(
      table.heads.map((label) => ({ label, share: 1, isNumber: true })),
      table.rows.map((cells) => cells.map(plain)),
    );
  });
}

function holdOf(paper: Paper, hold: JobRecord['holds'][number]): void {
  paper.heading(`${hold.hold}: ${hold.title}`);
  if (hold.state === 'not signed') {
    paper.text('Not signed. Name, date, time: ______________________________________________', {
      isBold: true,
    });
    return;
  }
  paper.text(`${hold.state}: ${hold.by}, ${hold.at}, ${hold.screen}.`, { isBold: true });
  paper.text(`${hold.meaning}.`);
  if (hold.restsOn !== '')
    paper.text(`Rests on ${hold.restsOn}${hold.check === '' ? '' : `, check number ${hold.check}`}.`);
  const columns: readonly Column[] = [
    { label: '', share: 0.4 },
    { label: 'energy', share: 2 },
    { label: 'made safe by', share: 3.4 },
    { label: 'was', share: 1, isNumber: true },
    { label: 'shown', share: 1.1, isNumber: true },
    { label: 'gauge', share: 1.2 },
    { label: 'who, when', share: 1.2 },
  ];
  const rows = hold.evidence.map((row) => [
    plain(row.letter),
    plain(row.name),
    plain(row.done === '' ? row.state : `${row.state}: ${row.done}`),
    plain(row.was),
    bold(row.is),
    plain(row.gauge),
    plain(`${row.who} ${row.when}`),
  ]);
  if (rows.length > 0) paper.table(columns, rows);
  paper.text(hold.absent);
}

function standing(paper: Paper, record: JobRecord): void {
  const points = record.points.map(({ title, state, more }) => [plain(title), bold(state), plain(more)]);
  paper.heading('How the holds stand');
  if (points.length > 0) paper.table(even('hold', 'stands', ''), points);
  else paper.text('This procedure has no hold point.');
  paper.heading('People and test gear');
  paper.text(record.people.map(({ id, name }) => `${id}: ${name}.`).join(' '));
  const gear = record.gear.map((item) => [
    bold(item.number),
    plain(item.role),
    plain(item.range),
    plain(item.uncertainty),
    { text: item.due, isBoxed: item.late },
    plain(item.certificate),
  ]);
  paper.table(even('gear', 'for', 'range', 'uncertainty, 95 %', 'due', 'certificate'), gear);
}

function notes(paper: Paper, { findings, parts }: JobRecord): void {
  if (findings.length > 0) {
    paper.heading('Findings');
    const rows = findings.map((one) => [
      plain(String(one.place)),
      bold(one.found),
      plain([one.words, one.struck.toUpperCase()].filter((text) => text !== '').join('. ')),
      plain(`${one.person}, ${one.at}`),
    ]);
    paper.table(noteColumns('found', 'in words'), rows);
  }
  if (parts.length === 0) return;
  paper.heading('Parts put in');
  const rows = parts.map((one) => [
    plain(String(one.place)),
    bold(`${one.quantity} off ${one.part}`),
    plain([marksOf(one), one.struck.toUpperCase()].filter((text) => text !== '').join('. ')),
    plain(`${one.person}, ${one.at}`),
  ]);
  paper.table(noteColumns('part', 'number, batch or serial'), rows);
}

const noteColumns = (what: string, more: string): readonly Column[] => [
  { label: 'line', share: 0.6, isNumber: true },
  { label: what, share: 2.6 },
  { label: more, share: 4 },
  { label: 'who, when', share: 2.6 },
];

function marksOf({ number, batch }: JobRecord['parts'][number]): string {
  return [number === '' ? '' : `number ${number}`, batch === '' ? '' : `batch or serial ${batch}`]
    .filter((text) => text !== '')
    .join(', ');
}

function departures(paper: Paper, record: JobRecord): void {
  paper.heading('Departures and corrections');
  for (const one of record.departures) {
    paper.text(`Line ${one.place}, ${one.at}, ${one.person}: ${one.what}`, { isBold: true });
    if (one.struck !== '') paper.text(`Struck: ${one.struck}. Now: ${one.now}`);
    if (one.reason !== '') paper.text(`Why: ${one.reason}`);
  }
  if (record.departures.length === 0)
    paper.text('None. No reading was corrected, no hold was sent back, nothing was stopped.');
  paper.heading('Cautions that stood on the cards');
  const cautions = record.cautions.map(({ word, hazard, consequence, avoid, stoodBefore }) => [
    { text: word.toUpperCase(), isBold: true, isBoxed: true },
    plain(`${hazard} ${consequence} ${avoid}`),
    plain(stoodBefore),
  ]);
  paper.table(
    [
      { label: 'signal word', share: 1 },
      { label: 'hazard, consequence, how to avoid', share: 5 },
      { label: 'where', share: 1.6 },
    ],
    cautions,
  );
}

function ending(paper: Paper, record: JobRecord): void {
  paper.heading('For the next person');
  pairs(paper, record.next);
  paper.heading('Limits of use');
  for (const line of record.limits) paper.text(line);
  const { line, place, check } = record.log;
  paper.text(
    `Newest line of this job: line ${line} of the log, line ${place} of the job, check number ${check}. Anyone can check it from the export and the check program, without the server. A letter that this typeface lacks is printed as a question mark; the page and the JSON have it.`,
  );
  paper.heading('Every line of this job');
  const columns: readonly Column[] = [
    { label: 'line', share: 0.6, isNumber: true },
    { label: 'what was done', share: 4 },
    { label: 'reading', share: 2 },
    { label: 'verdict', share: 1.6 },
    { label: 'who, when', share: 1.4 },
    { label: '', share: 0.9 },
  ];
  const rows = record.lines.map((row) => [
    plain(String(row.place)),
    plain(row.what),
    { text: row.reading, isBold: true, isBoxed: row.doubt !== '' },
    plain(
      [row.verdict, row.doubt === '' ? '' : `IN DOUBT: ${row.doubt}`]
        .filter((text) => text !== '')
        .join('. '),
    ),
    plain(`${row.who} ${row.when}`),
    plain(row.struck ? 'STRUCK' : ''),
  ]);
  paper.table(columns, rows);
}

function pairs(paper: Paper, rows: JobRecord['next']): void {
  if (rows.length === 0) return;
  paper.table(
    [
      { label: '', share: 1 },
      { label: '', share: 3 },
    ],
    rows.map(({ label, value }) => [plain(label), bold(value)]),
  );
}
