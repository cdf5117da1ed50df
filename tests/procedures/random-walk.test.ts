import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { auditJob } from '../../procedures/audit.ts';
import type { JobDraft } from '../../procedures/evolve.ts';
import { evolve, NO_JOB } from '../../procedures/evolve.ts';
import type { Json } from '../../procedures/json.ts';
import { Refusal } from '../../safety/refusal.ts';
import {
  type Act,
  act,
  COMPILED,
  type JobRun,
  OTHER_TECHNICIAN,
  openJob,
  type Person,
  playTo,
  SUPERVISOR,
  scripted,
  TECHNICIAN,
} from '../builders/jobs.ts';
import { GEOMETRIES, sheetFor, strokeScript, textsAt } from '../builders/stroke-script.ts';
import { checkAct, checkStop } from '../builders/walk-checks.ts';

const { definition } = COMPILED;
/** The long run tries more than 100,000 acts; its person may ask for more. */
const LONG_WALKS = 2000;
const WALKS = Number(process.env.YOKESIDE_WALKS ?? (process.env.YOKESIDE_LONG === '1' ? LONG_WALKS : 150));
const ACTS = 60;
const HOUR_MS = 3_600_000;

const RUBBISH = [
  '',
  '0',
  '9',
  '22 psi',
  '-3',
  '50 %',
  '104 %',
  'yes',
  'no',
  'flow',
  'no flow',
  'HV-214A',
  'x',
  '1e9',
  '∞',
  'gauge',
  'vent',
  'absent',
  'live',
];

/** What people may do, sensible and not: the script makes a walk come far, the rest makes it stray. */
type Move =
  | { readonly kind: 'script' }
  | {
      readonly kind:
        | 'choose'
        | 'rubbish'
        | 'mixed'
        | 'stale'
        | 'correct'
        | 'back'
        | 'override'
        | 'readAgain'
        | 'round';
      readonly at: number;
      readonly salt: number;
    }
  | { readonly kind: 'sign' | 'sendBack' | 'wait' | 'park' | 'takeUp' | 'proveAgain' | 'stop' | 'age' };

const arbitraryMove: fc.Arbitrary<Move> = fc.oneof(
  { weight: 20, arbitrary: fc.constant({ kind: 'script' as const }) },
  {
    weight: 6,
    arbitrary: fc.record({
      kind: fc.constantFrom(
        'choose',
        'rubbish',
        'mixed',
        'stale',
        'correct',
        'back',
        'override',
        'readAgain',
        'round',
      ),
      at: fc.nat(50),
      salt: fc.nat(50),
    }),
  },
  {
    weight: 4,
    arbitrary: fc.record({
      kind: fc.constantFrom(
        'sign',
        'sendBack',
        'wait',
        'park',
        'takeUp',
        'takeUp',
        'proveAgain',
        'proveAgain',
        'stop',
        'age',
      ),
    }),
  },
);

const PEOPLE: readonly Person[] = [TECHNICIAN, TECHNICIAN, TECHNICIAN, OTHER_TECHNICIAN, SUPERVISOR];

function at<T>(items: readonly T[], index: number): T | undefined {
  return items[index % Math.max(1, items.length)];
}

function fieldNames(run: JobRun): readonly string[] {
  const step = definition.steps[run.job.step];
  if (step?.kind === 'reading') return step.asks.map((field) => field.name);
  if (step?.kind === 'table') return ['signalPa', 'travelM'];
  return ['choice', 'reason'];
}

function rubbish(run: JobRun, salt: number): Readonly<Record<string, string>> {
  return Object.fromEntries(
    fieldNames(run).map((name, index) => [name, at(RUBBISH, salt * 7 + index * 3) ?? '']),
  );
}

function chosen(run: JobRun, salt: number): Readonly<Record<string, string>> {
  const step = definition.steps[run.job.step];
  return step?.kind === 'question'
    ? { choice: at(Object.keys(step.choices), salt) ?? '', reason: 'because' }
    : rubbish(run, salt);
}

function textsNow(run: JobRun): Readonly<Record<string, string>> {
  const { sheet, step, tables } = run.job;
  return textsAt(strokeScript(sheet), { step, row: (tables[step] ?? []).length });
}

const AGAIN = {
  asLeft: 'yes',
  supplyAirAgainPa: '0',
  secondSupplyAgainPa: '0',
  signalAirAgainPa: '0',
  processInletAgainPa: '0',
  processOutletAgainPa: '0',
};

