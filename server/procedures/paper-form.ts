import { preferredUnit, unitFor } from '../../procedures/calculations/units.ts';
import { capital } from '../../procedures/capital.ts';
import { type Compiled, proofUnder } from '../../procedures/compile.ts';
import { NO_JOB } from '../../procedures/evolve.ts';
import { type Facts, factsOf } from '../../procedures/facts.ts';
import type { Job } from '../../procedures/job.ts';
import { asked } from '../../procedures/readings/given.ts';
import { fill, sayFigure } from '../../procedures/say.ts';
import { numbered } from '../../procedures/sheet-print.ts';
import { straightWay } from '../../procedures/straight-way.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import type { Field, OpenStep } from '../../procedures/vocabulary.ts';
import { targetUnder, waysOf } from '../../procedures/ways.ts';
import { CONDITIONS } from '../../safety/conditions.ts';
import { WAY_WORDS } from './way-words.ts';

export interface PaperStep {
  readonly number: number;
  readonly title: string;
  readonly isHold: boolean;
  /** Only come to where another step sends the work here. */
  readonly isAside: boolean;
  readonly caution: string;
  readonly how: string;
  readonly do: readonly string[];
  readonly asks: readonly {
    readonly label: string;
    readonly unit: string;
    readonly choices: readonly string[];
  }[];
  readonly rows: readonly string[];
  readonly evidence: readonly string[];
  /** Where each answer leads, by number. */
  readonly ways: readonly string[];
}

export interface PaperForm {
  readonly title: string;
  readonly revision: string;
  readonly tag: string;
  readonly phases: readonly { readonly title: string; readonly steps: readonly PaperStep[] }[];
}

interface Asked {
  readonly sheet: ValveSheet;
  readonly place: Facts['place'];
}

/** A procedure for one valve as a form to fill by hand, with the valve's own numbers printed in. Nothing is recorded by it. */
export function paperForm(compiled: Compiled, { sheet, place }: Asked): PaperForm {
  const { definition } = compiled;
  const facts = factsOf(sheet, place);
  const job: Job = { ...NO_JOB, tag: sheet.tag, sheet, facts, procedure: definition.id };
  const numbers = numbered(definition);
  const reach = proofUnder(compiled, facts)?.reach;
  const straight = straightWay(definition, facts);
  const of = { job, numbers, straight };
  return {
    title: definition.title,
    revision: definition.revisions.at(-1)?.letter ?? '',
    tag: sheet.tag,
    phases: definition.phases.flatMap(({ id, title }) => {
      const steps = [...numbers.keys()].flatMap((step): PaperStep[] => {
        const card = definition.steps[step];
        if (card === undefined || card.kind === 'end' || card.phase !== id || reach?.has(step) !== true)
          return [];
        return [paperStep(card, { ...of, id: step })];
      });
      return steps.length === 0 ? [] : [{ title, steps }];
    }),
  };
}

interface Of {
  readonly id: string;
  readonly job: Job;
  readonly numbers: ReadonlyMap<string, number>;
  readonly straight: readonly string[];
}

function paperStep(card: OpenStep, { id, job, numbers, straight }: Of): PaperStep {
  const text = (words: string | undefined) => capital(fill(words ?? '', job));
  const { caution } = card;
  return {
    number: numbers.get(id) ?? 0,
    title: text(card.title),
    isHold: card.kind === 'hold',
    isAside: !straight.includes(id),
    caution:
      caution === undefined
        ? ''
        : `${caution.word.toUpperCase()}: ${[caution.hazard, caution.consequence, caution.avoid].map(text).join(' ')}`,
    how: text(card.how),
    do: 'do' in card ? (card.do ?? []).map(text) : [],
    asks:
      card.kind === 'reading'
        ? card.asks.filter((field) => asked(field, job)).map((one) => askOf(one, job))
        : [],
    rows: card.kind === 'table' ? card.rows.map((row) => `${row.percent} % ${row.direction}`) : [],
    evidence: card.kind === 'hold' ? card.evidence.map((condition) => CONDITIONS[condition].name) : [],
    ways: wayTexts(card, { job, numbers }),
  };
}

function askOf(field: Field, job: Job): PaperStep['asks'][number] {
  const wanted =
    field.type === 'quantity' && field.wanted !== undefined ? `, wanted ${sayFigure(field.wanted, job)}` : '';
  return {
    label: `${fill(field.label, job)}${wanted}`,
    unit: field.type === 'quantity' ? unitOf(field.dimension, job) : '',
    choices: field.type === 'choice' ? field.choices.map(({ label }) => label) : [],
  };
}

function unitOf(dimension: Extract<Field, { type: 'quantity' }>['dimension'], { sheet }: Job): string {
  return dimension === 'travel' ? '%' : unitFor(preferredUnit(dimension, sheet.units)).label;
}

/** A way to nowhere but the next number says nothing that the form does not show. */
function wayTexts(card: OpenStep, { job, numbers }: Pick<Of, 'job' | 'numbers'>): readonly string[] {
  const ways = waysOf(card).map(({ event, outcome, way }) => {
    const to = numbers.get(targetUnder(way.to, job.facts));
    const said = card.kind === 'question' ? card.choices[outcome ?? '']?.label : outcome;
    const label = event === 'STOP' ? 'make safe and stop' : (said ?? WAY_WORDS[event]);
    return { label: fill(label, job), to };
  });
  return ways.map(({ label, to }) => `${label}: ${to}`);
}
