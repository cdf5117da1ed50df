import { calculation } from '../calculation.ts';
import type { Calculation, OutputSpec } from '../calculation-types.ts';
import { refuseOutside, ZERO_OR_MORE } from '../checks.ts';
import type { GasForm } from '../flow-constants.ts';
import { classReached, type LeakStandard } from '../leak-measured.ts';
import {
  type GasTest,
  ratedCapacityGas,
  ratedCapacityGasSimplified,
  ratedCapacityLiquidM3PerS,
} from '../rated-capacity.ts';
import { fciClassV, fciClassVAir, fciClassVi } from '../seat-leakage-fci.ts';
import { gbClassIvS2MolPerS, iecClassVi, iecClassVM3PerS } from '../seat-leakage-iec.ts';
import { choice, numbers, optionalNumbers, results, told, usualNumbers } from '../specs.ts';

const STANDARD = choice('standard', ['ANSI/FCI 70-2', 'IEC 60534-4']);
const BY_CAPACITY = 'Capacity of the test fluid at the test pressures, not the service ones.';
const REACHED = {
  ...results('limitClassII', 'limitClassIII', 'limitClassIV', 'limitClassIVS1'),
  ...told('word', 'classReached'),
};

/** Each standard is worked out with its own rounded constant. */
const FORM: Readonly<Record<LeakStandard, GasForm>> = {
  'ANSI/FCI 70-2': 'isa-scfh',
  'IEC 60534-4': 'iec-normal',
};

/** The limits are flows of what the test was made with. */
function limitsAs(dimension: 'flowVolume' | 'gasFlow'): Readonly<Record<string, OutputSpec>> {
  const entries = Object.entries<OutputSpec>(REACHED);
  return Object.fromEntries(
    entries.map(([name, spec]) => [name, spec.kind === 'number' ? { ...spec, dimension } : spec]),
  );
}

const MEASURED = optionalNumbers('measuredLeakM3PerS');

/** Whether a leak that was measured, under its own name, keeps to the limit; null where none was measured. */
function met(
  measured: Readonly<Record<string, number | null>>,
  limit: number,
): { readonly meetsClass: boolean | null } {
  const [[name, value] = ['', null]] = Object.entries(measured);
  if (value === null) return { meetsClass: null };
  refuseOutside({ [name]: value }, ZERO_OR_MORE);
  return { meetsClass: value <= limit * (1 + 1e-12) };
}

function reached(of: {
  readonly standard: LeakStandard;
  readonly ratedCapacity: number;
  readonly measured: number | null;
}) {
  // Without a measurement the limits alone are wanted; any leak gives them.
  const { limits, classReached: name } = classReached({ ...of, measuredLeak: of.measured ?? 0 });
  return {
    limitClassII: limits.II ?? null,
    limitClassIII: limits.III ?? null,
    limitClassIV: limits.IV ?? null,
    limitClassIVS1: limits['IV-S1'] ?? null,
    classReached: of.measured === null ? null : (name ?? 'none of them'),
  };
}

