/** Air on a cylinder, on an actuator that is shut in, and at the supply. */
import { at, figure, judged, LBF_N, metres, POSITIONER, type Row, SUPPLY, travels } from './row.ts';

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

export const AIR: readonly Row[] = [
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
