import type { UnitId } from '../../../procedures/calculations/unit-table.ts';
import { fromSi, unitFor } from '../../../procedures/calculations/units.ts';
import { type Guarded, guarded } from '../../../procedures/cycle-verdict.ts';
import type { Answer, Job } from '../../../procedures/job.ts';
import type { JobRecord } from './schema.ts';
import { WORDS } from './verdict-words.ts';

type Result = JobRecord['results'][number];

/** Below 1 l/min a leak is said in ml/min. */
const LITRE_PER_MIN = 1e-3 / 60;

/**
 * What came through the seat, against what this class lets through. One test alone stands as left, since the valve goes
 * back as it was tested; of several, the first is as found and the last as left.
 */
export function leakResults({ answers }: Job): readonly Result[] {
  const tests = answers.filter((one) => !one.superseded && isLeakTest(one));
  const last = tests.at(-1);
  if (last === undefined) return [];
  const first = tests.length > 1 ? (tests[0] ?? null) : null;
  const ofFlow = typeof last.figures.leakM3PerS === 'number';
  return [ofFlow ? flowRow({ first, last }) : bubbleRow({ first, last })];
}

function isLeakTest({ figures }: Answer): boolean {
  return typeof figures.leakM3PerS === 'number' || typeof figures.bubblesPerMin === 'number';
}

interface Tests {
  readonly first: Answer | null;
  readonly last: Answer;
}

function flowRow({ first, last }: Tests): Result {
  const limit = numberIn(last, 'allowedM3PerS') ?? 0;
  const unit: UnitId = limit < LITRE_PER_MIN ? 'ml/min' : 'l/min';
  const text = (valueSi: number | null) => (valueSi === null ? '' : String(round(fromSi({ valueSi, unit }))));
  const of = (answer: Answer | null): Guarded | null => {
    const value = answer === null ? null : numberIn(answer, 'leakM3PerS');
    const uncertainty = answer === null ? null : numberIn(answer, 'uncertaintyM3PerS');
    return value === null || uncertainty === null ? null : guarded({ value, limit, uncertainty });
  };
  const give = text(numberIn(last, 'uncertaintyM3PerS'));
  return {
    label: `seat leakage, ${unitFor(unit).label}`,
    asFound: first === null ? '' : text(numberIn(first, 'leakM3PerS')),
    asLeft: text(numberIn(last, 'leakM3PerS')),
    limit: text(limit),
    ...verdicts({ first: of(first), last: of(last) }, `; measured to ${give} either way`),
  };
}

function bubbleRow({ first, last }: Tests): Result {
  const limit = numberIn(last, 'bubblesAllowedPerMin') ?? 0;
  const of = (answer: Answer | null): Guarded | null => {
    const value = answer === null ? null : numberIn(answer, 'bubblesPerMin');
    return value === null ? null : value <= limit ? 'inside' : 'outside';
  };
  const text = (value: number | null) => (value === null ? '' : String(round(value)));
  return {
    label: 'seat leakage, bubbles a minute',
    asFound: first === null ? '' : text(numberIn(first, 'bubblesPerMin')),
    asLeft: text(numberIn(last, 'bubblesPerMin')),
    limit: text(limit),
    ...verdicts({ first: of(first), last: of(last) }, '; counted, by the table of bubbles'),
  };
}

function verdicts(
  { first, last }: { readonly first: Guarded | null; readonly last: Guarded | null },
  how: string,
): Pick<Result, 'foundOutside' | 'leftOutside' | 'verdict'> {
  const words = [
    ...(first === null ? [] : [`as found ${WORDS[first]}`]),
    ...(last === null ? [] : [`as left ${WORDS[last]}`]),
  ];
  return {
    foundOutside: first === 'outside',
    leftOutside: last === 'outside',
    verdict: `${words.join(', ')}${how}`,
  };
}

function numberIn({ figures }: Answer, name: string): number | null {
  const value = figures[name];
  return typeof value === 'number' ? value : null;
}

/** Three figures: no leak is known better. */
function round(value: number): number {
  return Number(value.toPrecision(3));
}
