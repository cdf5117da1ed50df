/**
 * Every value that a commissioning procedure judges or expects, beside what the page of its calculation gives for the
 * same readings, asked as JSON of a whole server; and a case that somebody else has published or worked out where one
 * fits. Cards and pages share their arithmetic: what is seen here is that a card puts the right number in the right place.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Job } from '../../../procedures/job.ts';
import { FIGURES, type FigureName } from '../../../procedures/quantities.ts';
import { CYCLE_POINTS, pointField } from '../../../procedures/rules/own-stroke.ts';
import { procedureNamed } from '../../../procedures/served.ts';
import { rolesFor } from '../../../procedures/test-gear/roles.ts';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import { jobOn, type Overrides, play } from '../../builders/answers.ts';
import { gearItem, PSI_PA } from '../../builders/gear.ts';
import { aSheet, aSheetOf } from '../../builders/sheets.ts';
import { type AnApp, anApp, type Browser } from '../an-app.ts';

const LBF_N = 4.4482216152605;
const INCH_M = 0.0254;
const IN2_M2 = INCH_M ** 2;

let app: AnApp;
let as: Browser;

beforeAll(async () => {
  app = await anApp({ people: true });
  as = (await app.signedIn('technician')).browser;
});
afterAll(() => app?.close());

type Texts = Readonly<Record<string, string>>;

async function page(id: string, texts: Texts): Promise<Readonly<Record<string, unknown>>> {
  const path = `/calculations/${id}?${new URLSearchParams(texts)}`;
  const response = await app.get(path, { as, headers: { accept: 'application/json' } });
  const answer = (await response.json()) as { readonly results?: Readonly<Record<string, unknown>> | null };
  if (response.status !== 200 || !answer.results) throw new Error(`${path}: ${JSON.stringify(answer)}`);
  return answer.results;
}

const pa = (value: number) => `${value.toFixed(6)} Pa`;
const metres = (value: number) => `${value.toFixed(9)} m`;
const newtons = (value: number) => `${value.toFixed(6)} N`;
const area = (value: number) => `${value.toFixed(9)} m2`;
const psi = (value: number) => `${value} psi`;

/** A job of a procedure played to a step. */
function at(
  id: string,
  {
    sheet,
    overrides,
    to,
  }: { readonly sheet: ValveSheet; readonly overrides: Overrides; readonly to: string },
): Job {
  const served = procedureNamed(id);
  if (served === undefined) throw new Error(`${id} is not served`);
  const gear = Object.fromEntries(rolesFor(served, 'line').map((role) => [role, gearItem(role)]));
  return play(jobOn(served, { sheet, place: 'line', gear }), { overrides, to }).job;
}

const figure = (job: Job, name: FigureName) => Number(FIGURES[name].of(job));
const judged = (job: Job, step: string, name: string) => Number(job.figures[step]?.[name]);

const POSITIONER = aSheetOf({
  positioner: 'pneumatic',
  positionerRisingSignalLoads: 'bottom',
  positionerRelays: 'one',
  supplyLowPa: '18',
  supplyHighPa: '22',
});
const SUPPLY = { supplyRead: { supplyReadPa: '20 psi' } };
/** Travel in percent at each setting, up and then down. */
const READ = [2, 24.5, 49.5, 76, 99, 78, 52.5, 26.5, 2.5] as const;
const travels = Object.fromEntries(
  CYCLE_POINTS.map((point, index) => [pointField(point, 'travel'), `${READ[index]} %`]),
);
const points = CYCLE_POINTS.map(
  ({ percent, direction }, index) => `${percent}; ${READ[index]}; ${direction}; 1`,
).join('\n');
/** The mean of up and down at each setting. */
const averages = [2.25, 25.5, 51, 77, 99].map((travel, index) => `${25 * index}; ${travel}`).join('\n');

