import { expect } from 'vitest';
import { classViFigure } from '../../procedures/calculations/class-vi-table.ts';
import { classReached } from '../../procedures/calculations/leak-measured.ts';
import { ratedCapacityGas, ratedCapacityLiquidM3PerS } from '../../procedures/calculations/rated-capacity.ts';
import {
  FCI_CLASS_V_ML_PER_MIN_PER_IN_PER_PSI,
  type FciCapacityClass,
  fciCapacityLimit,
  fciClassV,
  fciClassVAir,
  fciClassVi,
} from '../../procedures/calculations/seat-leakage-fci.ts';
import {
  IEC_CLASS_V_L_PER_H_PER_MM_PER_KPA,
  type IecCapacityClass,
  iecCapacityLimit,
  iecClassVi,
  iecClassVM3PerS,
} from '../../procedures/calculations/seat-leakage-iec.ts';
import { fromSi, toSi } from '../../procedures/calculations/units.ts';
import { each, type Given, inNamedUnits, runCases } from './cases.ts';

function fciLiquid(given: Given) {
  given.notNeeded('medium');
  const capacityM3PerS = ratedCapacityLiquidM3PerS({
    ratedKv: given.si('rated_Cv'),
    testDropPa: given.si('test_dp_psi'),
    relativeDensity: given.number('specific_gravity'),
  });
  const { allowedLeak } = fciCapacityLimit({
    leakageClass: given.text('leakage_class') as FciCapacityClass,
    ratedCapacity: capacityM3PerS,
  });
  return { capacityM3PerS, allowedLeak };
}

function fciLiquidCase(given: Given) {
  const { capacityM3PerS, allowedLeak } = fciLiquid(given);
  return inNamedUnits({
    rated_capacity_gpm: capacityM3PerS,
    allowable_leak_gpm: allowedLeak,
    allowable_leak_ml_per_min: allowedLeak,
  });
}

function iecLiquidCapacity(given: Given): number {
  given.notNeeded('medium');
  return ratedCapacityLiquidM3PerS({
    ratedKv: given.number('rated_Kv'),
    testDropPa: given.si('test_dp_kPa'),
    relativeDensity: given.number('relative_density'),
  });
}

function iecLiquid(given: Given) {
  const capacityM3PerS = iecLiquidCapacity(given);
  const { allowedLeak } = iecCapacityLimit({
    leakageClass: given.text('leakage_class') as IecCapacityClass,
    ratedCapacity: capacityM3PerS,
  });
  return inNamedUnits({
    rated_capacity_m3_per_h: capacityM3PerS,
    allowable_leak_l_per_h: allowedLeak,
    allowable_leak_ml_per_min: allowedLeak,
  });
}

function iecGas(given: Given) {
  given.notNeeded('medium');
  const capacity = ratedCapacityGas({
    ratedKv: given.number('rated_Kv'),
    inletPa: given.si('inlet_gauge_kPa'),
    outletPa: given.si('outlet_gauge_kPa'),
    atmospherePaAbs: given.si('atmospheric_pressure_kPa_abs'),
    temperatureK: given.si('temperature_C'),
    molarMassKgPerMol: given.si('molar_mass_g_per_mol'),
    heatRatio: given.number('gamma'),
    compressibility: given.number('Z'),
    pressureDropRatioXt: given.number('xT_at_rated_travel'),
    form: 'iec-normal',
  });
  const { allowedLeak } = iecCapacityLimit({
    leakageClass: given.text('leakage_class') as IecCapacityClass,
    ratedCapacity: capacity.flowMolPerS,
  });
  return {
    choked: capacity.choked,
    Y: capacity.expansionFactor,
    ...inNamedUnits({
      'rated_capacity_normal_m3_per_h_0C_101.325kPa': capacity.flowMolPerS,
      'allowable_leak_normal_l_per_min_0C_101.325kPa': allowedLeak,
    }),
  };
}

function fciGas(given: Given) {
  given.notNeeded('medium');
  const capacity = ratedCapacityGas({
    ratedKv: given.si('rated_Cv'),
    inletPa: given.si('inlet_gauge_psi'),
    outletPa: given.si('outlet_gauge_psi'),
    atmospherePaAbs: given.si('atmospheric_pressure_psia'),
    temperatureK: given.si('temperature_F'),
    molarMassKgPerMol: given.si('molar_mass_lb_per_lbmol'),
    heatRatio: given.number('gamma'),
    compressibility: given.number('Z'),
    pressureDropRatioXt: given.number('xT_at_rated_travel'),
    form: 'isa-scfh',
  });
  const { allowedLeak } = fciCapacityLimit({
    leakageClass: given.text('leakage_class') as FciCapacityClass,
    ratedCapacity: capacity.flowMolPerS,
  });
  const scfh = fromSi({ valueSi: allowedLeak, unit: 'scfh' });
  return {
    choked: capacity.choked,
    Y: capacity.expansionFactor,
    'rated_capacity_scfh_60F_14.696psia': fromSi({ valueSi: capacity.flowMolPerS, unit: 'scfh' }),
    'allowable_leak_scfh_60F_14.696psia': scfh,
    // The same base on both sides: only the volume changes its unit.
    'allowable_leak_std_ml_per_min_60F_14.696psia':
      fromSi({ valueSi: toSi({ value: scfh, unit: 'ft3' }), unit: 'ml' }) / 60,
  };
}

