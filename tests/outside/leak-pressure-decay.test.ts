import { expect } from 'vitest';
import { GAS_CONSTANT_J_PER_MOL_K } from '../../procedures/calculations/gas-states.ts';
import { bubbleFlow } from '../../procedures/calculations/leak-measured.ts';
import { closedVolume, dropByLeakPa, pressureDecay } from '../../procedures/calculations/pressure-decay.ts';
import { chokedDischarge } from '../../procedures/calculations/sonic-conductance.ts';
import { each, type Given, inNamedUnits, runCases } from './cases.ts';

function decay(given: Given) {
  const { leakMolPerS } = pressureDecay({
    volumeM3: given.si('volume_l'),
    startPa: given.si('p1_gauge_kPa'),
    endPa: given.si('p2_gauge_kPa'),
    startAtmospherePaAbs: given.si('atmospheric_start_kPa'),
    endAtmospherePaAbs: given.si('atmospheric_end_kPa'),
    startK: given.si('T1_C'),
    endK: given.si('T2_C'),
    elapsedS: given.si('elapsed_s'),
  });
  return inNamedUnits({
    leak_mol_per_s: leakMolPerS,
    'leak_normal_ml_per_min_0C_101.325kPa': leakMolPerS,
    'leak_std_ml_per_min_15C_101.325kPa': leakMolPerS,
    leak_ANR_ml_per_min_20C_100kPa: leakMolPerS,
  });
}

runCases('leak-pressure-decay', {
  // The case counts air that comes in as positive; here gas that is lost is positive.
  'leak-r01': (given) => {
    expect(given.number('gas_constant_J_per_molK')).toBeCloseTo(GAS_CONSTANT_J_PER_MOL_K, 4);
    const atmosphere = 101325;
    const { leakMolPerS } = pressureDecay({
      volumeM3: given.number('volume_m3'),
      startPa: given.number('p1_Pa_abs') - atmosphere,
      endPa: given.number('p2_Pa_abs') - atmosphere,
      startAtmospherePaAbs: atmosphere,
      endAtmospherePaAbs: atmosphere,
      startK: given.number('T1_K'),
      endK: given.number('T2_K'),
      elapsedS: given.number('elapsed_s'),
    });
    return { leak_mol_per_s: -leakMolPerS };
  },
  ...each(['leak-r02', 'leak-r03', 'leak-r04', 'leak-r10', 'leak-r11'], decay),
  'leak-r05': (given) => {
    const { endPa, changePa } = closedVolume({
      pressurePa: given.si('p1_gauge_kPa'),
      atmospherePaAbs: given.si('atmospheric_kPa'),
      startK: given.si('T1_C'),
      endK: given.si('T2_C'),
    });
    return inNamedUnits({ p2_gauge_kPa: endPa, change_kPa: changePa });
  },
  'leak-r06': (given) => {
    given.notNeeded('reference_pressure_bar_abs', 'reference_temperature_C');
    const { timeConstantS, endPaAbs, endPa } = chokedDischarge({
      volumeM3: given.si('volume_dm3'),
      conductanceM3PerSPa: given.si('sonic_conductance_dm3_per_s_bar'),
      startPa: given.si('p0_gauge_bar'),
      atmospherePaAbs: given.si('atmospheric_bar'),
      temperatureK: given.si('temperature_C'),
      elapsedS: given.si('time_s'),
    });
    return { time_constant_s: timeConstantS, ...inNamedUnits({ p_abs_bar: endPaAbs, p_gauge_bar: endPa }) };
  },
  'leak-r07': (given) => ({
    ...inNamedUnits({
      pressure_drop_kPa: dropByLeakPa({
        volumeM3: given.si('volume_l'),
        leakMolPerS: given.si('leak_normal_ml_per_min_0C_101.325kPa'),
        temperatureK: given.si('temperature_C'),
        elapsedS: given.si('elapsed_s'),
      }),
    }),
  }),
  'leak-r08': (given) => {
    const { flowM3PerS } = bubbleFlow({
      bubbleDiameterM: given.si('bubble_diameter_mm'),
      bubblesPerMin: given.number('bubbles_per_min'),
    });
    return inNamedUnits({ flow_ml_per_min: flowM3PerS });
  },
  'leak-r09': (given) => {
    const flow = given.si('normal_l_per_min_0C_101.325kPa');
    return inNamedUnits({
      'std_l_per_min_15C_101.325kPa': flow,
      ANR_l_per_min_20C_100kPa: flow,
      'scfh_60F_14.696psia': flow,
    });
  },
});