/** Acts that pass a point without its signature where a definition allows it; here none does. */
const WAYS_ROUND: readonly Act[] = [
  { kind: 'go-on' },
  { kind: 'waive', reason: 'in a hurry' },
  { kind: 'review', about: 3 },
  { kind: 'confirm-radio', about: 3, code: 'K7Q-49X' },
  { kind: 'deny-radio', about: 3, reason: 'not me' },
];

/** The act that a move means on the card that stands open, or null where time alone passes. */
function meant(run: JobRun, move: Move): Act | null {
  switch (move.kind) {
    case 'choose':
      return { kind: 'answer', given: chosen(run, move.salt) };
    case 'rubbish':
      return { kind: 'answer', given: rubbish(run, move.salt) };
    case 'mixed':
      return {
        kind: 'answer',
        given: {
          ...textsNow(run),
          ...Object.fromEntries(Object.entries(rubbish(run, move.salt)).slice(0, 1)),
        },
      };
    case 'stale':
      return { kind: 'answer', given: textsNow(run), place: run.job.place - 1 } as Act;
    case 'correct': {
      const wrong = at(run.job.answers, move.at);
      const given =
        wrong === undefined
          ? {}
          : Object.fromEntries(wrong.readings.map(({ field, typed }) => [field, typed]));
      const [first] = Object.keys(given);
      const slip = first === undefined ? {} : { [first]: at(RUBBISH, move.salt) ?? '' };
      return {
        kind: 'correct',
        corrects: wrong?.place ?? 0,
        given: { ...wrong?.words, ...given, ...slip },
        reason: 'misread',
      };
    }
    case 'back':
      return { kind: 'go-back', to: at(run.job.answers, move.at)?.step ?? 'needs' };
    case 'override': {
      const outcome = at(['inside', 'outside', 'too close', 'does not repeat', 'shown'], move.salt) ?? '';
      return { kind: 'override', outcome, reason: 'seen otherwise' };
    }
    case 'readAgain': {
      const line = at(run.job.answers, move.at);
      const given = Object.fromEntries((line?.readings ?? []).map(({ field, typed }) => [field, typed]));
      const slip = move.salt % 2 === 0 ? {} : { [Object.keys(given)[0] ?? '']: '9 psi' };
      const mode = move.salt % 3 === 0 ? 'peer' : 'independent';
      return { kind: 'read-again', about: line?.place ?? 0, mode, given: { ...given, ...slip } };
    }
    case 'round':
      return at<Act>(WAYS_ROUND, move.salt) ?? null;
    case 'sign':
      return { kind: 'sign', shownDigest: run.shownDigest };
    case 'sendBack':
      return { kind: 'send-back', reason: 'not clear', disposition: 'again' };
    case 'park':
      return { kind: 'park', reason: 'shift ends' };
    case 'takeUp':
      return { kind: 'take-up' };
    case 'proveAgain':
      return { kind: 'prove-again', given: AGAIN };
    case 'stop':
      return { kind: 'make-safe', reason: 'stop' };
    default:
      return null;
  }
}

/** Does one move; what is refused changes nothing, anything else that is thrown fails the walk. */
function tryMove(
  run: JobRun,
  { move, person }: { readonly move: Move; readonly person: Person },
): JobDraft | null {
  if (move.kind === 'wait') run.nowMs += 30_000;
  if (move.kind === 'age') run.nowMs += 5 * HOUR_MS;
  const before = run.job;
  try {
    if (move.kind === 'script')
      return run.job.status === 'parked' ? act(run, { kind: 'take-up' }) : scripted(run);
    const one = meant(run, move);
    return one === null ? null : act(run, one, person);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    expect(run.job).toBe(before);
    return null;
  }
}

const opened = fc.record({
  geometry: fc.constantFrom(...GEOMETRIES),
  place: fc.constantFrom('bench' as const, 'line' as const),
  texts: fc.constantFrom(
    {},
    { bypassPoint: '' },
    { secondSupplyHighPa: '20', secondSupplyPoint: 'IA-214-2' },
    { bellowsSeal: 'yes' },
    { springHeldBy: 'case', adjusterThread: '' },
  ),
  from: fc.constantFrom('needs', 'needs', 'holdWork', 'contactFound', 'chooseWork', 'airOff', 'backCheck'),
});