export const SEAT_LEAKAGE_CALCULATIONS: readonly Calculation[] = [
  calculation({
    id: 'seat-leak-liquid',
    title: 'Seat leak by rated capacity, with water',
    topic: 'seat leakage',
    inputs: {
      ...STANDARD,
      ...numbers('ratedKv', 'testDropPa'),
      ...usualNumbers({ relativeDensity: 1 }),
      ...optionalNumbers('measuredLeakM3PerS'),
    },
    outputs: { ...results('ratedCapacityM3PerS'), ...limitsAs('flowVolume') },
    answers: ['classReached', 'limitClassII', 'limitClassIII', 'limitClassIV', 'limitClassIVS1'],
    equation: 'Q = 0.1 · Kv · √(Δp in kPa/relative density), m³/h; limit = fraction of the class · Q',
    validity: `Classes II to IV, and IV-S1 where the standard has it. ${BY_CAPACITY}`,
    sources: ['S-18', 'S-19', 'S-20'],
    example: { standard: 'IEC 60534-4', ratedKv: 63, testDropPa: 350000, measuredLeakM3PerS: 3.3e-7 },
    run: ({ standard, measuredLeakM3PerS, ...test }) => {
      const ratedCapacityM3PerS = ratedCapacityLiquidM3PerS(test);
      return {
        ratedCapacityM3PerS,
        ...reached({ standard, ratedCapacity: ratedCapacityM3PerS, measured: measuredLeakM3PerS }),
      };
    },
  }),
  calculation({
    id: 'seat-leak-gas',
    title: 'Seat leak by rated capacity, with air or another gas',
    topic: 'seat leakage',
    inputs: {
      ...STANDARD,
      ...numbers('ratedKv', 'pressureDropRatioXt', 'inletPa', 'temperatureK'),
      ...usualNumbers({
        outletPa: 0,
        atmospherePaAbs: 101325,
        molarMassKgPerMol: 0.02897,
        heatRatio: 1.4,
        compressibility: 1,
      }),
      ...optionalNumbers('measuredLeakMolPerS'),
    },
    outputs: {
      ...results('ratedCapacityMolPerS', 'dropRatio', 'dropRatioChoked', 'expansionFactor'),
      ...told('yes-no', 'choked'),
      ...limitsAs('gasFlow'),
    },
    answers: ['classReached', 'limitClassII', 'limitClassIII', 'limitClassIV', 'limitClassIVS1'],
    equation:
      'Qs = C · N9 · P1 · Y · √(x/(M · T1 · Z)), x at most Fγ · xT; limit = fraction of the class · Qs',
    validity: `${BY_CAPACITY} At 350 kPa most valves choke, so that the limit hangs on the xT of the open valve.`,
    sources: ['S-18', 'S-19', 'S-20'],
    example: {
      standard: 'IEC 60534-4',
      ratedKv: 40,
      pressureDropRatioXt: 0.72,
      inletPa: 350000,
      temperatureK: 293.15,
    },
    run: ({ standard, measuredLeakMolPerS, ...test }) => {
      const gas: GasTest = { ...test, form: FORM[standard] };
      const { flowMolPerS, ...capacity } = ratedCapacityGas(gas);
      return {
        ratedCapacityMolPerS: flowMolPerS,
        ...capacity,
        ...reached({ standard, ratedCapacity: flowMolPerS, measured: measuredLeakMolPerS }),
      };
    },
  }),
  calculation({
    id: 'seat-capacity-gb',
    title: 'Rated capacity with a gas, simplified form of GB/T 4213-92',
    topic: 'seat leakage',
    inputs: numbers('ratedKv', 'inletPaAbs', 'outletPaAbs', 'specificGravity', 'temperatureK'),
    outputs: { ...results('flowMolPerS'), ...told('yes-no', 'choked') },
    answers: ['flowMolPerS', 'choked'],
    equation:
      'below half the inlet pressure 4.73 Kv √(Δp · Pm/(G · T)), from there 2.9 P1 · Kv/√(G · T); kPa and m³/h',
    validity:
      'About 12 % above the equation of IEC 60534-2-1 when choked at xT 0.72: not to be mixed with its limits.',
    sources: ['S-20'],
    example: {
      ratedKv: 40,
      inletPaAbs: 451325,
      outletPaAbs: 101325,
      specificGravity: 1,
      temperatureK: 293.15,
    },
    run: ratedCapacityGasSimplified,
  }),
  calculation({
    id: 'class-v-fci',
    title: 'Class V with water, ANSI/FCI 70-2',
    topic: 'seat leakage',
    inputs: { ...numbers('portDiameterM', 'testDropPa'), ...MEASURED },
    outputs: { ...results('allowedLeakM3PerS'), ...told('yes-no', 'dropEnough', 'meetsClass') },
    answers: ['allowedLeakM3PerS', 'meetsClass'],
    equation: '0.0005 ml/min for each inch of port and each psi',
    validity: 'Water of 10 to 52 °C at the service drop, at least 100 psi, not above the rating of the body.',
    sources: ['S-19'],
    example: { portDiameterM: 0.0508, testDropPa: 4136854 },
    run: ({ measuredLeakM3PerS, ...test }) => {
      const allowed = fciClassV(test);
      return { ...allowed, ...met({ measuredLeakM3PerS }, allowed.allowedLeakM3PerS) };
    },
  }),
  calculation({
    id: 'class-v-iec',
    title: 'Class V with water, IEC 60534-4',
    topic: 'seat leakage',
    inputs: { ...numbers('seatDiameterM', 'testDropPa'), ...MEASURED },
    outputs: { ...results('allowedLeakM3PerS'), ...told('yes-no', 'meetsClass') },
    answers: ['allowedLeakM3PerS', 'meetsClass'],
    equation: '1.8 · 10⁻⁷ l/h for each mm of seat and each kPa',
    validity:
      'Water at the service drop. 5 % above the US form: use the constant of the standard that was agreed.',
    sources: ['S-20'],
    example: { seatDiameterM: 0.05, testDropPa: 4000000 },
    run: ({ measuredLeakM3PerS, ...test }) => {
      const allowedLeakM3PerS = iecClassVM3PerS(test);
      return { allowedLeakM3PerS, ...met({ measuredLeakM3PerS }, allowedLeakM3PerS) };
    },
  }),
  calculation({
    id: 'class-v-air',
    title: 'Class V with air at 50 psi, ANSI/FCI 70-2',
    topic: 'seat leakage',
    inputs: { ...numbers('orificeDiameterM'), ...optionalNumbers('measuredLeakMolPerS') },
    outputs: { ...results('allowedLeakMolPerS', 'testDropPa'), ...told('yes-no', 'meetsClass') },
    answers: ['allowedLeakMolPerS', 'meetsClass'],
    equation: '4.7 ml/min standard for each inch of orifice',
    validity: 'From memory: do not accept a valve on it before the standard is in hand.',
    sources: ['S-21'],
    example: { orificeDiameterM: 0.0762 },
    run: ({ measuredLeakMolPerS, ...orifice }) => {
      const allowed = fciClassVAir(orifice);
      return { ...allowed, ...met({ measuredLeakMolPerS }, allowed.allowedLeakMolPerS) };
    },
  }),
  calculation({
    id: 'class-vi-fci',
    title: 'Class VI, ANSI/FCI 70-2',
    topic: 'seat leakage',
    inputs: { ...numbers('portDiameterM'), ...MEASURED },
    outputs: {
      ...results('flowM3PerS', 'bubblesPerMin'),
      ...told('list', 'rowsM'),
      ...told('yes-no', 'meetsClass'),
    },
    answers: ['flowM3PerS', 'bubblesPerMin', 'meetsClass'],
    equation: 'the row of the port; between rows by the diameter squared; no factor for the drop',
    validity:
      'Air or nitrogen at 50 psi or the largest rated drop, whichever is lower. The millilitres decide, not the bubbles.',
    sources: ['S-19'],
    example: { portDiameterM: 0.0381 },
    run: ({ measuredLeakM3PerS, ...port }) => {
      const allowed = fciClassVi(port);
      return { ...allowed, ...met({ measuredLeakM3PerS }, allowed.flowM3PerS) };
    },
  }),
  calculation({
    id: 'class-vi-iec',
    title: 'Class VI, IEC 60534-4',
    topic: 'seat leakage',
    inputs: { ...numbers('seatDiameterM', 'testDropPa'), ...MEASURED },
    outputs: {
      ...results('flowM3PerS', 'allowedLeakM3PerS', 'bubblesPerMin'),
      ...told('list', 'rowsM'),
      ...told('yes-no', 'meetsClass'),
    },
    answers: ['allowedLeakM3PerS', 'bubblesPerMin', 'meetsClass'],
    equation: '0.003 · drop in kPa · figure of the row; between rows by the diameter squared',
    validity: 'Gas at low pressure. Between the rows the leak goes with the diameter squared.',
    sources: ['S-20'],
    example: { seatDiameterM: 0.09, testDropPa: 350000 },
    run: ({ measuredLeakM3PerS, ...test }) => {
      const { tabled, allowedLeakM3PerS } = iecClassVi(test);
      return { ...tabled, allowedLeakM3PerS, ...met({ measuredLeakM3PerS }, allowedLeakM3PerS) };
    },
  }),
  calculation({
    id: 'class-iv-s2',
    title: 'Class IV-S2, GB/T 4213-92',
    topic: 'seat leakage',
    inputs: { ...numbers('seatDiameterM', 'testDropPa'), ...optionalNumbers('measuredLeakMolPerS') },
    outputs: { ...results('allowedLeakMolPerS'), ...told('yes-no', 'meetsClass') },
    answers: ['allowedLeakMolPerS', 'meetsClass'],
    equation: '2 · 10⁻⁴ l/h for each kPa and each mm of seat',
    validity: 'Gas at low pressure, counted at 0 °C. No other standard has this class.',
    sources: ['S-20'],
    example: { seatDiameterM: 0.05, testDropPa: 350000 },
    run: ({ measuredLeakMolPerS, ...test }) => {
      const allowedLeakMolPerS = gbClassIvS2MolPerS(test);
      return { allowedLeakMolPerS, ...met({ measuredLeakMolPerS }, allowedLeakMolPerS) };
    },
  }),
];
