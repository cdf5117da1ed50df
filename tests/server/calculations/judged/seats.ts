/** What a seat may let through, and what was measured. */
import { aSheetOf } from '../../../builders/sheets.ts';
import { at, judged, type Row, type Texts } from './row.ts';

/** A seat that is tested up to its measuring. */
const seat = (texts: Texts, measure: Texts, to: string) => () =>
  at('seat-leak-test', { sheet: aSheetOf(texts), overrides: { measure }, to });
const GLASS = { leakBy: 'glass', leakTimeS: '120 s', leakVolumeM3: '0.2 ml' };

export const SEATS: readonly Row[] = [
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