interface Row {
  /** The card, and what it says. */
  readonly what: string;
  readonly job: () => Job;
  readonly card: (job: Job) => number;
  /** The page of the calculation, and the result that must be the same. */
  readonly page: readonly [id: string, texts: (job: Job) => Texts, result: string];
  /** Somebody else's figure for the same readings, with where it stands and how near it must be. */
  readonly known?: readonly [value: number, source: string, digits: number];
}

const positioner =
  (to: string, overrides: Overrides = {}) =>
  () =>
    at('positioner-calibration', {
      sheet: POSITIONER,
      overrides: { ...SUPPLY, strokeFound: travels, ...overrides },
      to,
    });

const STROKES: readonly Row[] = [
  {
    what: 'largest error of a stroke by the signal',
    job: positioner('deadBand'),
    card: (job) => judged(job, 'strokeFound', 'errorWorstPercent'),
    page: ['cycle-percent', () => ({ points, reverse: 'no' }), 'errorMaxPercent'],
  },
  {
    what: 'hysteresis of a stroke by the signal',
    job: positioner('deadBand'),
    card: (job) => figure(job, 'strokeHysteresis'),
    page: ['cycle-percent', () => ({ points, reverse: 'no' }), 'hysteresisPercent'],
  },
  {
    what: 'zero',
    job: positioner('deadBand'),
    card: (job) => figure(job, 'strokeZero'),
    page: [
      'zero-and-span',
      () => ({ points: averages, reverse: 'no', heldPercent: '0.5 %' }),
      'zeroErrorPercent',
    ],
  },
  {
    what: 'span',
    job: positioner('deadBand'),
    card: (job) => figure(job, 'strokeSpan'),
    page: [
      'zero-and-span',
      () => ({ points: averages, reverse: 'no', heldPercent: '0.5 %' }),
      'spanErrorPercent',
    ],
  },
  {
    what: 'the straight line',
    job: positioner('deadBand'),
    card: (job) => figure(job, 'strokeLine'),
    page: ['cycle-percent', () => ({ points, reverse: 'no' }), 'terminalPercent'],
  },
  {
    what: 'air on the actuator at 30 % travel',
    job: () =>
      at('positioner-stroke', {
        sheet: POSITIONER,
        overrides: {
          ...SUPPLY,
          strokeFound: travels,
          airAtHalf: { actuatorAirPa: '6.6 psi', airTravelM: '30 %' },
        },
        to: 'nextPerson',
      }),
    card: (job) => judged(job, 'airAtHalf', 'expectedPa'),
    page: [
      'signal-at-percent',
      () => ({ percent: '30 %', rangeLow: '3 psi', rangeHigh: '15 psi', reverse: 'no' }),
      'signalPa',
    ],
    known: [6.6 * PSI_PA, 'by hand: 3 and 0.3 of 12 psi', 3],
  },
  {
    what: 'dead band',
    job: positioner('stepIt', {
      deadBand: { turnedAtPa: '9 psi', movedDownAtPa: '8.91 psi', movedUpAtPa: '8.97 psi' },
    }),
    card: (job) => figure(job, 'deadBandFound'),
    page: [
      'dead-band',
      () => ({ lastMovementUpPa: '9 psi', firstMovementDownPa: '8.91 psi', inputSpanPa: '12 psi' }),
      'deadBandPercent',
    ],
    known: [0.75, 'by hand: 0.09 of 12 psi', 9],
  },
  {
    what: 'overshoot of the step',
    job: positioner('nextPerson', {
      stepIt: { stepFromM: '45 %', stepFurthestM: '56.5 %', stepRestM: '55 %' },
    }),
    card: (job) => figure(job, 'overshootFound'),
    page: [
      'step-response',
      () => ({ samples: '0; 45\n1; 45\n2; 56.5\n3; 55\n4; 55', stepTimeS: '1 s' }),
      'overshootPercent',
    ],
    known: [15, 'by hand: one and a half past ten', 6],
  },
  {
    // A travel that runs a percent a second passes the mark as many seconds after the step as it is percents from it.
    what: 'the travel at which T63 is taken',
    job: positioner('stepIt'),
    card: (job) => Number.parseFloat(String(FIGURES.stepFirstTravel.of(job))) - 45,
    page: ['step-response', () => ({ samples: '0; 45\n5; 50\n10; 55', stepTimeS: '0 s' }), 't63S'],
    known: [6.32, '1 - 1/e (ISA-75.25.01, from memory)', 1],
  },
  {
    what: 'the travel at which T86 is taken',
    job: positioner('stepIt'),
    card: (job) => Number.parseFloat(String(FIGURES.stepSecondTravel.of(job))) - 45,
    page: ['step-response', () => ({ samples: '0; 45\n5; 50\n10; 55', stepTimeS: '0 s' }), 't86S'],
    known: [8.65, '1 - 1/e² (ISA-75.25.01, from memory)', 1],
  },
  {
    what: 'signal at the valve behind a converter, off by',
    job: () =>
      at('positioner-stroke', {
        sheet: aSheetOf({ electricalV: '24', electricalPoint: 'EB-1' }),
        overrides: {
          ...SUPPLY,
          signalAtValve: {
            terminalLowA: '4 mA',
            valveLowPa: '3 psi',
            terminalMiddleA: '10.4 mA',
            valveMiddlePa: '8.1 psi',
            terminalHighA: '20 mA',
            valveHighPa: '15 psi',
          },
        },
        to: 'signalOff',
      }),
    card: (job) => 8.1 * PSI_PA - (figure(job, 'signalOffBy') / 100) * 12 * PSI_PA,
    page: [
      'current-to-air',
      () => ({ signal: '10.4 mA', inLow: '4 mA', inHigh: '20 mA', outLow: '3 psi', outHigh: '15 psi' }),
      'signalPa',
    ],
    known: [7.8 * PSI_PA, 'a derived case: 10.4 mA through a linear converter to 3-15 psi', 3],
  },
  {
    what: 'converter at five points, off the most',
    job: () =>
      at('converter-calibration', {
        sheet: aSheetOf({
          electricalV: '24',
          electricalPoint: 'EB-1',
          supplyLowPa: '18',
          supplyHighPa: '22',
        }),
        overrides: {
          ...SUPPLY,
          pointsFound: Object.fromEntries(
            CYCLE_POINTS.map((point, index) => [
              pointField(point, 'output'),
              psi(3 + (12 * (READ[index] ?? 0)) / 100),
            ]),
          ),
        },
        to: 'setConverter',
      }),
    card: (job) => figure(job, 'strokeError'),
    page: ['cycle-percent', () => ({ points, reverse: 'no' }), 'errorMaxPercent'],
  },
];

