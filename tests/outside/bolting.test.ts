import {
  boltTorqueNm,
  crossPattern,
  nutFactor,
  type PassScheme,
  pcc1Torque,
  torquePasses,
} from '../../procedures/calculations/bolting.ts';
import { glandTorque } from '../../procedures/calculations/gland.ts';
import { threadAreas } from '../../procedures/calculations/threads.ts';
import { fromSi, toSi } from '../../procedures/calculations/units.ts';
import { each, type Given, inNamedUnits, runCases } from './cases.ts';

const footPounds = (torqueNm: number) => fromSi({ valueSi: torqueNm, unit: 'lbf.ft' });
const pitchOf = (given: Given) => toSi({ value: 1 / given.number('threads_per_inch'), unit: 'in' });

function flangeBolt(given: Given) {
  given.notNeeded('torque_table');
  const boltDiameterM = given.si('bolt_diameter_in');
  const { rootAreaM2 } = threadAreas({ diameterM: boltDiameterM, pitchM: pitchOf(given) });
  const boltLoadN = rootAreaM2 * given.si('target_stress_ksi_on_root_area', 'ksi');
  const { nonCoatedNm, coatedNm } = pcc1Torque({ boltDiameterM });
  return {
    implied_K_noncoated: nutFactor({ torqueNm: nonCoatedNm, boltDiameterM, boltLoadN }),
    implied_K_coated: nutFactor({ torqueNm: coatedNm, boltDiameterM, boltLoadN }),
    ...inNamedUnits({
      root_area_in2: rootAreaM2,
      bolt_load_lbf: boltLoadN,
      torque_noncoated_ft_lbf: nonCoatedNm,
      torque_coated_ft_lbf: coatedNm,
    }),
  };
}

function gland(given: Given) {
  const found = glandTorque({
    method: 'one-page-1996',
    packing: given.text('packing'),
    boreDiameterM: given.si('stuffing_box_bore_in'),
    stemDiameterM: given.si('stem_diameter_in'),
    systemPa: given.si('system_pressure_psi'),
    bolts: given.number('gland_bolts'),
    boltDiameterM: given.si('gland_bolt_diameter_in'),
  });
  return inNamedUnits({
    packing_area_in2: found.packingAreaM2,
    packing_stress_psi: found.packingStressPa,
    gland_force_lbf: found.glandForceN,
    torque_per_bolt_in_lbf: found.torquePerBoltNm,
  });
}

/** The three crosswise passes; snug and check stand before and after them. */
function passes(given: Given) {
  const all = torquePasses({
    finalTorqueNm: given.si('final_torque_ft_lbf'),
    scheme: given.text('scheme') as PassScheme,
  });
  return all
    .filter(({ pattern }) => pattern === 'crosswise')
    .map(({ lowNm, highNm }) => [footPounds(lowNm), footPounds(highNm)] as const);
}

runCases('bolting', {
  ...each(['bolt-r01', 'bolt-r02', 'bolt-r03', 'bolt-r04'], flangeBolt),
  'bolt-r05': (given) => {
    const torqueNm = boltTorqueNm({
      nutFactor: given.number('nut_factor'),
      boltDiameterM: given.si('bolt_diameter_in'),
      boltLoadN: given.si('bolt_load_lbf'),
    });
    return inNamedUnits({ torque_in_lbf: torqueNm, torque_ft_lbf: torqueNm });
  },
  'bolt-r06': (given) => {
    const torqueNm = boltTorqueNm({
      nutFactor: given.number('nut_factor'),
      boltDiameterM: given.si('bolt_diameter_mm'),
      boltLoadN: given.si('bolt_load_kN'),
    });
    return { torque_Nm: torqueNm };
  },
  ...each(['bolt-r07', 'bolt-r08'], gland),
  'bolt-r09': (given) => {
    const [first, second, third] = passes(given);
    return {
      pass_1_ft_lbf: first?.[0] ?? null,
      pass_2_ft_lbf: second?.[0] ?? null,
      pass_3_ft_lbf: third?.[0] ?? null,
    };
  },
  'bolt-r10': (given) => {
    const [first, second, third] = passes(given);
    return {
      pass_1_range_ft_lbf: first ?? null,
      pass_2_range_ft_lbf: second ?? null,
      pass_3_ft_lbf: third?.[0] ?? null,
    };
  },
  'bolt-r11': (given) => {
    given.notNeeded('pattern');
    return { order: crossPattern({ bolts: given.number('bolts') }) };
  },
  ...each(['bolt-r12', 'bolt-r13', 'bolt-r14'], (given) =>
    inNamedUnits({
      stress_area_in2: threadAreas({ diameterM: given.si('diameter_in'), pitchM: pitchOf(given) })
        .stressAreaM2,
    }),
  ),
});
