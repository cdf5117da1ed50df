import type { Compiled } from '../../../procedures/compile.ts';
import type { Answer, Job } from '../../../procedures/job.ts';
import { fill } from '../../../procedures/say.ts';
import { straightWay } from '../../../procedures/straight-way.ts';
import type { Step } from '../../../procedures/vocabulary.ts';
import { lineWorking, type WorkingView } from './line-working.ts';
import { type LoopView, loopView } from './loop-record.ts';
import { type VerdictView, verdictOf } from './verdicts.ts';
import { clock, given, short } from './words.ts';

export interface Gave {
  readonly label: string;
  readonly value: string;
  /** Words of the person who wrote it. */
  readonly isOwn: boolean;
}

export interface LineView {
  /** Of the step on the job scale; a dash for a card off the straight way. */
  readonly number: string;
  readonly place: number;
  readonly step: string;
  readonly phase: string;
  readonly what: string;
  readonly reading: string;
  readonly verdict: VerdictView;
  readonly who: string;
  readonly when: string;
  readonly more: string;
  /** What was chosen and written on the card besides its readings. */
  readonly gave: readonly Gave[];
  /** A record of the loop that came with it, drawn. */
  readonly loop?: LoopView | null;
  /** How its number and its verdict came about, for whoever asks; null where it rests on no number. */
  readonly working?: () => WorkingView | null;
  readonly correctable: boolean;
  /** A second person may read its gauge again. */
  readonly readable: boolean;
  /** Something noted beside the work, that stands or was struck. */
  readonly isNote?: boolean;
  /** Its size, so that a page keeps its place before it has come. */
  readonly photo?: { readonly widthPx: number; readonly heightPx: number } | null;
  /** The rows of a table that this line stands for, folded under it. */
  readonly rows: readonly {
    readonly place: number;
    readonly reading: string;
    readonly word: string;
    readonly correctable: boolean;
  }[];
}

/** The answered cards, oldest first, each folded to a line. What stands no more is still a line, and says so. */
export function lineViews(job: Job, compiled: Compiled): readonly LineView[] {
  const folded: LineView[] = [];
  for (const line of singleLines(job, compiled)) {
    const last = folded.at(-1);
    if (last !== undefined && last.step === line.step && last.rows.length > 0 && line.rows.length > 0) {
      folded[folded.length - 1] = withRows(last, line);
    } else if (last !== undefined && choseThis(job, { choice: last, line })) {
      folded[folded.length - 1] = withChoice(last, line);
    } else folded.push(line);
  }
  return folded;
}

/** At a hub of a search a check was chosen, and this line is what it showed. */
function choseThis(
  { answers }: Job,
  { choice, line }: { readonly choice: LineView; readonly line: LineView },
): boolean {
  const chosen = answers.find(({ place }) => place === choice.place);
  return (
    chosen?.figures.advisedBest !== undefined &&
    chosen.to === line.step &&
    choice.reading === line.what &&
    answers.find(({ place }) => place === line.place)?.superseded === chosen.superseded
  );
}

/** One line for a check: what it showed, under the number of its hub; who chose it stands behind it. */
function withChoice(choice: LineView, line: LineView): LineView {
  const chosen = {
    label: 'Chosen',
    value: `${choice.who} ${choice.when}, line ${choice.place}`,
    isOwn: false,
  };
  return {
    ...line,
    number: choice.number,
    gave: [chosen, ...choice.gave.filter(({ value }) => value !== line.what), ...line.gave],
  };
}

/** Readings of one table under one line: how many, and the verdict of the last. */
function withRows(table: LineView, row: LineView): LineView {
  const rows = [...table.rows, ...row.rows];
  const stands = rows.filter((one) => one.word !== 'asked again' && one.word !== 'corrected').length;
  return { ...row, rows, place: table.place, reading: `${stands} readings`, correctable: false };
}

/** Every line by itself, in the order in which they were written. */
export function singleLines(job: Job, { definition }: Compiled): readonly LineView[] {
  const way = straightWay(definition, job.facts);
  const numberOf = (step: string) => (way.includes(step) ? String(way.indexOf(step) + 1) : '–');
  return job.answers.map((answer) => {
    const step = definition.steps[answer.step];
    const standing = !answer.superseded;
    const word = answer.superseded ? (answer.corrected ? 'corrected' : 'asked again') : '';
    const isRow = answer.row !== null;
    return {
      number: numberOf(answer.step),
      place: answer.place,
      step: answer.step,
      phase: step?.phase ?? '',
      what: whatOf(answer, { job, definition }),
      reading: saidOf(answer, step),
      verdict: answer.superseded
        ? { mark: 'off-path', word: answer.corrected ? 'corrected' : 'asked again' }
        : togetherToo(lateToo(verdictOf(answer, step), answer), answer),
      who: short(answer.person),
      when: clock(answer.at),
      more: moreOf(answer),
      gave: gaveOf(answer, { job, step }),
      loop: loopView(answer),
      working: () => lineWorking(answer, job),
      correctable:
        !answer.superseded &&
        (answer.act === 'row-read' || (answer.act === 'step-answered' && answer.readings.length > 0)),
      readable:
        standing &&
        answer.act === 'step-answered' &&
        answer.readings.some(({ field, gauge }) => gauge !== null && !field.includes('Before')),
      rows: isRow
        ? [{ place: answer.place, reading: given(answer.readings), word, correctable: standing }]
        : [],
    };
  });
}

