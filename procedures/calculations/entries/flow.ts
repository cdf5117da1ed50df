import { calculation } from '../calculation.ts';
import type { Calculation } from '../calculation-types.ts';
import { type Fittings, fittingLosses } from '../fittings.ts';
import { gasChokingOutletPaAbs, gasFlow, gasKv } from '../gas-flow.ts';
import { liquidChoking, liquidFlow, liquidKv, valveReynolds } from '../liquid-flow.ts';
import { choice, numbers, optionalNumbers, results, told, usualNumbers } from '../specs.ts';

const PIPES = optionalNumbers('valveM', 'pipeInM', 'pipeOutM');
const LIQUID = {
  ...numbers('inletPaAbs', 'outletPaAbs', 'relativeDensity', 'vapourPaAbs', 'criticalPaAbs', 'recoveryFl'),
  ...PIPES,
};
const GAS = {
  ...numbers(
    'inletPaAbs',
    'outletPaAbs',
    'temperatureK',
    'molarMassKgPerMol',
    'heatRatio',
    'pressureDropRatioXt',
  ),
  ...usualNumbers({ compressibility: 1 }),
  ...PIPES,
  ...choice('form', ['iec-normal', 'iec-standard', 'isa-scfh']),
};
const LIQUID_OUT = {
  ...results('kv', 'flowM3PerS', 'dropPa', 'criticalRatioFactor', 'dropChokedPa', 'dropSizingPa'),
  ...results('pipingFactor', 'recoveryWithPiping'),
  ...told('yes-no', 'choked', 'tested'),
};
const GAS_OUT = {
  ...results('kv', 'flowMolPerS', 'heatRatioFactor', 'dropRatio', 'dropRatioChoked', 'expansionFactor'),
  ...results('pipingFactor', 'dropRatioWithPiping'),
  ...told('yes-no', 'choked', 'tested', 'heatRatioTested'),
};
const WATER = {
  inletPaAbs: 680000,
  outletPaAbs: 220000,
  relativeDensity: 0.96627,
  vapourPaAbs: 70100,
  criticalPaAbs: 22120000,
  recoveryFl: 0.9,
};
const AIR = {
  inletPaAbs: 451325,
  outletPaAbs: 101325,
  temperatureK: 293.15,
  molarMassKgPerMol: 0.02897,
  heatRatio: 1.4,
  pressureDropRatioXt: 0.72,
  form: 'iec-normal',
} as const;
const PHASE = 'Turbulent, single phase; absolute pressures. Reducers where all three sizes are given.';

interface Pipes {
  readonly valveM: number | null;
  readonly pipeInM: number | null;
  readonly pipeOutM: number | null;
}

/** Reducers only where all three sizes are given. */
function fittingsOf({ valveM, pipeInM, pipeOutM }: Pipes): Fittings | null {
  return valveM === null || pipeInM === null || pipeOutM === null ? null : { valveM, pipeInM, pipeOutM };
}

