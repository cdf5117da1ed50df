import { calculation } from '../calculation.ts';
import type { Calculation } from '../calculation-types.ts';
import { nozzleBackPressure, nozzleBackPressureSimplePa, nozzleGapSimpleM } from '../nozzle-flapper.ts';
import { AIR, chokingOutletPa, conductanceOfHole, orificeFlow } from '../orifice-flow.ts';
import { circleAreaM2 } from '../plug-force.ts';
import { restrictionFlow } from '../sonic-conductance.ts';
import { numbers, results, told, usualNumbers } from '../specs.ts';

const GAS = usualNumbers(AIR);
const NOZZLE = numbers('restrictionDiameterM', 'nozzleDiameterM');
const SIMPLE =
  'Textbook form, incompressible, equal discharge factors; up to a third off the compressible answer.';

export const PNEUMATIC_CALCULATIONS: readonly Calculation[] = [
  calculation({
    id: 'restriction-flow',
    title: 'Air through a part of known sonic conductance',
    topic: 'restriction and nozzle',
    inputs: numbers('conductanceM3PerSPa', 'criticalPressureRatio', 'inletPaAbs', 'outletPaAbs', 'inletK'),
    outputs: {
      ...results('pressureRatio', 'flowAnrM3PerS', 'flowMolPerS', 'massFlowKgPerS'),
      ...told('yes-no', 'choked'),
    },
    answers: ['flowAnrM3PerS', 'choked'],
    equation: 'q = C · p1 · √(T0/T1) below b, times √(1 − ((r − b)/(1 − b))²) above it',
    validity:
      'Absolute pressures. The critical ratio is 0.2 to 0.5 for parts, 0.528 only for an ideal nozzle.',
    sources: ['S-24'],
    example: {
      conductanceM3PerSPa: 1e-8,
      criticalPressureRatio: 0.3,
      inletPaAbs: 700000,
      outletPaAbs: 600000,
      inletK: 293.15,
    },
    run: restrictionFlow,
  }),
  calculation({
    id: 'hole-flow',
    title: 'Air through a small hole',
    topic: 'restriction and nozzle',
    inputs: { ...numbers('holeDiameterM', 'dischargeFactor', 'inletPaAbs', 'outletPaAbs', 'inletK'), ...GAS },
    outputs: { ...results('pressureRatio', 'massFlowKgPerS', 'flowAnrM3PerS'), ...told('yes-no', 'choked') },
    answers: ['massFlowKgPerS', 'choked'],
    equation:
      'm = Cd · A · p1 · √(2k/((k − 1) R T) · (r^(2/k) − r^((k + 1)/k))), r at least the critical ratio',
    validity: 'Ideal gas, isentropic to the throat; absolute pressures.',
    sources: ['S-25'],
    example: {
      holeDiameterM: 0.0003,
      dischargeFactor: 0.8,
      inletPaAbs: 240000,
      outletPaAbs: 101325,
      inletK: 293.15,
    },
    run: ({ holeDiameterM, ...state }) => orificeFlow({ ...state, areaM2: circleAreaM2(holeDiameterM) }),
  }),
  calculation({
    id: 'hole-conductance',
    title: 'Sonic conductance of a round hole',
    topic: 'restriction and nozzle',
    inputs: { ...numbers('diameterM', 'dischargeFactor'), ...GAS },
    outputs: results('conductanceM3PerSPa', 'effectiveAreaM2'),
    answers: ['conductanceM3PerSPa'],
    equation: 'C = choked mass flow/(1.185 kg/m³ · p1) at 20 °C',
    validity: 'At 20 °C; ideal gas, isentropic to the throat.',
    sources: ['S-24', 'S-25'],
    example: { diameterM: 0.001, dischargeFactor: 0.8 },
    run: conductanceOfHole,
  }),
  calculation({
    id: 'choking-outlet',
    title: 'Outlet pressure below which a part chokes',
    topic: 'restriction and nozzle',
    inputs: {
      ...numbers('inletPa'),
      ...usualNumbers({ atmospherePaAbs: 101325 }),
      ...numbers('criticalPressureRatio'),
    },
    outputs: results('outletPa'),
    answers: ['outletPa'],
    equation: 'p2 = ratio · (p1 + barometer) − barometer',
    validity: 'The ratio is of absolute pressures. Below zero gauge it does not choke to atmosphere.',
    sources: ['S-25'],
    example: { inletPa: 550000, criticalPressureRatio: 0.528 },
    run: (values) => ({ outletPa: chokingOutletPa(values) }),
  }),
  calculation({
    id: 'nozzle-back-pressure',
    title: 'Nozzle and flapper: back pressure with compressible air',
    topic: 'restriction and nozzle',
    inputs: {
      ...NOZZLE,
      ...numbers('gapM', 'supplyPa'),
      ...usualNumbers({ restrictionOpenShare: 1, atmospherePaAbs: 101325, temperatureK: 293.15 }),
      ...numbers('dischargeFactorRestriction', 'dischargeFactorNozzle'),
      ...GAS,
    },
    outputs: {
      ...results('backPressurePa', 'massFlowKgPerS'),
      ...told('yes-no', 'restrictionChoked', 'nozzleChoked', 'gapSaturated'),
    },
    answers: ['backPressurePa'],
    equation: 'what the restriction feeds leaves through the curtain π · dn · x',
    validity: 'A plugged restriction lowers the back pressure, a plugged nozzle raises it to the supply.',
    sources: ['S-25'],
    example: {
      restrictionDiameterM: 0.00025,
      nozzleDiameterM: 0.0008,
      gapM: 0.00002,
      supplyPa: 140000,
      dischargeFactorRestriction: 0.8,
      dischargeFactorNozzle: 0.8,
    },
    run: nozzleBackPressure,
  }),
  calculation({
    id: 'nozzle-back-pressure-simple',
    title: 'Nozzle and flapper: back pressure by the textbook form',
    topic: 'restriction and nozzle',
    inputs: { ...NOZZLE, ...numbers('gapM', 'supplyPa') },
    outputs: results('backPressurePa'),
    answers: ['backPressurePa'],
    equation: 'pn/ps = 1/(1 + 16 · dn² · x²/dr⁴)',
    validity: SIMPLE,
    sources: ['S-26'],
    example: { restrictionDiameterM: 0.00025, nozzleDiameterM: 0.0008, gapM: 0.00002, supplyPa: 140000 },
    run: (values) => ({ backPressurePa: nozzleBackPressureSimplePa(values) }),
  }),
  calculation({
    id: 'nozzle-gap-simple',
    title: 'Nozzle and flapper: gap for a back pressure, textbook form',
    topic: 'restriction and nozzle',
    inputs: { ...NOZZLE, ...numbers('supplyPa', 'backPressurePa') },
    outputs: results('gapM'),
    answers: ['gapM'],
    equation: 'x = dr²/(4 dn) · √(ps/pn − 1)',
    validity: SIMPLE,
    sources: ['S-26'],
    example: {
      restrictionDiameterM: 0.00025,
      nozzleDiameterM: 0.0008,
      supplyPa: 140000,
      backPressurePa: 60000,
    },
    run: (values) => ({ gapM: nozzleGapSimpleM(values) }),
  }),
];
