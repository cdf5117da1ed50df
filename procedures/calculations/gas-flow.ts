import { kvFor } from './capacity-search.ts';
import { ABOVE_ZERO, oneOf, refuseOutside, refuseUnlessRising, ZERO_OR_MORE } from './checks.ts';
import { type Fittings, type PipingFactors, pipingFactors } from './fittings.ts';
import { GAS_FORMS, type GasForm } from './flow-constants.ts';
import { fromSi, toSi } from './units.ts';

export interface GasInput {
  readonly inletPaAbs: number;
  readonly outletPaAbs: number;
  readonly temperatureK: number;
  readonly molarMassKgPerMol: number;
  /** Ratio of specific heats, gamma. */
  readonly heatRatio: number;
  /** Z; 1 for air at these pressures. */
  readonly compressibility: number;
  /** xT of the valve at the travel in use: asked for, never assumed. */
  readonly pressureDropRatioXt: number;
  readonly fittings?: Fittings | null;
  /** Whose rounded constant is used, and with it the state that volumes are counted at. */
  readonly form: GasForm;
}

export interface GasFlow extends PipingFactors {
  readonly kv: number;
  readonly flowMolPerS: number;
  /** Fgamma. */
  readonly heatRatioFactor: number;
  /** x = Δp/P1. */
  readonly dropRatio: number;
  readonly dropRatioChoked: number;
  readonly choked: boolean;
  /** Y, from 1 down to 2/3. */
  readonly expansionFactor: number;
  /** gamma between 1.08 and 1.65, for which Fgamma was tested; outside it the answer stands with a warning. */
  readonly heatRatioTested: boolean;
}

/**
 * Gas flow that a valve passes.
 *
 * Shape: coefficient and state in, flow and each factor out. Qs = C · N9 · FP · P1 · Y · √(x/(M · T1 · Z)),
 *   x at most Fgamma · xTP
 * Valid: absolute pressures, single phase, near-ideal gas, turbulent.
 * @param kv                   above 0
 * @param inletPaAbs           above 0
 * @param outletPaAbs          0 or more, below the inlet
 * @param temperatureK         above 0
 * @param molarMassKgPerMol    above 0
 * @param heatRatio            above 1, at most 2
 * @param compressibility      above 0
 * @param pressureDropRatioXt  above 0, at most 1
 * @param fittings             sizes of valve and pipes; blank: none
 * @param form                 iec-normal, iec-standard or isa-scfh
 * @returns flow in mol/s, Fgamma, x, x choked, Y, FP, xTP, whether it chokes
 * @throws CalcError CALC-001, CALC-002, CALC-003 or CALC-005 by the name of the input; CALC-006 by pipingFactors
 * @source [S-18] compressible flow
 * @example gasFlow({ kv: 100, inletPaAbs: 451325, outletPaAbs: 101325, temperatureK: 293.15, molarMassKgPerMol: 0.02897,
 *   heatRatio: 1.4, compressibility: 1, pressureDropRatioXt: 0.72, form: 'iec-normal' }).expansionFactor // 0.6666667
 */
export function gasFlow(input: GasInput & { readonly kv: number }): GasFlow {
  const { kv, inletPaAbs, temperatureK, molarMassKgPerMol, compressibility, pressureDropRatioXt } = input;
  const form =
    GAS_FORMS[oneOf({ name: 'form', value: input.form, choices: Object.keys(GAS_FORMS) as GasForm[] })];
  refuseOutside({ temperatureK, molarMassKgPerMol, compressibility }, ABOVE_ZERO);
  refuseOutside({ pressureDropRatioXt }, { above: 0, atMost: 1 });
  const piping = pipingFactors({ kv, fittings: input.fittings ?? null, pressureDropRatioXt });
  const ratios = dropRatios({ ...input, dropRatioWithPiping: piping.dropRatioWithPiping });
  const sizing = Math.min(ratios.dropRatio, ratios.dropRatioChoked);
  const expansionFactor = 1 - sizing / (3 * ratios.dropRatioChoked);
  const massGPerMol = fromSi({ valueSi: molarMassKgPerMol, unit: 'g/mol' });
  const temperature = fromSi({ valueSi: temperatureK, unit: form.temperature });
  const flow =
    fromSi({ valueSi: kv, unit: form.coefficient }) *
    form.n9 *
    piping.pipingFactor *
    fromSi({ valueSi: inletPaAbs, unit: form.pressure }) *
    expansionFactor *
    Math.sqrt(sizing / (massGPerMol * temperature * compressibility));
  return { kv, flowMolPerS: toSi({ value: flow, unit: form.flow }), ...ratios, expansionFactor, ...piping };
}

