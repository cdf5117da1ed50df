import { expect } from 'vitest';
import {
  nozzleBackPressure,
  nozzleBackPressureSimplePa,
  nozzleGapSimpleM,
} from '../../procedures/calculations/nozzle-flapper.ts';
import {
  chokingOutletPa,
  conductanceOfHole,
  criticalPressureRatio,
  orificeFlow,
} from '../../procedures/calculations/orifice-flow.ts';
import { circleAreaM2 } from '../../procedures/calculations/plug-force.ts';
import { ANR_DENSITY_KG_PER_M3, restrictionFlow } from '../../procedures/calculations/sonic-conductance.ts';
import { each, type Given, inNamedUnits, runCases } from './cases.ts';

function anrDensity(given: Given): void {
  expect(given.number('rho_ANR_kg_per_m3')).toBe(ANR_DENSITY_KG_PER_M3);
}

function conductance(given: Given) {
  anrDensity(given);
  expect(given.number('reference_temperature_C')).toBe(20);
  const flow = restrictionFlow({
    conductanceM3PerSPa: given.si('C_dm3_per_s_bar'),
    criticalPressureRatio: given.number('critical_pressure_ratio_b'),
    inletPaAbs: given.si('p1_bar_abs'),
    outletPaAbs: given.si('p2_bar_abs'),
    inletK: given.si('T1_C'),
  });
  return {
    choked: flow.choked,
    flow_ANR_dm3_per_s: flow.flowAnrM3PerS * 1000,
    mass_flow_kg_per_s: flow.massFlowKgPerS,
  };
}

function hole(given: Given) {
  anrDensity(given);
  const flow = orificeFlow({
    areaM2: circleAreaM2(given.si('orifice_diameter_mm')),
    dischargeFactor: given.number('Cd'),
    inletPaAbs: given.si('p1_bar_abs'),
    outletPaAbs: given.si('p2_bar_abs'),
    inletK: given.si('T1_C'),
    heatRatio: given.number('k'),
    gasConstantJPerKgK: given.number('gas_constant_J_per_kgK'),
  });
  return {
    choked: flow.choked,
    mass_flow_kg_per_s: flow.massFlowKgPerS,
    flow_ANR_dm3_per_min: flow.flowAnrM3PerS * 60000,
  };
}

function simpleNozzle(given: Given) {
  const backPressurePa = nozzleBackPressureSimplePa({
    restrictionDiameterM: given.si('restriction_diameter_mm'),
    nozzleDiameterM: given.si('nozzle_diameter_mm'),
    gapM: given.si('gap_mm'),
    supplyPa: given.si('supply_gauge_kPa'),
  });
  return inNamedUnits({ nozzle_back_pressure_gauge_kPa: backPressurePa });
}

function nozzle(given: Given) {
  const state = nozzleBackPressure({
    restrictionDiameterM: given.si('restriction_diameter_mm'),
    nozzleDiameterM: given.si('nozzle_diameter_mm'),
    gapM: given.si('gap_mm'),
    supplyPa: given.si('supply_gauge_bar'),
    atmospherePaAbs: given.si('atmospheric_bar'),
    temperatureK: given.si('temperature_C'),
    dischargeFactorRestriction: given.number('Cd_restriction'),
    dischargeFactorNozzle: given.number('Cd_nozzle'),
    heatRatio: given.number('k'),
    gasConstantJPerKgK: given.number('gas_constant_J_per_kgK'),
  });
  return {
    restriction_choked: state.restrictionChoked,
    nozzle_choked: state.nozzleChoked,
    ...inNamedUnits({ nozzle_back_pressure_gauge_bar: state.backPressurePa }),
  };
}

runCases('orifice-nozzle', {
  ...each(['orif-r01', 'orif-r02', 'orif-r03'], conductance),
  'orif-r04': (given) => {
    const outletPa = chokingOutletPa({
      inletPa: given.si('inlet_psig'),
      atmospherePaAbs: given.si('atmospheric_psia'),
      criticalPressureRatio: given.number('critical_ratio_used'),
    });
    return inNamedUnits({ outlet_limit_psig: outletPa });
  },
  'orif-r05': (given) => ({
    P_critical_Pa: given.number('P1_Pa') * criticalPressureRatio({ heatRatio: given.number('k') }),
  }),
  ...each(['orif-r06', 'orif-r07'], hole),
  'orif-r08': (given) => {
    anrDensity(given);
    expect(given.number('reference_temperature_C')).toBe(20);
    const found = conductanceOfHole({
      diameterM: given.si('orifice_diameter_mm'),
      dischargeFactor: given.number('Cd'),
      heatRatio: given.number('k'),
      gasConstantJPerKgK: given.number('gas_constant_J_per_kgK'),
    });
    return inNamedUnits({
      C_m3_per_s_Pa: found.conductanceM3PerSPa,
      C_dm3_per_s_bar: found.conductanceM3PerSPa,
      effective_area_mm2: found.effectiveAreaM2,
    });
  },
  ...each(['orif-r09', 'orif-r10'], simpleNozzle),
  ...each(['orif-r11', 'orif-r12', 'orif-r13'], nozzle),
  'orif-r14': (given) => {
    const geometry = {
      restrictionDiameterM: given.si('restriction_diameter_mm'),
      nozzleDiameterM: given.si('nozzle_diameter_mm'),
      supplyPa: given.si('supply_gauge_kPa'),
    };
    const gapAt = (name: string) => nozzleGapSimpleM({ ...geometry, backPressurePa: given.si(name, 'kPa') });
    return inNamedUnits({ gap_change_mm: gapAt('back_pressure_to_kPa') - gapAt('back_pressure_from_kPa') });
  },
});
