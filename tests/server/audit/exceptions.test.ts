import { beforeAll, describe, expect, test } from 'vitest';
import { leastVentS } from '../../../server/audit/exceptions/evidence-rules.ts';
import type { AuditedJob, JobLine, RuleId } from '../../../server/audit/exceptions/exception.ts';
import { exceptionsOf, siteExceptions } from '../../../server/audit/exceptions/find-exceptions.ts';
import { tooPerfect } from '../../../server/audit/exceptions/too-perfect.ts';
import type { LogEntry } from '../../../server/store/store.ts';
import { decidedJob, honestJob, type Reader, withLine } from './simulated-jobs.ts';

const HONEST_JOBS = process.env.YOKESIDE_LONG === '1' ? 1000 : 200;
const PERFECT_JOBS = process.env.YOKESIDE_LONG === '1' ? 10_000 : 1000;
const FINE: Reader = { error: 0.0025, grid: 0.1 };
const COARSE: Reader = { error: 0.0025, grid: 0.5 };

let decided: AuditedJob;
let honest: AuditedJob;
beforeAll(() => {
  decided = decidedJob();
  honest = honestJob(decided, { seed: 1, reader: FINE });
});

const endOf = (job: AuditedJob): string => job.lines.at(-1)?.at ?? '';
const found = (job: AuditedJob): readonly RuleId[] => exceptionsOf(job, endOf(job)).map(({ rule }) => rule);

test('honest jobs by the hundred, quick ones too, give no exception but the stated rate of one rule', () => {
  const all = Array.from({ length: HONEST_JOBS }, (_, seed) =>
    found(honestJob(decided, { seed, reader: seed % 2 === 0 ? FINE : COARSE })),
  ).flat();
  expect(all.filter((rule) => rule !== 'tooPerfect')).toEqual([]);
  expect(all.length / HONEST_JOBS).toBeLessThanOrEqual(0.002);
});

test.each<[string, Reader, number]>([
  ['0.1 %', FINE, 0.001],
  ['0.5 %', COARSE, 0.002],
])('honest strokes read to %s are called too perfect as seldom as the rule says', (_, reader, rate) => {
  let count = 0;
  for (let seed = 0; seed < PERFECT_JOBS; seed += 1)
    count += tooPerfect(honestJob(decided, { seed: seed + 50_000, reader })).length;
  expect(count / PERFECT_JOBS).toBeLessThanOrEqual(rate);
});

const later = (line: JobLine, s: number): JobLine => ({
  ...line,
  at: new Date(Date.parse(line.at) + s * 1000).toISOString(),
});
const placeOf = (job: AuditedJob, step: string): number =>
  job.lines.find(({ inputs }) => inputs.step === step)?.place ?? 0;

function without(job: AuditedJob, step: string, field: string): AuditedJob {
  return withLine(job, step, (line) => ({
    ...line,
    inputs: {
      ...line.inputs,
      readings: (line.inputs.readings ?? []).filter((reading) => reading.field !== field),
    },
  }));
}

function onGauge(job: AuditedJob, step: string, gauge: string): AuditedJob {
  return withLine(job, step, (line) => ({
    ...line,
    inputs: {
      ...line.inputs,
      readings: (line.inputs.readings ?? []).map((reading) => ({ ...reading, gauge })),
    },
  }));
}

const bare = (job: AuditedJob, step: string): AuditedJob =>
  withLine(job, step, (line) => ({ ...line, inputs: { ...line.inputs, readings: [], words: {} } }));

function signed(
  change: (signature: NonNullable<JobLine['inputs']['signature']>) => object,
): (job: AuditedJob) => AuditedJob {
  return (job) =>
    withLine(job, 'holdWork', (line) => {
      const { signature } = line.inputs;
      const given = signature ?? {
        person: 's',
        name: 'S',
        role: 'supervisor',
        meaning: 'signed',
        way: 'walk-up',
        why: '',
        nonce: '',
        radio: null,
      };
      return {
        ...line,
        inputs: { ...line.inputs, signature: { ...given, ...change(given) } } as JobLine['inputs'],
      };
    });
}

const asKind =
  (step: string, kind: string) =>
  (job: AuditedJob): AuditedJob =>
    withLine(job, step, (line) => ({ ...line, kind }));

/** Readings made up along a straight line, to the last digit. */
function madeUp(job: AuditedJob): AuditedJob {
  return {
    ...job,
    lines: job.lines.map((line, at) =>
      line.kind === 'row-read' ? { ...line, inputs: decided.lines[at]?.inputs ?? line.inputs } : line,
    ),
  };
}

function correction(job: AuditedJob): AuditedJob {
  const at = job.lines.findIndex(({ inputs }) => inputs.step === 'chooseWork');
  const [verdict, line] = [job.lines[at - 1], job.lines[at]];
  if (verdict === undefined || line === undefined) throw new Error('no verdict');
  const corrects = placeOf(job, 'asFoundCycle');
  const corrected = { ...line, kind: 'corrected', inputs: { ...line.inputs, corrects, reason: 'Misread.' } };
  return { ...job, lines: job.lines.with(at, corrected) };
}

/** A tank of 300 L that stood at the supply and read nothing a second later. */
function quickTank(job: AuditedJob): AuditedJob {
  const live = job.lines.find(({ inputs }) => inputs.step === 'shutSupply');
  const zero = job.lines.find(({ inputs }) => inputs.step === 'ventSupply')?.inputs.readings;
  if (live === undefined || zero === undefined) throw new Error('no supply');
  const tank = { ...job, opened: { ...job.opened, sheet: { ...job.opened.sheet, tankVolumeM3: 0.3 } } };
  return withLine(tank, 'keptAir', (line) => ({
    ...line,
    at: later(live, 1).at,
    inputs: { ...line.inputs, readings: zero },
    effects: { ...line.effects, sets: { trappedAir: 'isolated' } },
  }));
}

