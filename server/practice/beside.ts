/** What an apprentice sees, hears and reads at the open card of a job on the practice bench. */

import { fromSi, preferredUnit, unitFor } from '../../procedures/calculations/units.ts';
import { capital } from '../../procedures/capital.ts';
import { plannedPa, rowPlan } from '../../procedures/cycle-verdict.ts';
import type { Job } from '../../procedures/job.ts';
import { preparing } from '../../procedures/practice/answers/prepare.ts';
import { complaining, complaintOf } from '../../procedures/practice/bench/complaint.ts';
import { foundOnCard } from '../../procedures/practice/bench/found.ts';
import {
  type Output,
  type SeenAtCheck,
  type Shown,
  seenAtCheck,
  USUAL_OUTPUT,
} from '../../procedures/practice/bench/gauges.ts';
import { rowOnRig } from '../../procedures/practice/bench/on-rig.ts';
import { hubOfStep } from '../../procedures/practice/bench/told.ts';
import type { SimulatedValve } from '../../procedures/practice/simulated.ts';
import { say } from '../../procedures/say.ts';
import { type CheckId, checkOf, isCheckId } from '../../procedures/troubleshooting/checks.ts';
import { OPENINGS } from '../../procedures/troubleshooting/openings.ts';
import type { OpenStep, ReadingStep, TableStep } from '../../procedures/vocabulary.ts';
import type { GaugePicture } from '../../views/pictures/gauge.ts';
import { lettingOthersIn } from '../long/turns.ts';
import type { Services } from '../services.ts';
import type { BenchAsked, BenchPanel, BenchRow } from './bench-side.ts';
import { exerciseKind } from './exercise-stream.ts';
import { mayBeTold } from './may-be-told.ts';
import { valveNow } from './simulated-valves.ts';

const NOTHING: BenchPanel = {
  heading: 'The bench',
  lines: [],
  gauges: [],
  rows: [],
  output: null,
  table: '',
  sign: '',
  result: '',
};

/** The panel beside the open card, worked out from exercise and job alone. */
export async function besideCard(
  { log }: Pick<Services, 'log'>,
  { job, around, output }: BenchAsked,
): Promise<BenchPanel> {
  const exercise = await log.state(exerciseKind, job.tag);
  const result = mayBeTold(job, exercise) ? `/practice/jobs/${job.id}/result` : '';
  const step = around.compiled.definition.steps[job.step];
  if (exercise.tag === '' || step === undefined || step.kind === 'end' || job.status !== 'open')
    return { ...NOTHING, result };
  const valve = valveNow(exercise, job);
  await lettingOthersIn(beforehand(step, { job, valve }));
  return { ...panelOf(step, { job, valve, output: output ?? USUAL_OUTPUT }), result };
}

/** What a card shows is worked out of minutes of the valve's time: in steps, with others let in between. */
function* beforehand(step: OpenStep, { job, valve }: Omit<Beside, 'output'>): Generator<void> {
  if (step.kind !== 'reading') return;
  const check = checkOfStep(step);
  if (check !== null && check !== 'loopRecord') yield* preparing(valve, { check, hub: hubOfStep(job.step) });
  else if (asksForComplaint(step)) yield* complaining(valve);
}

interface Beside {
  readonly job: Job;
  readonly valve: SimulatedValve;
  readonly output: Output;
}

function panelOf(step: OpenStep, beside: Beside): BenchPanel {
  if (step.kind === 'hold')
    return {
      ...NOTHING,
      heading: 'A second person on the bench',
      lines: [
        'The bench has a supervisor of its own, who reads the evidence above and signs what is shown safe. At a real valve this is a person, and it is never you.',
      ],
      sign: 'Ask the bench’s supervisor to sign',
    };
  if (step.kind === 'table') return atTable(step, beside);
  if (step.kind !== 'reading') return NOTHING;
  const check = checkOfStep(step);
  return check === null ? atCard(step, beside) : atCheck(check, beside);
}

function checkOfStep({ judge }: ReadingStep<string>): CheckId | null {
  const check = judge.rule === 'faultCheck' ? (judge.with?.check ?? '') : '';
  return isCheckId(check) ? check : null;
}

function asksForComplaint({ judge }: ReadingStep<string>): boolean {
  return judge.rule === 'firstLine';
}

function atCheck(check: CheckId, { job, valve, output }: Beside): BenchPanel {
  if (check === 'loopRecord')
    return {
      ...NOTHING,
      heading: 'What the bench has',
      lines: [
        'A quarter of an hour of the loop of this valve, a row a second, as a historian would give it.',
      ],
      table: `/practice/jobs/${job.id}/loop.csv`,
    };
  const again = job.answers.filter((one) => !one.superseded && one.figures.check === check).length;
  const seen = seenAtCheck(valve, { check, hub: hubOfStep(job.step), again, output });
  return {
    ...NOTHING,
    heading: 'What the bench shows',
    lines: linesOf(check, seen),
    gauges: gaugesOf(seen.shown, job),
    rows: rowsOf(seen.shown, job),
    output: seen.followsOutput
      ? { percent: seen.outputPercent, address: `/practice/jobs/${job.id}/gauges` }
      : null,
  };
}