const ABOUT: Readonly<Record<string, string>> = {
  'read-again': 'Read again by a second person',
  reviewed: 'Reviewed',
  'review-sent-back': 'Review sent back',
  'radio-confirmed': 'Signature by radio confirmed',
  'radio-denied': 'Signature by radio denied',
};

/** The card that was answered; of a line about another line, what was done with that one. */
function whatOf(
  answer: Answer,
  { job, definition }: { readonly job: Job; readonly definition: Compiled['definition'] },
): string {
  const moved = peopleText(answer);
  if (moved !== '') return moved;
  const about = ABOUT[answer.act];
  const line = job.answers.find((one) => one.place === answer.figures.line);
  const step = definition.steps[(about === undefined ? answer : (line ?? answer)).step];
  const title = step === undefined ? answer.step : fill(step.title, job);
  return about === undefined ? title : `${about}, line ${String(answer.figures.line)}: ${title}`;
}

/** Lines that move locks from one person to another stand at a card and answer none. */
function peopleText({ act, words }: Answer): string {
  if (act === 'handed-over') return `Handed over to ${short(words.incoming ?? '')}, their locks on`;
  if (act !== 'locks-removed') return '';
  const heir =
    words.heir === '' || words.heir === undefined ? 'no lock is left' : `on those of ${short(words.heir)}`;
  return `Locks of ${short(words.owner ?? '')} taken off in their absence: ${heir}`;
}

/** Of a complaint what is complained of stands before its numbers; elsewhere the numbers say it all. */
function saidOf(answer: Answer, step: Step | undefined): string {
  const numbers = given(answer.readings);
  const complaint = answer.words.symptom === undefined ? '' : wordsOf(answer, step);
  if (numbers !== '' && complaint !== '') return `${complaint}: ${numbers}`;
  return numbers || wordsOf(answer, step);
}

function wordsOf(answer: Answer, step: Step | undefined): string {
  if (step?.kind === 'question') return step.choices[answer.outcome]?.label ?? '';
  if (step?.kind !== 'reading') return '';
  if (answer.csv !== undefined) return loopView(answer)?.said ?? '';
  // Of a card that names one thing among many: the others say it with their figures.
  const said = step.asks.find(({ name }) => SAYS_ALL.includes(name));
  if (said?.type !== 'choice') return '';
  return said.choices.find(({ value }) => value === answer.words[said.name])?.label ?? '';
}

/** Fields of finding a fault whose choice is what the line is about. */
const SAYS_ALL: readonly string[] = ['found', 'symptom', 'hubChoice', 'repairToDo'];

/** A line that was written later says so wherever it stands. */
function lateToo(verdict: VerdictView, { late }: Answer): VerdictView {
  return late === null ? verdict : { ...verdict, word: `${verdict.word}, written late` };
}

/** A line that was entered in one go with others says so wherever it stands. */
function togetherToo(verdict: VerdictView, { together }: Answer): VerdictView {
  return together === null ? verdict : { ...verdict, word: `${verdict.word}, entered together` };
}

/** By the labels of the card; what it does not ask for is left out. */
function gaveOf(
  answer: Answer,
  { job, step }: { readonly job: Job; readonly step: Step | undefined },
): readonly Gave[] {
  const asks = step?.kind === 'reading' ? step.asks : [];
  return Object.entries(answer.words).flatMap(([name, word]): readonly Gave[] => {
    const field = asks.find((one) => one.name === name);
    if (word === '') return [];
    if (field === undefined) return name === 'reason' ? [{ label: 'Reason', value: word, isOwn: true }] : [];
    const label = fill(field.label, job);
    if (field.type !== 'choice') return [{ label, value: word, isOwn: true }];
    const chosen = field.choices.find(({ value }) => value === word)?.label;
    return [{ label, value: chosen === undefined ? word : fill(chosen, job), isOwn: false }];
  });
}

function moreOf(answer: Answer): string {
  const gauges = [
    ...new Set(answer.readings.map((reading) => reading.gauge).filter((gauge) => gauge !== null)),
  ];
  const by = answer.readings.find((reading) => reading.readBy !== null)?.readBy;
  return [
    `line ${answer.place}`,
    ...(gauges.length > 0 ? [`gauge ${gauges.join(', ')}`] : []),
    ...(by ? [`read by ${by}`] : []),
    ...(answer.together === null ? [] : [`entered together with the lines from ${answer.together.first} on`]),
    ...(answer.late === null
      ? []
      : [
          `written later: read at ${clock(answer.late.claimedAt)} UTC by its writer’s word, ${answer.late.reason}`,
        ]),
  ].join('; ');
}