const CHEATS: readonly (readonly [string, RuleId, (job: AuditedJob) => AuditedJob])[] = [
  ['never read the supply live', 'notLive', (job) => without(job, 'shutSupply', 'supplyBeforePa')],
  ['never read the inlet live', 'notLive', (job) => without(job, 'shutInlet', 'inletBeforePa')],
  ['never read the outlet live', 'notLive', (job) => without(job, 'shutOutlet', 'outletBeforePa')],
  ['took another gauge for the zero', 'notLive', (job) => onGauge(job, 'ventSupply', 'G-999')],
  ['emptied a tank in a second', 'ventTooQuick', quickTank],
  ['left out what shows the supply safe', 'noEvidence', (job) => bare(job, 'ventSupply')],
  ['left out what shows the process safe', 'noEvidence', (job) => bare(job, 'drainsAgain')],
  ['left out what shows the signal air safe', 'noEvidence', (job) => bare(job, 'breakSignalLine')],
  [
    'read one gauge once for two energies',
    'sameEvidence',
    (job) =>
      onGauge(
        onGauge(onGauge(job, 'shutSupply', 'G-101'), 'ventSupply', 'G-101'),
        'breakSignalLine',
        'G-101',
      ),
  ],
  [
    'signed for a colleague at the same screen',
    'oneScreen',
    (job) =>
      withLine(job, 'holdWork', (line) => ({
        ...later(job.lines.find(({ inputs }) => inputs.step === 'springLook') ?? line, 6),
        ...{
          kind: line.kind,
          place: line.place,
          seq: line.seq,
          person: line.person,
          inputs: line.inputs,
          outcome: line.outcome,
          effects: line.effects,
        },
      })),
  ],
  ['waived the hold', 'waived', asKind('holdWork', 'hold-waived')],
  ['went on without the witness', 'waived', asKind('holdWork', 'not-witnessed')],
  [
    'had it signed by radio',
    'byRadio',
    signed(() => ({ way: 'radio', radio: { code: '1234', heardBy: 't1' } })),
  ],
  [
    'had it signed by a second person',
    'secondPerson',
    signed(() => ({ way: 'second person', why: 'Nobody came.' })),
  ],
  ['judged it otherwise', 'overridden', asKind('asFoundVerdict', 'overridden')],
  [
    'wrote it down in the evening',
    'writtenLate',
    (job) =>
      withLine(job, 'rigGauges', (line) => ({
        ...line,
        inputs: { ...line.inputs, late: { claimedAt: later(line, -28_800).at, reason: 'No tablet.' } },
      })),
  ],
  [
    'read a gauge past its day',
    'overdueGauge',
    (job) => ({
      ...job,
      opened: {
        ...job.opened,
        gear: Object.fromEntries(
          Object.entries(job.opened.gear).map(([role, item]) => [
            role,
            item && { ...item, dueOn: '2020-01-01' },
          ]),
        ),
      },
    }),
  ],
  ['corrected a reading when the verdict was bad', 'correctedLater', correction],
  ['set the clock back', 'clockMoved', (job) => withLine(job, 'rigHold', (line) => later(line, -7200))],
  ['made up the strokes', 'tooPerfect', madeUp],
  [
    'left the locks on overnight',
    'lockOverShift',
    (job) => ({
      ...job,
      lines: job.lines.map((line) =>
        line.place > placeOf(job, 'supplyBack') - 1 ? later(line, 50_000) : line,
      ),
    }),
  ],
];

describe('a cheat', () => {
  test.each(CHEATS)('who %s is found: %s', (_what, rule, cheat) => {
    expect(found(honest)).toEqual([]);
    expect(found(cheat(honest))).toContain(rule);
  });

  test('is named by the lines that show it', () => {
    const cheated = withLine(honest, 'rigHold', (line) => later(line, -7200));
    const place = placeOf(honest, 'rigHold');
    expect(exceptionsOf(cheated, endOf(honest)).find(({ rule }) => rule === 'clockMoved')?.lines).toEqual([
      place - 1,
      place,
    ]);
  });
});

describe('what stands in no job', () => {
  const entry = (kind: string, inputs: object) =>
    ({ kind, inputs, place: 7, at: '2024-01-15T08:00:00.000Z', screen: 'screen 1' }) as unknown as LogEntry;

  test('five wrong PINs in a row are told, four are not; a clock that was set back or jumped is told', () => {
    expect(siteExceptions([entry('pin-refused', { person: 't1', inARow: 4 })])).toEqual([]);
    expect(siteExceptions([entry('pin-refused', { person: 't1', inARow: 5 })])[0]?.rule).toBe('wrongPins');
    expect(siteExceptions([entry('clock-set-back', {})])[0]?.rule).toBe('clockMoved');
    const jumps = [-90, 3600].map((bySeconds) => entry('clock-moved', { bySeconds }));
    expect(siteExceptions(jumps).map(({ what }) => what)).toEqual(['back by 90 s', 'ahead by 3600 s']);
  });
});

test('air leaves a volume no quicker than a choked hole lets it (worked by hand from the flow law)', () => {
  // C = 0.6847/sqrt(287.05 × 293.15) × A/1.185 = 2.252e-7 m3/(s Pa); tau = 0.05/(C × 1e5) × sqrt(293.15/323.15) = 2.115 s; x ln(801325/104325).
  expect(leastVentS({ volumeM3: 0.05, boreM: 0.012, fromPa: 700_000, toPa: 3000 })).toBeCloseTo(4.31, 1);
});