/** A row of a stroke on test air, as gauge and scale show it once the air has come to rest. */
function atTable(step: TableStep<string>, { job, valve }: Beside): BenchPanel {
  const plan = rowPlan(step, job, job.step);
  if (plan === undefined) return NOTHING;
  if (job.sheet.actuatorKind !== 'diaphragm' || !ON_TEST_AIR.includes(job.procedure))
    return { ...NOTHING, lines: [OWN_VALUES] };
  const shown = rowOnRig(valve, {
    plan,
    plannedPa: plannedPa(job.sheet, plan),
    row: (job.tables[job.step] ?? []).length,
  });
  return {
    ...NOTHING,
    heading: 'What the bench shows',
    lines: [
      `The air was brought to this setting from ${plan.direction === 'up' ? 'below' : 'above'}, without passing it, and stands.`,
    ],
    gauges: gaugesOf(shown, job),
    rows: rowsOf(shown, job),
  };
}

/** Procedures whose table is a stroke by test air. */
const ON_TEST_AIR: readonly string[] = [
  'stroke-check',
  'first-commissioning',
  'packing-renewal',
  'valve-overhaul',
];

const SOME_OWN =
  'What stands below is there to be found. The bench does not simulate the rest of this card: write values of your own.';

const OWN_VALUES =
  'The bench does not simulate this card. Write values of your own, as you would read them; the card judges them like any other.';

function linesOf(check: CheckId, { found, cannotTell, followsOutput }: SeenAtCheck): readonly string[] {
  const { outcomes } = checkOf(check);
  return [
    ...(found === null ? [] : [`You find: ${outcomes[found] ?? found}.`]),
    ...(cannotTell ? ['As the valve stands nothing can be told here.'] : []),
    ...(followsOutput
      ? ['The operator sets the output that you ask for; the gauges come to rest before you read them.']
      : []),
  ];
}

function atCard(step: ReadingStep<string>, { job, valve }: Beside): BenchPanel {
  const complaint = asksForComplaint(step) ? complaintOf(valve) : null;
  const { found, shown, isOwn } = foundOnCard(job, { step, complaint, valve });
  if (found.length === 0) return { ...NOTHING, lines: isOwn ? [OWN_VALUES] : [] };
  const numbers = rowsOf(shown, job);
  const inNumbers = new Set(numbers.map(({ name }) => name));
  const told = found
    .filter(({ name }) => !inNumbers.has(name))
    .map(({ name, label, text, entry }) => ({ name, label, text, entry, hasGauge: false }));
  return {
    ...NOTHING,
    heading: 'What you find on the bench',
    lines: [
      ...(complaint === null ? [] : [`The operator says: “${OPENINGS[complaint.opening].words}.”`]),
      ...(isOwn ? [SOME_OWN] : []),
    ],
    gauges: gaugesOf(shown, job),
    rows: [...told, ...numbers],
  };
}

function gaugesOf(shown: readonly Shown[], job: Job): readonly GaugePicture[] {
  return shown.flatMap((one): readonly GaugePicture[] => {
    if (!hasGauge(one)) return [];
    const { fullSi, valueSi, name, label, dimension } = one;
    const scale = dimension === 'length';
    return [
      {
        id: `gauge-${name}`,
        label,
        kind: scale ? 'scale' : 'dial',
        fraction: Math.min(1, Math.max(0, valueSi / fullSi)),
        text: textOf(one, job),
        from: '0',
        to: scale ? '100 %' : endOf(one, job),
      },
    ];
  });
}

type OnGauge = Shown & { readonly fullSi: number };

function hasGauge(one: Shown): one is OnGauge {
  return one.fullSi !== null && one.fullSi > 0;
}

function endOf(one: OnGauge, { sheet }: Job): string {
  const unit = preferredUnit(one.dimension, sheet.units);
  return `${Math.round(fromSi({ valueSi: one.fullSi, unit }))} ${unitFor(unit).label}`;
}

/** Travel on the scale of the yoke, in per cent of its length, as the field takes it. */
function textOf({ dimension, valueSi, fullSi }: Shown, { sheet }: Job): string {
  if (dimension === 'percent') return `${valueSi} %`;
  if (dimension === 'length') return `${((100 * valueSi) / (fullSi ?? sheet.travelM)).toFixed(1)} %`;
  return say({ valueSi, dimension, units: sheet.units });
}

function rowsOf(shown: readonly Shown[], job: Job): readonly BenchRow[] {
  return shown.map((one) => {
    const text = textOf(one, job);
    return { name: one.name, label: capital(one.label), text, entry: text, hasGauge: hasGauge(one) };
  });
}