/**
 * Flow coefficient that a gas flow needs.
 *
 * Shape: flow and state in; the inverse of gasFlow, solved to convergence with xTP and FP of the answer itself.
 * Valid: as gasFlow.
 * @param flowMolPerS          above 0
 * @param inletPaAbs           above 0
 * @param outletPaAbs          0 or more, below the inlet
 * @param temperatureK         above 0
 * @param molarMassKgPerMol    above 0
 * @param heatRatio            above 1, at most 2
 * @param compressibility      above 0
 * @param pressureDropRatioXt  above 0, at most 1
 * @param fittings             sizes of valve and pipes; blank: none
 * @param form                 iec-normal, iec-standard or isa-scfh
 * @returns Kv with each factor
 * @throws CalcError CALC-001, CALC-002, CALC-003 or CALC-005 by the name of the input; CALC-006 if there is no answer
 * @source [S-18] compressible flow
 * @example gasKv({ flowMolPerS: toSi({ value: 0.46, unit: 'Nm3/h' }), inletPaAbs: 280e3, outletPaAbs: 130e3, temperatureK: 320,
 *   molarMassKgPerMol: 0.03995, heatRatio: 1.67, compressibility: 1, pressureDropRatioXt: 0.8, form: 'iec-normal' }).kv // 0.012691358
 */
export function gasKv(input: GasInput & { readonly flowMolPerS: number }): GasFlow {
  const { flowMolPerS } = input;
  refuseOutside({ flowMolPerS }, ABOVE_ZERO);
  const flowOf = (kv: number) => gasFlow({ ...input, kv }).flowMolPerS;
  return gasFlow({ ...input, kv: kvFor({ flowOf, wanted: flowMolPerS, name: 'flowMolPerS' }) });
}

/**
 * The outlet pressure below which a gas flows no faster.
 *
 * Shape: inlet, gamma and xT in, a pressure out. P2 = P1 · (1 − Fgamma · xT)
 * Valid: as gasFlow, no fittings. An xT so large that the valve never chokes gives 0.
 * @param inletPaAbs           above 0
 * @param heatRatio            above 1, at most 2
 * @param pressureDropRatioXt  above 0, at most 1
 * @returns absolute pressure in Pa
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-18] choked compressible flow
 * @example gasChokingOutletPaAbs({ inletPaAbs: 100000, heatRatio: 1.3, pressureDropRatioXt: 1 }) // 7142.857
 */
export function gasChokingOutletPaAbs(input: {
  readonly inletPaAbs: number;
  readonly heatRatio: number;
  readonly pressureDropRatioXt: number;
}): number {
  const { inletPaAbs, heatRatio, pressureDropRatioXt } = input;
  refuseOutside({ inletPaAbs }, ABOVE_ZERO);
  refuseOutside({ heatRatio }, HEAT_RATIO);
  refuseOutside({ pressureDropRatioXt }, { above: 0, atMost: 1 });
  return Math.max(0, inletPaAbs * (1 - (heatRatio / 1.4) * pressureDropRatioXt));
}

const HEAT_RATIO = { above: 1, atMost: 2 };

function dropRatios(input: GasInput & { readonly dropRatioWithPiping: number }) {
  const { inletPaAbs, outletPaAbs, heatRatio } = input;
  refuseOutside({ outletPaAbs }, ZERO_OR_MORE);
  refuseUnlessRising({ outletPaAbs, inletPaAbs });
  refuseOutside({ heatRatio }, HEAT_RATIO);
  const heatRatioFactor = heatRatio / 1.4;
  const dropRatio = (inletPaAbs - outletPaAbs) / inletPaAbs;
  const dropRatioChoked = heatRatioFactor * input.dropRatioWithPiping;
  return {
    heatRatioFactor,
    dropRatio,
    dropRatioChoked,
    choked: dropRatio >= dropRatioChoked,
    heatRatioTested: heatRatio > 1.08 && heatRatio < 1.65,
  };
}