export const FLOW_CALCULATIONS: readonly Calculation[] = [
  calculation({
    id: 'liquid-flow',
    title: 'Liquid flow that a valve passes',
    topic: 'flow',
    inputs: { ...numbers('kv'), ...LIQUID },
    outputs: LIQUID_OUT,
    answers: ['flowM3PerS', 'choked'],
    equation:
      'Q = C · N1 · FP · √(Δp/(ρ/ρ0)), Δp at most (FLP/FP)² · (P1 − FF · Pv); FF = 0.96 − 0.28 √(Pv/Pc)',
    validity: PHASE,
    sources: ['S-18'],
    example: { kv: 165, ...WATER },
    run: (values) => liquidFlow({ ...values, fittings: fittingsOf(values) }),
  }),
  calculation({
    id: 'liquid-coefficient',
    title: 'Flow coefficient for a liquid flow',
    topic: 'flow',
    inputs: { ...numbers('flowM3PerS'), ...LIQUID },
    outputs: LIQUID_OUT,
    answers: ['kv', 'choked'],
    equation: 'C = Q/(N1 · FP · √(Δp/(ρ/ρ0))), solved together with FP',
    validity: PHASE,
    sources: ['S-18'],
    example: { flowM3PerS: 0.1, ...WATER },
    run: (values) => liquidKv({ ...values, fittings: fittingsOf(values) }),
  }),
  calculation({
    id: 'liquid-choking',
    title: 'Where a liquid chokes',
    topic: 'flow',
    inputs: numbers('inletPaAbs', 'vapourPaAbs', 'criticalPaAbs', 'recoveryFl'),
    outputs: results('criticalRatioFactor', 'dropChokedPa', 'outletPaAbs'),
    answers: ['dropChokedPa', 'outletPaAbs'],
    equation: 'Δp = FL² · (P1 − FF · Pv)',
    validity: 'No reducers.',
    sources: ['S-18'],
    example: { inletPaAbs: 680000, vapourPaAbs: 70100, criticalPaAbs: 22120000, recoveryFl: 0.6 },
    run: liquidChoking,
  }),
  calculation({
    id: 'valve-reynolds',
    title: 'Whether the flow is turbulent',
    topic: 'flow',
    inputs: numbers('flowM3PerS', 'viscosityM2PerS', 'kv', 'recoveryFl', 'styleModifierFd', 'valveM'),
    outputs: { ...results('reynolds'), ...told('yes-no', 'turbulent') },
    answers: ['reynolds', 'turbulent'],
    equation: 'Rev = N4 · Fd · Q/(ν · √(C · FL)) · (FL² C²/(N2 d⁴) + 1)^¼',
    validity: 'Below 10 000 the flow equations here do not hold, and no laminar ones are given.',
    sources: ['S-18'],
    example: {
      flowM3PerS: 0.1,
      viscosityM2PerS: 3.26e-7,
      kv: 165,
      recoveryFl: 0.9,
      styleModifierFd: 0.46,
      valveM: 0.15,
    },
    run: valveReynolds,
  }),
  calculation({
    id: 'gas-flow',
    title: 'Gas flow that a valve passes',
    topic: 'flow',
    inputs: { ...numbers('kv'), ...GAS },
    outputs: GAS_OUT,
    answers: ['flowMolPerS', 'choked'],
    equation: 'Qs = C · N9 · FP · P1 · Y · √(x/(M · T1 · Z)); Y = 1 − x/(3 Fγ xTP), x at most Fγ · xTP',
    validity: `${PHASE} The form names whose rounded constant is used.`,
    sources: ['S-18'],
    example: { kv: 100, ...AIR },
    run: (values) => gasFlow({ ...values, fittings: fittingsOf(values) }),
  }),
  calculation({
    id: 'gas-coefficient',
    title: 'Flow coefficient for a gas flow',
    topic: 'flow',
    inputs: { ...numbers('flowMolPerS'), ...GAS },
    outputs: GAS_OUT,
    answers: ['kv', 'choked'],
    equation: 'C = Qs/(N9 · FP · P1 · Y · √(x/(M · T1 · Z))), solved together with FP and xTP',
    validity: `${PHASE} The form names whose rounded constant is used.`,
    sources: ['S-18'],
    example: { flowMolPerS: 50, ...AIR },
    run: (values) => gasKv({ ...values, fittings: fittingsOf(values) }),
  }),
  calculation({
    id: 'gas-choking',
    title: 'Where a gas chokes in a valve',
    topic: 'flow',
    inputs: numbers('inletPaAbs', 'heatRatio', 'pressureDropRatioXt'),
    outputs: results('outletPaAbs'),
    answers: ['outletPaAbs'],
    equation: 'P2 = P1 · (1 − Fγ · xT), Fγ = γ/1.4',
    validity: 'No reducers.',
    sources: ['S-18'],
    example: { inletPaAbs: 451325, heatRatio: 1.4, pressureDropRatioXt: 0.72 },
    run: (values) => ({ outletPaAbs: gasChokingOutletPaAbs(values) }),
  }),
  calculation({
    id: 'reducer-losses',
    title: 'Losses of reducers at a valve',
    topic: 'flow',
    inputs: numbers('valveM', 'pipeInM', 'pipeOutM'),
    outputs: results('sum', 'inlet'),
    answers: ['sum', 'inlet'],
    equation: 'ζ1 = 0.5 (1 − (d/D1)²)²; ζ2 = (1 − (d/D2)²)²; ζB = 1 − (d/D)⁴',
    validity: 'Short concentric reducers, pipes not narrower than the valve.',
    sources: ['S-18'],
    example: { valveM: 0.05, pipeInM: 0.08, pipeOutM: 0.1 },
    run: fittingLosses,
  }),
];
