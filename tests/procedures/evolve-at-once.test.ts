/** All lines of a job folded at once, and one by one: the same job, whatever the lines say. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { evolve, type JobEntry, jobOf, NO_JOB } from '../../procedures/evolve.ts';
import { CONDITION_IDS, CONDITIONS } from '../../safety/conditions.ts';
import { jobAt } from '../builders/jobs.ts';

const LINES_MAX = 40;
const KINDS = [
  'step-answered',
  'row-read',
  'corrected',
  'went-back',
  'hold-signed',
  'hold-sent-back',
  'hold-waived',
  'not-witnessed',
  'witnessed',
  'review-opened',
  'reviewed',
  'review-sent-back',
  'radio-confirmed',
  'radio-denied',
  'read-again',
  'overridden',
  'parked',
  'taken-up',
  'handed-over',
  'locks-removed',
  'finding-noted',
  'part-noted',
  'note-struck',
  'made-safe',
];
const STEPS = ['vent', 'rows', 'hold', 'turn'];
const FIELDS = ['signalPa', 'travelM', 'casePressurePa'];

const person = fc.constantFrom('t1', 't2', 's1', null);
const place = fc.integer({ min: 1, max: LINES_MAX });
const maybe = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: undefined, freq: 2 });
const reading = fc.record({
  field: fc.constantFrom(...FIELDS),
  valueSi: fc.integer({ min: 0, max: 9 }),
  typed: fc.constantFrom('1', '2'),
  unit: fc.constant('psi'),
  gauge: fc.constantFrom('G-01', null),
  uncertaintySi: fc.constant(null),
  readBy: fc.constant(null),
});
const condition = fc.constantFrom(...CONDITION_IDS);
const state = condition.chain((id) =>
  fc.constantFrom(...CONDITIONS[id].states).map((of) => [id, of] as const),
);
const sets = fc.array(state, { maxLength: 4 }).map(Object.fromEntries);
const lock = fc.constantFrom(
  { lock: '43', point: 'IA-214', owner: 't1' },
  { lock: '41', point: 'HV-1', owner: 't2' },
  null,
);
const locks = fc.dictionary(fc.constantFrom('supplyLock', 'inletLock'), lock);
const envelope = fc.constantFrom({ actions: ['turnPlugStem'], untilMs: 9 }, null);

const inputs = fc.record({
  step: fc.constantFrom(...STEPS),
  readings: maybe(fc.array(reading, { maxLength: 3 })),
  words: maybe(fc.dictionary(fc.constantFrom('seen', 'mode'), fc.constantFrom('yes', 'independent'))),
  row: maybe(fc.option(fc.integer({ min: 0, max: 4 }))),
  corrects: maybe(place),
  about: maybe(place),
  reason: maybe(fc.constant('read again')),
  disposition: maybe(fc.constantFrom('again', 'accept')),
  note: maybe(fc.constant({ kind: 'finding', found: 'worn', where: 'stem', words: '' })),
  signature: maybe(
    fc.record({
      person: fc.constantFrom('s1', 's2'),
      name: fc.constant('Supervisor'),
      way: fc.constantFrom('walk-up', 'radio'),
      why: fc.constant(''),
      nonce: fc.constantFrom('', 'a.b.c'),
      radio: fc.constantFrom(null, { heardBy: 't1', code: 'AB12' }),
    }),
  ),
});
const effects = fc.record({
  to: fc.constantFrom(...STEPS),
  sets: maybe(sets),
  lapses: maybe(
    fc.record({
      conditions: fc.array(condition, { maxLength: 5 }),
      reason: fc.constantFrom('parked', 'age'),
    }),
  ),
  locks: maybe(locks),
  envelope: maybe(envelope),
  signed: maybe(fc.boolean()),
  shownDigest: maybe(fc.constant('digest')),
  supersedes: maybe(fc.array(place, { maxLength: 4 })),
  clearsTable: maybe(fc.constantFrom(...STEPS)),
  status: maybe(fc.constantFrom('open', 'parked', 'closed')),
  closedAs: maybe(fc.constant('done')),
  goesOnAs: maybe(fc.constant('2')),
});
const line = fc.record({
  kind: fc.constantFrom(...KINDS),
  person,
  inputs,
  outcome: fc.record({
    name: fc.constantFrom('agrees', 'inside', 'more rows'),
    figures: fc.dictionary(fc.constantFrom('line', 'spanPa'), fc.integer({ min: 0, max: 9 })),
  }),
  effects,
});

const opening = (jobAt('rigGauges').entries[0] ?? []) as JobEntry;

/** Lines as they come from the log: frozen here, since a job must not be made by changing them. */
const aJob = fc.array(line, { minLength: 1, maxLength: LINES_MAX }).map((lines) =>
  [
    opening,
    ...lines.map((one, at) => ({
      ...(JSON.parse(JSON.stringify(one)) as Omit<JobEntry, 'seq' | 'place' | 'at'>),
      seq: at + 5,
      place: at + 2,
      at: new Date(Date.UTC(2026, 10, 25, 8, at)).toISOString(),
    })),
  ].map(frozen),
);

function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(frozen);
  }
  return value;
}

test('a job folded at once is the job folded line by line, and neither changes a job or a line that it was given', () => {
  fc.assert(
    fc.property(aJob, (entries) => {
      let job = frozen(NO_JOB);
      for (const [at, entry] of entries.entries()) {
        job = frozen(evolve(job, entry));
        if (at % 7 === 6) expect(jobOf(entries.slice(0, at + 1))).toStrictEqual(job);
      }
      expect(jobOf(entries)).toStrictEqual(job);
    }),
    { numRuns: 150 },
  );
});

test('a real job folded at once is what it was when its last line was written', () => {
  const run = jobAt('turnStem');
  expect(jobOf(run.entries)).toStrictEqual(run.job);
});
