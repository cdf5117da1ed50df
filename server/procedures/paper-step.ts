import { preferredUnit, unitFor } from '../../procedures/calculations/units.ts';
import { capital } from '../../procedures/capital.ts';
import type { Job } from '../../procedures/job.ts';
import { FIGURES, type FigureName, isFigureName } from '../../procedures/quantities.ts';
import { asked } from '../../procedures/readings/given.ts';
import { placeholdersIn, sayFigure } from '../../procedures/say.ts';
import type { Field, HoldStep, OpenStep } from '../../procedures/vocabulary.ts';
import { targetUnder, waysOf } from '../../procedures/ways.ts';
import { ACTION_CLASSES } from '../../safety/action-classes.ts';
import { CONDITIONS } from '../../safety/conditions.ts';
import { type Drawn, picturesOnPaper } from '../jobs/view/cards/picture.ts';
import { WAY_WORDS } from './way-words.ts';

/** One card as it is printed, with room for what is written on it. */
export interface PaperStep {
  readonly number: number;
  readonly title: string;
  /** Blank where nobody has to sign it. */
  readonly point: string;
  /** Only come to where another step sends the work here. */
  readonly isAside: boolean;
  readonly caution: string;
  readonly how: string;
  readonly pictures: readonly Drawn[];
  /** Numbers of the valve; blank where they come from what is read on the job. */
  readonly shows: readonly { readonly label: string; readonly value: string }[];
  readonly do: readonly string[];
  readonly asks: readonly PaperAsk[];
  readonly rows: readonly string[];
  /** Blank where nothing is waited for. */
  readonly wait: string;
  readonly hold: PaperHold | null;
  /** Where each answer leads, by number. */
  readonly ways: readonly string[];
}

interface PaperAsk {
  readonly label: string;
  readonly unit: string;
  readonly choices: readonly string[];
}

interface PaperHold {
  readonly criterion: string;
  readonly evidence: readonly string[];
  readonly allows: string;
}

export interface PaperOf {
  readonly id: string;
  readonly job: Job;
  readonly numbers: ReadonlyMap<string, number>;
  readonly straight: readonly string[];
}

/** Room for a number that is not known before the job has been begun. */
const TO_WRITE = '______';

export function paperStep(card: OpenStep, { id, job, numbers, straight }: PaperOf): PaperStep {
  const text = (words: string | undefined) => capital(onPaper(words ?? '', job));
  const { caution } = card;
  return {
    number: numbers.get(id) ?? 0,
    title: text(card.title),
    point: card.kind === 'hold' ? card.point.toUpperCase() : '',
    isAside: !straight.includes(id),
    caution:
      caution === undefined
        ? ''
        : `${caution.word.toUpperCase()}: ${[caution.hazard, caution.consequence, caution.avoid].map(text).join(' ')}`,
    how: text(card.how),
    pictures: picturesOnPaper(card, job),
    shows: (card.shows ?? []).map((name) => ({ label: FIGURES[name].label, value: figureOf(name, job) })),
    do: 'do' in card ? (card.do ?? []).map(text) : [],
    asks:
      card.kind === 'reading'
        ? card.asks.filter((field) => asked(field, job)).map((one) => askOf(one, job))
        : [],
    rows: card.kind === 'table' ? card.rows.map((row) => `${row.percent} % ${row.direction}`) : [],
    wait: card.kind === 'wait' ? sayWait(card.waitS) : '',
    hold: card.kind === 'hold' ? holdOf(card, job) : null,
    ways: wayTexts(card, { job, numbers }),
  };
}

/** As on the card; what only the job's own readings give is left to be written. */
function onPaper(text: string, job: Job): string {
  return placeholdersIn(text).reduce(
    (said, name) => said.replaceAll(`{${name}}`, isFigureName(name) ? figureOf(name, job) || TO_WRITE : name),
    text,
  );
}

function figureOf(name: FigureName, job: Job): string {
  const value = FIGURES[name].of(job);
  return value === null ? '' : sayFigure(name, job);
}

const MINUTE_S = 60;

function sayWait(waitS: number): string {
  return waitS < 2 * MINUTE_S ? `${waitS} seconds` : `${Math.round(waitS / MINUTE_S)} minutes`;
}

function holdOf({ criterion, evidence, allows }: HoldStep<string>, job: Job): PaperHold {
  return {
    criterion: capital(onPaper(criterion, job)),
    evidence: evidence.map((condition) => CONDITIONS[condition].name),
    allows: allows.map((action) => ACTION_CLASSES[action].name).join('; '),
  };
}

function askOf(field: Field, job: Job): PaperAsk {
  const wanted = field.type === 'quantity' && field.wanted !== undefined ? figureOf(field.wanted, job) : '';
  const most =
    field.type === 'quantity' && (field.onCase || field.most !== undefined)
      ? figureOf(field.most ?? 'testAirLimit', job)
      : '';
  const mustBe = field.type === 'text' && field.mustBe !== undefined ? figureOf(field.mustBe, job) : '';
  const said = [
    onPaper(field.label, job),
    ...(wanted === '' ? [] : [`wanted ${wanted}`]),
    ...(most === '' ? [] : [`at most ${most}`]),
    ...(mustBe === '' ? [] : [`must be ${mustBe}`]),
    ...(field.optional ? ['may stay blank'] : []),
  ];
  return {
    label: said.join(', '),
    unit: field.type === 'quantity' ? unitOf(field.dimension, job) : '',
    choices: field.type === 'choice' ? field.choices.map(({ label }) => onPaper(label, job)) : [],
  };
}

function unitOf(dimension: Extract<Field, { type: 'quantity' }>['dimension'], { sheet }: Job): string {
  return dimension === 'travel' ? '%' : unitFor(preferredUnit(dimension, sheet.units)).label;
}

function wayTexts(card: OpenStep, { job, numbers }: Pick<PaperOf, 'job' | 'numbers'>): readonly string[] {
  return waysOf(card).map(({ event, outcome, way }) => {
    const to = numbers.get(targetUnder(way.to, job.facts));
    const said = card.kind === 'question' ? card.choices[outcome ?? '']?.label : outcome;
    const label = event === 'STOP' ? 'make safe and stop' : (said ?? WAY_WORDS[event]);
    return `${onPaper(label, job)}: ${to}`;
  });
}