/** 100 in2 for a piston and a half-inch rod. */
const PISTON = {
  ...POSITIONER,
  actuatorKind: 'piston',
  springHeldBy: 'no spring',
  failPosition: 'stays',
} as const;
const cylinder = () =>
  at('positioner-calibration', {
    sheet: PISTON,
    overrides: {
      ...SUPPLY,
      strokeFound: travels,
      stepIt: { stepFromM: '45 %', stepFurthestM: '55 %', stepRestM: '55 %' },
      cylinderGauges: {
        topMovingPa: '10 psi',
        bottomMovingPa: '14 psi',
        topRestPa: '12 psi',
        bottomRestPa: '12.5 psi',
      },
    },
    to: 'nextPerson',
  });
/** Swept volume of two litres, as in the cases worked out elsewhere. */
const TWO_LITRES = { ...POSITIONER, effectiveAreaM2: 0.1, travelM: 0.02 };
const shutIn = (end: string, endK: string, seconds: string, to: string) => () =>
  at('soap-tests', {
    sheet: TWO_LITRES,
    overrides: {
      shutIn: { shutInStartPa: '140 kPa', shutInStartK: '20 C' },
      shutInEnd: {
        shutInStartPa: '140 kPa',
        shutInStartK: '20 C',
        shutInEndPa: end,
        shutInEndK: endK,
        shutInTimeS: seconds,
        stemStood: 'yes',
      },
    },
    to,
  });