/** Starts as far along as the script comes on this valve. */
function startedAt(of: {
  readonly geometry: (typeof GEOMETRIES)[number];
  readonly place: 'bench' | 'line';
  readonly texts: object;
  readonly from: string;
}): JobRun {
  const run = openJob({ sheet: sheetFor(of.geometry, of.texts as Record<string, string>), place: of.place });
  const stuck = of.from === 'airOff' && 'bellowsSeal' in of.texts;
  const elsewhere = of.from === 'backCheck' && (of.place === 'bench' || 'bellowsSeal' in of.texts);
  return stuck || elsewhere ? playTo(run, 'chooseWork') : playTo(run, of.from);
}

const moves = fc.array(fc.record({ move: arbitraryMove, who: fc.nat(PEOPLE.length - 1) }), {
  minLength: ACTS,
  maxLength: ACTS,
});

describe('[SAF-03] [SAF-04] [SAF-05] [SAF-09] [SAF-10] Whatever people do on a job', () => {
  test('no hold is passed unsigned, nobody is exposed, no job ends locked, and a stop is always taken (SA-07)', {
    timeout: 120_000 + WALKS * 200,
  }, () => {
    const count = { taken: 0, refused: 0, closed: 0, signed: 0 };
    const ends = new Set<string>();
    fc.assert(
      fc.property(opened, moves, (of, walk) => {
        const run = startedAt(of);
        for (const { move, who } of walk) {
          if (run.job.status === 'closed') break;
          const person = PEOPLE[who] ?? TECHNICIAN;
          const before = { ...run, entries: [...run.entries] };
          const draft = tryMove(run, { move, person });
          count[draft === null ? 'refused' : 'taken'] += 1;
          if (draft !== null) {
            const signer = draft.kind === 'hold-signed' && move.kind === 'script' ? SUPERVISOR : person;
            // Time passes before the act, where the script waits for a card that wants waiting.
            checkAct({ before: { ...before, nowMs: run.nowMs - 60_000 }, after: run, draft, person: signer });
            count.signed += draft.kind === 'hold-signed' ? 1 : 0;
          }
          checkStop(run);
        }
        count.closed += run.job.status === 'closed' ? 1 : 0;
        ends.add(run.job.step);
        expect(run.entries.reduce(evolve, NO_JOB)).toEqual(run.job);
        expect(auditJob(run.entries, COMPILED)).toEqual([]);
      }),
      { seed: 20261125, numRuns: WALKS },
    );
    console.log(`${WALKS} walks: ${JSON.stringify(count)}, ended on ${ends.size} cards`);
    expect(Math.min(...Object.values(count))).toBeGreaterThan(WALKS / 20);
    expect(ends.size).toBeGreaterThan(15);
  });
});

describe('The audit', () => {
  const run = playTo(openJob(), 'done');

  test('finds every line whose end is not where the machine leads', () => {
    run.entries.forEach((entry, index) => {
      const { to, ...effects } = entry.effects as { readonly [name: string]: Json };
      const elsewhere = to === 'ventNow' ? 'haltAir' : 'ventNow';
      const flipped = run.entries.with(index, { ...entry, effects: { ...effects, to: elsewhere } });
      expect(auditJob(flipped, COMPILED), `line ${entry.place}`).not.toEqual([]);
    });
  });

  test('finds a line that was taken out of the middle', () => {
    for (let index = 1; index < run.entries.length - 1; index += 1) {
      // A row of a table is like its neighbours: that one is missing shows in the chain, not here.
      if (run.entries[index]?.kind === 'row-read' || run.entries[index + 1]?.kind === 'row-read') continue;
      expect(auditJob(run.entries.toSpliced(index, 1), COMPILED), `line ${index + 1}`).not.toEqual([]);
    }
  });

  test('finds a pause that moved the job', () => {
    const parked = playTo(openJob(), 'holdWork');
    act(parked, { kind: 'park', reason: 'shift ends' });
    act(parked, { kind: 'take-up' });
    expect(auditJob(parked.entries, COMPILED)).toEqual([]);
    const last = parked.entries.at(-1);
    if (last === undefined) throw new Error('no line');
    const moved = parked.entries.with(-1, { ...last, effects: { to: 'connectAir', status: 'open' } });
    expect(auditJob(moved, COMPILED)).toEqual([
      `line ${last.place}: a line of this kind leaves the job at holdWork, it says connectAir`,
    ]);
  });
});