function classViFci(given: Given) {
  given.notNeeded('leakage_class', 'medium', 'table_convention');
  const { mlPerMin, bubblesPerMin } = fciClassVi({ portDiameterM: given.si('nominal_port_diameter_in') });
  return { allowable_leak_ml_per_min: mlPerMin, allowable_bubbles_per_min: bubblesPerMin };
}

function reached(given: Given) {
  given.notNeeded('standard');
  const found = classReached({
    standard: 'IEC 60534-4',
    ratedCapacity: iecLiquidCapacity(given),
    measuredLeak: given.si('measured_ml_per_min'),
  });
  const limits = Object.entries(found.limits).map(([name, limit]) => [
    name,
    fromSi({ valueSi: limit, unit: 'ml/min' }),
  ]);
  return { limits_ml_per_min: Object.fromEntries(limits), class_reached: found.classReached };
}

runCases('seat-leakage', {
  ...each(['seat-r01', 'seat-r02', 'seat-r21'], fciLiquidCase),
  ...each(['seat-r03', 'seat-r04', 'seat-r05'], iecLiquid),
  ...each(['seat-r06', 'seat-r07', 'seat-r22'], iecGas),
  ...each(['seat-r08', 'seat-r18'], fciGas),
  'seat-r09': (given) => {
    given.notNeeded('leakage_class', 'medium');
    const { allowedLeakM3PerS } = fciClassV({
      portDiameterM: given.si('port_diameter_in'),
      testDropPa: given.si('test_dp_psi'),
    });
    return inNamedUnits({ allowable_leak_ml_per_min: allowedLeakM3PerS });
  },
  'seat-r10': (given) => {
    given.notNeeded('leakage_class', 'medium');
    const leak = iecClassVM3PerS({
      seatDiameterM: given.si('seat_diameter_mm'),
      testDropPa: given.si('test_dp_kPa'),
    });
    return inNamedUnits({ allowable_leak_l_per_h: leak, allowable_leak_ml_per_min: leak });
  },
  'seat-r11': (given) => {
    given.notNeeded('leakage_class', 'medium');
    const { allowedLeakMolPerS, testDropPa } = fciClassVAir({
      orificeDiameterM: given.si('orifice_diameter_in'),
    });
    expect(testDropPa).toBeCloseTo(given.si('test_dp_psi'), 6);
    return inNamedUnits({ 'allowable_leak_std_ml_per_min_15C_101.325kPa': allowedLeakMolPerS });
  },
  ...each(['seat-r12', 'seat-r13', 'seat-r14', 'seat-r19'], classViFci),
  'seat-r15': (given) => {
    given.notNeeded('leakage_class', 'medium', 'table_convention');
    const found = iecClassVi({
      seatDiameterM: given.si('seat_diameter_mm'),
      testDropPa: given.si('test_dp_kPa'),
    });
    return {
      table_coefficient_ml_per_min: found.tabled.mlPerMin,
      ...inNamedUnits({ allowable_leak_ml_per_min: found.allowedLeakM3PerS }),
    };
  },
  'seat-r16': (given) => {
    given.notNeeded('leakage_class', 'medium', 'table_convention');
    const { mlPerMin } = classViFigure({ portDiameterM: given.si('seat_diameter_mm'), sizes: 'millimetre' });
    return { table_coefficient_ml_per_min: mlPerMin };
  },
  'seat-r17': (given) => {
    expect(FCI_CLASS_V_ML_PER_MIN_PER_IN_PER_PSI).toBe(given.number('constant_us_ml_per_min_per_in_per_psi'));
    expect(IEC_CLASS_V_L_PER_H_PER_MM_PER_KPA).toBe(given.number('constant_si_l_per_h_per_mm_per_kPa'));
    const oneMmOneBar = { testDropPa: 1e5 };
    const us = fciClassV({ portDiameterM: 0.001, ...oneMmOneBar }).allowedLeakM3PerS;
    const si = iecClassVM3PerS({ seatDiameterM: 0.001, ...oneMmOneBar });
    return {
      us_constant_in_m3_per_s_per_mm_per_bar: us,
      si_constant_in_m3_per_s_per_mm_per_bar: si,
      ratio_us_over_si: us / si,
    };
  },
  'seat-r20': (given) => {
    const { allowedLeak } = fciLiquid(given);
    return {
      pass: given.si('measured_ml_per_min') <= allowedLeak,
      ...inNamedUnits({ allowable_leak_ml_per_min: allowedLeak }),
    };
  },
  ...each(['seat-r23', 'seat-r24'], reached),
});