const decay = (end: string, endK: string, seconds: string) => () => ({
  volumeM3: '2 l',
  startPa: '140 kPa',
  endPa: end,
  startK: '20 C',
  endK,
  elapsedS: `${seconds} s`,
});

const AIR: readonly Row[] = [
  {
    what: 'both sides of a cylinder at rest',
    job: cylinder,
    card: (job) => figure(job, 'cylinderRestFound'),
    page: [
      'piston-thrust',
      ({ sheet }) => ({
        boreM: metres(Math.sqrt((4 * sheet.effectiveAreaM2) / Math.PI)),
        rodDiameterM: metres(sheet.stemDiameterM),
        upperPa: '12 psi',
        lowerPa: '12.5 psi',
        sealFrictionN: '0 N',
      }),
      'downBeforeFrictionN',
    ],
    known: [(1200 - 12.5 * (100 - Math.PI / 16)) * LBF_N, 'by hand: pressure times area on both sides', 3],
  },
  {
    what: 'body pressure on the stem of a cylinder, beside its packing',
    job: cylinder,
    card: (job) => figure(job, 'cylinderRestAllowed') - (job.sheet.packingFrictionN ?? 0),
    page: [
      'plug-force',
      () => ({
        flow: 'under',
        inletPa: '88 psi',
        outletPa: '88 psi',
        portDiameterM: '1 in',
        stemDiameterM: '0.5 in',
      }),
      'openingN',
    ],
    known: [((88 * Math.PI) / 16) * LBF_N, 'by hand: 88 psi on a half-inch stem', 3],
  },
  {
    what: 'leak of an actuator that is shut in',
    job: shutIn('130 kPa', '20 C', '300', 'actuatorLeaks'),
    card: (job) => judged(job, 'shutInEnd', 'leakMolPerS'),
    page: ['pressure-decay', decay('130 kPa', '20 C', '300'), 'leakMolPerS'],
    known: [2.73517e-5, 'a derived case of the gas law: two litres, 140 to 130 kPa in 300 s', 9],
  },
  {
    what: 'the same where nearly all of the fall is the cold',
    job: shutIn('138.3 kPa', '18 C', '600', 'cockOpen'),
    card: (job) => judged(job, 'shutInEnd', 'leakMolPerS'),
    page: ['pressure-decay', decay('138.3 kPa', '18 C', '600'), 'leakMolPerS'],
    known: [7.37693e-8, 'a derived case of the gas law: 140 to 138.3 kPa while it cools by two kelvin', 11],
  },
  {
    what: 'fall of an actuator that is the temperature alone',
    job: shutIn('138.3 kPa', '18 C', '600', 'cockOpen'),
    card: (job) => judged(job, 'shutInEnd', 'fallByTemperaturePa'),
    page: ['pressure-decay', decay('138.3 kPa', '18 C', '600'), 'fallByTemperaturePa'],
  },
  {
    what: 'least supply of a cylinder whose sheet names none',
    job: () =>
      at('air-supply', {
        sheet: { ...PISTON, supplyLowPa: null, supplyHighPa: null },
        overrides: { supplyRead: { supplyReadPa: '40 psi' } },
        to: 'supplyMoving',
      }),
    card: (job) => judged(job, 'supplyRead', 'lowPa'),
    page: ['convert-units', () => ({ value: '35', from: 'psi', to: 'Pa' }), 'converted'],
    known: [241316.505, 'NIST SP 811 for the factor; 35 psi is common practice, no source', 2],
  },
];

const ENDS = {
  moves: 'yes',
  plugJoined: 'yes',
  benchLowUpPa: '5.2 psi',
  benchHighUpPa: '15.6 psi',
  benchHighDownPa: '14.4 psi',
  benchLowDownPa: '4 psi',
  benchTravelM: '0.65 in',
};
const bench = (benchFound: Texts, to: string) => () =>
  at('bench-set', { sheet: aSheet(), overrides: { benchFound }, to });

