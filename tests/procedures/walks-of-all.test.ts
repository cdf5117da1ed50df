import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { auditJob } from '../../procedures/audit.ts';
import { evolve, type JobDraft, NO_JOB } from '../../procedures/evolve.ts';
import { PROCEDURES } from '../../procedures/served.ts';
import type { ServedProcedure } from '../../procedures/served-procedure.ts';
import { Refusal } from '../../safety/refusal.ts';
import { DEMO_VALVES } from '../../server/demo/demo-valves.ts';
import { answersFor, jobOn, playOne } from '../builders/answers.ts';
import {
  type Act,
  act,
  type JobRun,
  OTHER_TECHNICIAN,
  type Person,
  SUPERVISOR,
  TECHNICIAN,
} from '../builders/jobs.ts';
import { aSheetOf } from '../builders/sheets.ts';
import { checkAct, checkStop } from '../builders/walk-checks.ts';

/** With `YOKESIDE_LONG=1` all procedures together see more than 100,000 acts. */
const WALKS = process.env.YOKESIDE_LONG === '1' ? 200 : 6;
const ACTS = 60;
const HOUR_MS = 3_600_000;

/** Valves of several kinds: the first that a procedure is offered for is walked on. */
const SHEETS = [
  {},
  { secondSupplyHighPa: '20', secondSupplyPoint: 'IA-214-2' },
  { bypassPoint: '' },
  { springHeldBy: 'case', adjusterThread: '' },
  {
    positioner: 'pneumatic',
    positionerRisingSignalLoads: 'bottom',
    positionerRelays: 'one',
    electricalV: '24',
    electricalPoint: 'EB-1',
  },
  ...DEMO_VALVES,
].map((texts) => aSheetOf(texts));

type Move =
  | { readonly kind: 'play' }
  | { readonly kind: 'answer' | 'back'; readonly salt: number }
  | { readonly kind: 'sign' | 'sendBack' | 'park' | 'takeUp' | 'stop' | 'age' };

const someMove: fc.Arbitrary<Move> = fc.oneof(
  { weight: 14, arbitrary: fc.constant({ kind: 'play' as const }) },
  {
    weight: 4,
    arbitrary: fc.record({ kind: fc.constantFrom('answer' as const, 'back' as const), salt: fc.nat(40) }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constantFrom(
        'sign' as const,
        'sendBack' as const,
        'park' as const,
        'takeUp' as const,
        'stop' as const,
        'age' as const,
      ),
    }),
  },
);

const PEOPLE: readonly Person[] = [TECHNICIAN, TECHNICIAN, OTHER_TECHNICIAN, SUPERVISOR];

/** Another choice than the first on every field, or nothing at all. */
function astray(run: JobRun, salt: number): Readonly<Record<string, string>> {
  const step = run.compiled.definition.steps[run.job.step];
  if (step?.kind === 'question') {
    const choices = Object.keys(step.choices);
    return { choice: choices[salt % choices.length] ?? '', reason: 'because' };
  }
  if (step?.kind !== 'reading') return {};
  const good = answersFor(run.job, { step });
  const other = step.asks.flatMap((field) =>
    field.type === 'choice' ? [[field.name, field.choices[salt % field.choices.length]?.value ?? '']] : [],
  );
  return { ...good, ...Object.fromEntries(other as [string, string][]) };
}

function meant(run: JobRun, move: Exclude<Move, { kind: 'play' }>): Act | null {
  switch (move.kind) {
    case 'answer':
      return { kind: 'answer', given: astray(run, move.salt) };
    case 'back': {
      const { answers } = run.job;
      return { kind: 'go-back', to: answers[move.salt % Math.max(1, answers.length)]?.step ?? '' };
    }
    case 'sign':
      return { kind: 'sign', shownDigest: run.shownDigest };
    case 'sendBack':
      return { kind: 'send-back', reason: 'not clear', disposition: 'again' };
    case 'park':
      return { kind: 'park', reason: 'shift ends' };
    case 'takeUp':
      return { kind: 'take-up' };
    case 'stop':
      return { kind: 'make-safe', reason: 'stop' };
    default:
      return null;
  }
}

function tryMove(
  run: JobRun,
  { move, person }: { readonly move: Move; readonly person: Person },
): JobDraft | null {
  const before = run.job;
  if (move.kind === 'age') run.nowMs += 5 * HOUR_MS;
  try {
    if (move.kind === 'play')
      return run.job.status === 'parked' ? act(run, { kind: 'take-up' }) : playOne(run);
    const one = meant(run, move);
    return one === null ? null : act(run, one, person);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    expect(run.job).toBe(before);
    return null;
  }
}

const walks = fc.array(fc.record({ move: someMove, who: fc.nat(PEOPLE.length - 1) }), {
  minLength: ACTS,
  maxLength: ACTS,
});

function placesOf(procedure: ServedProcedure) {
  return (['line', 'bench'] as const).flatMap((place) => {
    const sheet = SHEETS.find((one) => procedure.whyNot(one, place) === null);
    return sheet === undefined ? [] : [{ place, sheet }];
  });
}

describe('[SAF-03] [SAF-04] [SAF-05] [SAF-09] [SAF-10] Whatever people do on a job of any procedure', () => {
  test.each(PROCEDURES.map((procedure) => [procedure.definition.title, procedure] as const))(
    '%s: no hold is passed unsigned, nobody is exposed, no job ends locked, and a stop is always taken',
    (_, procedure) => {
      const places = placesOf(procedure);
      const count = { taken: 0, refused: 0 };
      fc.assert(
        fc.property(fc.constantFrom(...places), walks, ({ place, sheet }, walk) => {
          const run = jobOn(procedure, { place, sheet });
          for (const { move, who } of walk) {
            if (run.job.status === 'closed') break;
            const person = PEOPLE[who] ?? TECHNICIAN;
            const before = { ...run, entries: [...run.entries] };
            const draft = tryMove(run, { move, person });
            count[draft === null ? 'refused' : 'taken'] += 1;
            if (draft !== null) {
              const signer = draft.kind === 'hold-signed' && move.kind === 'play' ? SUPERVISOR : person;
              checkAct({
                before: { ...before, nowMs: run.nowMs - 60_000 },
                after: run,
                draft,
                person: signer,
              });
            }
            checkStop(run);
          }
          expect(run.entries.reduce(evolve, NO_JOB)).toEqual(run.job);
          expect(auditJob(run.entries, run.compiled)).toEqual([]);
        }),
        { numRuns: WALKS },
      );
      if (process.env.YOKESIDE_LONG === '1') console.log(procedure.definition.id, JSON.stringify(count));
      expect(count.taken).toBeGreaterThan(WALKS * 5);
    },
  );
});
