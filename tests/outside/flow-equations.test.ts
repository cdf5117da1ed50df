import { fittingLosses } from '../../procedures/calculations/fittings.ts';
import { gasChokingOutletPaAbs, gasFlow, gasKv } from '../../procedures/calculations/gas-flow.ts';
import {
  liquidChoking,
  liquidFlow,
  liquidKv,
  valveReynolds,
} from '../../procedures/calculations/liquid-flow.ts';
import { convert, toSi } from '../../procedures/calculations/units.ts';
import { each, type Given, inNamedUnits, runCases } from './cases.ts';

function sizes(given: Given) {
  return {
    valveM: given.si('valve_mm'),
    pipeInM: given.si('pipe_in_mm', 'mm'),
    pipeOutM: given.si('pipe_out_mm', 'mm'),
  };
}

function sized(given: Given) {
  given.notNeeded('viscosity_Pa_s');
  return liquidKv({
    flowM3PerS: given.si('flow_m3_per_h'),
    inletPaAbs: given.si('P1_kPa_abs'),
    outletPaAbs: given.si('P2_kPa_abs'),
    relativeDensity: given.number('density_kg_per_m3') / given.number('reference_density_kg_per_m3'),
    vapourPaAbs: given.si('vapour_pressure_kPa_abs'),
    criticalPaAbs: given.si('critical_pressure_kPa_abs'),
    recoveryFl: given.number('FL'),
    fittings: given.has('valve_mm') ? sizes(given) : null,
  });
}

function gasState(given: Given) {
  return {
    inletPaAbs: given.si('P1_kPa_abs'),
    outletPaAbs: given.si('P2_kPa_abs'),
    temperatureK: given.has('temperature_K') ? given.si('temperature_K') : given.si('temperature_C'),
    molarMassKgPerMol: given.si('molar_mass_g_per_mol'),
    heatRatio: given.number('gamma'),
    compressibility: given.number('Z'),
    pressureDropRatioXt: given.number('xT'),
    form: 'iec-normal' as const,
  };
}

function passed(given: Given) {
  const flow = gasFlow({ kv: given.number('Kv'), ...gasState(given) });
  return {
    Fgamma: flow.heatRatioFactor,
    x: flow.dropRatio,
    x_choked: flow.dropRatioChoked,
    choked: flow.choked,
    Y: flow.expansionFactor,
    ...inNamedUnits({ 'flow_normal_m3_per_h_0C_101.325kPa': flow.flowMolPerS }),
  };
}

function liquidPassed(given: Given) {
  const flow = liquidFlow({
    kv: given.number('Kv'),
    inletPaAbs: given.si('P1_kPa_abs'),
    outletPaAbs: given.si('P2_kPa_abs'),
    relativeDensity: given.number('relative_density'),
    vapourPaAbs: given.si('vapour_pressure_kPa_abs'),
    criticalPaAbs: given.si('critical_pressure_kPa_abs'),
    recoveryFl: given.number('FL'),
  });
  return {
    FF: flow.criticalRatioFactor,
    choked: flow.choked,
    ...inNamedUnits({ dp_choked_kPa: flow.dropChokedPa, flow_m3_per_h: flow.flowM3PerS }),
  };
}

runCases('flow-equations', {
  'flow-r01': (given) => {
    const { kv, criticalRatioFactor, choked } = sized(given);
    return { FF: criticalRatioFactor, choked, Kv: kv };
  },
  'flow-r02': (given) => {
    const { kv, choked } = sized(given);
    return { choked, Kv: kv };
  },
  'flow-r03': (given) => ({
    P2_at_choking_Pa: liquidChoking({
      inletPaAbs: given.number('P1_Pa'),
      vapourPaAbs: given.number('vapour_pressure_Pa'),
      criticalPaAbs: given.number('critical_pressure_Pa'),
      recoveryFl: given.number('FL'),
    }).outletPaAbs,
  }),
  // Choking is left out by an FL of 1, at which this drop does not choke.
  'flow-r04': (given) => {
    given.notNeeded('FL', 'viscosity_Pa_s');
    const { kv } = liquidKv({
      flowM3PerS: given.si('flow_m3_per_h'),
      inletPaAbs: given.si('P1_kPa_abs'),
      outletPaAbs: given.si('P2_kPa_abs'),
      relativeDensity: given.number('density_kg_per_m3') / given.number('reference_density_kg_per_m3'),
      vapourPaAbs: given.si('vapour_pressure_kPa_abs'),
      criticalPaAbs: given.si('critical_pressure_kPa_abs'),
      recoveryFl: 1,
    });
    return { Kv_if_choking_ignored: kv };
  },
  'flow-r05': (given) => {
    given.notNeeded('FL', 'Fd', 'viscosity_Pa_s');
    const flow = gasKv({
      ...gasState(given),
      fittings: sizes(given),
      flowMolPerS: given.si('flow_normal_m3_per_h_0C_101.325kPa'),
    });
    return {
      Fgamma: flow.heatRatioFactor,
      x: flow.dropRatio,
      FP: flow.pipingFactor,
      xTP: flow.dropRatioWithPiping,
      Y: flow.expansionFactor,
      choked: flow.choked,
      Kv: flow.kv,
    };
  },
  'flow-r06': (given) => {
    const flow = gasKv({ ...gasState(given), flowMolPerS: given.si('flow_normal_m3_per_h_0C_101.325kPa') });
    return { Fgamma: flow.heatRatioFactor, x: flow.dropRatio, choked: flow.choked, Kv: flow.kv };
  },
  'flow-r07': (given) => ({ sum_zeta_fittings: fittingLosses(sizes(given)).sum }),
  'flow-r08': (given) => ({ Cv: convert({ value: given.number('Kv'), from: 'Kv', to: 'Cv' }) }),
  'flow-r09': (given) => ({ Kv: convert({ value: given.number('Cv'), from: 'Cv', to: 'Kv' }) }),
  ...each(['flow-r10', 'flow-r11'], passed),
  ...each(['flow-r12', 'flow-r13'], liquidPassed),
  // A piping factor alone stands in the case: a valve of Fp times the coefficient passes the same without fittings.
  'flow-r14': (given) => {
    const { kv } = liquidKv({
      flowM3PerS: given.si('flow_gpm'),
      inletPaAbs: given.si('P1_psia'),
      outletPaAbs: given.si('P2_psia'),
      relativeDensity: given.number('specific_gravity'),
      vapourPaAbs: 0,
      criticalPaAbs: toSi({ value: 4251, unit: 'kPa' }),
      recoveryFl: 1,
    });
    return inNamedUnits({ Cv: kv / given.number('Fp') });
  },
  'flow-r15': (given) => ({
    Rev: valveReynolds({
      flowM3PerS: given.si('flow_m3_per_h'),
      viscosityM2PerS: given.si('kinematic_viscosity_m2_per_s', 'm2/s'),
      kv: given.number('Kv'),
      recoveryFl: given.number('FL'),
      styleModifierFd: given.number('Fd'),
      valveM: given.si('valve_mm'),
    }).reynolds,
  }),
  'flow-r16': (given) => ({
    P2_at_choking_Pa: gasChokingOutletPaAbs({
      inletPaAbs: given.number('P1_Pa'),
      heatRatio: given.number('gamma'),
      pressureDropRatioXt: given.number('xT'),
    }),
  }),
});