const SPRING: readonly Row[] = [
  {
    what: 'friction at the ends of a bench set',
    job: bench(ENDS, 'lineExpected'),
    card: (job) => judged(job, 'benchFound', 'frictionN'),
    page: [
      'friction-two-pressures',
      () => ({ effectiveAreaM2: '100 in2', risingPa: '15.6 psi', fallingPa: '14.4 psi' }),
      'frictionN',
    ],
    known: [60 * LBF_N, 'a derived case: 1.2 psi between up and down on 100 in² are 60 lbf', 3],
  },
  {
    what: 'upper end of a bench set without friction',
    job: bench(ENDS, 'lineExpected'),
    card: (job) => judged(job, 'benchFound', 'benchHighFoundPa'),
    page: [
      'friction-two-pressures',
      () => ({ effectiveAreaM2: '100 in2', risingPa: '15.6 psi', fallingPa: '14.4 psi' }),
      'balancedPa',
    ],
    known: [15 * PSI_PA, 'by hand: their middle', 3],
  },
  {
    what: 'spring rate from both ends',
    job: bench(ENDS, 'lineExpected'),
    card: (job) => judged(job, 'benchFound', 'springRateFoundNPerM'),
    page: [
      'bench-set',
      () => ({
        effectiveAreaM2: '100 in2',
        benchSetLowPa: '4.6 psi',
        benchSetHighPa: '15 psi',
        travelM: '0.65 in',
      }),
      'springRateNPerM',
    ],
    known: [(1600 * LBF_N) / INCH_M, 'a derived case: 12 psi over 0.75 in on 100 in² are 1600 lbf/in', 1],
  },
  {
    what: 'contact with the seat after two turns',
    job: bench(ENDS, 'lineExpected'),
    card: (job) =>
      judged(job, 'benchFound', 'benchLowFoundPa') - judged(job, 'benchFound', 'seatEndDifferencePa'),
    page: [
      'seating-turns',
      () => ({
        plugCloses: 'down',
        airAction: 'air-to-open',
        effectiveAreaM2: '100 in2',
        benchSetLowPa: '3 psi',
        benchSetHighPa: '15 psi',
        travelM: '0.75 in',
        springRateNPerM: '1600 lbf/in',
        threadPitchM: '0.05 in',
        turns: '2',
      }),
      'contactPa',
    ],
    known: [4.6 * PSI_PA, 'a derived case: two turns of 1/2-20 on 1600 lbf/in and 100 in²', 3],
  },
  {
    what: 'turns of the adjuster',
    job: bench(
      {
        ...ENDS,
        benchHighUpPa: '16.6 psi',
        benchHighDownPa: '15.4 psi',
        benchLowUpPa: '6.2 psi',
        benchLowDownPa: '5 psi',
      },
      'adjusterNote',
    ),
    card: (job) => figure(job, 'adjusterTurns'),
    page: [
      'adjuster-turns-wanted',
      () => ({
        springRateNPerM: '1600 lbf/in',
        effectiveAreaM2: '100 in2',
        threadPitchM: metres(INCH_M / 18),
        wantedShiftPa: '-1 psi',
      }),
      'turns',
    ],
    known: [1.125, 'by hand: 1600/18 lbf on 100 in² are 0.889 psi a turn', 4],
  },
  {
    what: 'first lift in the line, flow under the plug',
    job: bench(ENDS, 'lineExpected'),
    card: (job) =>
      Number.parseFloat(/([\d.]+) psi/.exec(String(FIGURES.shutEndInLine.of(job)))?.[1] ?? '') * PSI_PA,
    page: [
      'shut-end',
      ({ sheet }) => ({
        airAction: 'air-to-open',
        effectiveAreaM2: area(sheet.effectiveAreaM2),
        benchSetLowPa: pa(sheet.benchSetLowPa),
        benchSetHighPa: pa(sheet.benchSetHighPa),
        plugForceOpeningN: newtons(100 * PSI_PA * (Math.PI / 4) * IN2_M2),
        frictionN: newtons(50 * LBF_N),
        supplyPa: '15 psi',
        portDiameterM: '1 in',
      }),
      'firstLiftPa',
    ],
    // Said with two digits of a psi.
    known: [2.71 * PSI_PA, 'by hand: 3 and (50 - 78.5)/100 psi', -2],
  },
];

/** A seat that is tested up to its measuring. */
const seat = (texts: Texts, measure: Texts, to: string) => () =>
  at('seat-leak-test', { sheet: aSheetOf(texts), overrides: { measure }, to });
const GLASS = { leakBy: 'glass', leakTimeS: '120 s', leakVolumeM3: '0.2 ml' };

const SEATS: readonly Row[] = [
  ...(
    [
      ['1.5', 0.3],
      ['2.5', 0.6],
      ['3', 0.9],
      ['4', 1.7],
    ] as const
  ).map(
    ([port, mlPerMin]): Row => ({
      what: `allowance of class VI, port of ${port} in`,
      job: seat({ leakageClass: 'VI', portDiameterM: port, shutOffDropPa: '60' }, GLASS, 'letOffTight'),
      card: (job) => judged(job, 'measure', 'allowedM3PerS'),
      page: ['class-vi-fci', () => ({ portDiameterM: `${port} in` }), 'flowM3PerS'],
      known: [
        (mlPerMin * 1e-6) / 60,
        'ANSI/FCI 70-2, class VI table, as printed in Control Engineering (Sept 1999)',
        12,
      ],
    }),
  ),
  {
    what: 'what was collected in a glass',
    job: seat({ leakageClass: 'VI', portDiameterM: '1.5', shutOffDropPa: '60' }, GLASS, 'letOffTight'),
    card: (job) => judged(job, 'measure', 'leakM3PerS'),
    page: ['leak-collected', () => ({ volumeM3: '0.2 ml', elapsedS: '120 s' }), 'flowM3PerS'],
    known: [1e-7 / 60, 'by hand: 0.1 ml/min', 12],
  },
  {
    what: 'allowance of class IV with air',
    job: seat({}, { leakBy: 'glass', leakTimeS: '120 s', leakVolumeM3: '20 ml' }, 'letOffTight'),
    card: (job) => (judged(job, 'measure', 'allowedM3PerS') * 101325) / (8.314462618 * 293.15),
    page: [
      'seat-leak-gas',
      ({ sheet }) => ({
        standard: 'ANSI/FCI 70-2',
        ratedKv: `${sheet.ratedKv.toFixed(9)} Kv`,
        pressureDropRatioXt: '0.72',
        inletPa: '50 psi',
        temperatureK: '20 C',
        outletPa: '0 Pa',
        molarMassKgPerMol: '28.97 g/mol',
        heatRatio: '1.4',
        compressibility: '1',
      }),
      'limitClassIV',
    ],
  },
];

describe.each([
  ['a stroke, a signal, a step', STROKES],
  ['air on an actuator', AIR],
  ['a spring', SPRING],
  ['a seat', SEATS],
] as const)('What a card judges of %s', (_, rows) => {
  test.each(rows)(
    'is what the page of its calculation says: $what',
    async ({ job, card, page: of, known }) => {
      const played = job();
      const shown = card(played);
      const [id, texts, result] = of;
      const worked = Number((await page(id, texts(played)))[result]);
      const near = Math.max(Math.abs(worked), 1e-12);
      // A figure that a card says in words has the digits of its unit.
      const give = known !== undefined && known[2] < 2 ? Math.max(0.01 * near, 0.06) : 1e-6 * near;
      expect(Math.abs(shown - worked), `${shown} on the card, ${worked} on the page`).toBeLessThanOrEqual(
        give,
      );
      if (known !== undefined) expect(worked, known[1]).toBeCloseTo(known[0], known[2]);
    },
  );
});
