import { springEnergy } from '../../procedures/calculations/spring-energy.ts';
import {
  type EnergyForm,
  gasEnergyJ,
  pressureTestDistance,
  pressureTestEnergy,
} from '../../procedures/calculations/stored-energy.ts';
import { fromSi } from '../../procedures/calculations/units.ts';
import { each, type Given, runCases } from './cases.ts';

const footPounds = (energyJ: number) => fromSi({ valueSi: energyJ, unit: 'ft.lbf' });

function testSi(given: Given) {
  given.notNeeded('medium');
  const { energyJ, tntKg } = pressureTestEnergy({
    volumeM3: given.number('volume_m3'),
    testPa: given.number('test_pressure_gauge_Pa'),
    atmospherePaAbs: given.number('atmospheric_Pa'),
    form: 'SI',
  });
  return { stored_energy_J: energyJ, TNT_kg: tntKg };
}

function forms(given: Given) {
  const volume = {
    volumeM3: given.number('volume_m3'),
    pressurePaAbs: given.number('p_abs_Pa'),
    atmospherePaAbs: given.number('p_atm_Pa'),
    heatRatio: given.number('k'),
  };
  const by = (form: EnergyForm) => gasEnergyJ({ form, ...volume });
  return {
    isentropic_J: by('isentropic'),
    Brode_J: by('constant volume'),
    isothermal_J: by('isothermal'),
    isothermal_availability_J: by('isothermal availability'),
  };
}

function distance(given: Given) {
  const { byFormulaM, requiredM } = pressureTestDistance({
    energyJ: given.number('stored_energy_J'),
    edition: given.text('edition_form').startsWith('2008') ? '2008' : 'later',
  });
  return { R_by_formula_m: byFormulaM, R_required_m: requiredM };
}

/** From the free length: nothing of the deflection is preload. */
function freeSpring(given: Given) {
  const { fullTravelJ } = springEnergy({
    springRateNPerM: given.si('spring_rate_lbf_per_in'),
    installedM: 0,
    fullTravelM: given.si('deflection_in'),
  });
  return {
    energy_in_lbf: fromSi({ valueSi: fullTravelJ, unit: 'in.lbf' }),
    energy_ft_lbf: footPounds(fullTravelJ),
    energy_J: fullTravelJ,
  };
}

runCases('stored-energy', {
  ...each(['energy-r01', 'energy-r02'], testSi),
  'energy-r03': (given) => {
    const { energyJ, tntKg } = pressureTestEnergy({
      volumeM3: given.si('volume_ft3'),
      testPa: given.si('test_pressure_psig'),
      atmospherePaAbs: given.si('atmospheric_psia'),
      form: 'US',
    });
    return { stored_energy_ft_lbf: footPounds(energyJ), TNT_lb: fromSi({ valueSi: tntKg, unit: 'lb' }) };
  },
  ...each(['energy-r04', 'energy-r05'], forms),
  ...each(['energy-r06', 'energy-r07'], distance),
  'energy-r08': (given) => {
    const energy = springEnergy({
      springRateNPerM: given.si('spring_rate_N_per_mm'),
      installedM: given.si('deflection_installed_mm'),
      fullTravelM: given.si('deflection_full_travel_mm'),
    });
    return {
      energy_installed_J: energy.installedJ,
      energy_full_travel_J: energy.fullTravelJ,
      energy_added_by_stroke_J: energy.addedByStrokeJ,
    };
  },
  ...each(['energy-r09', 'energy-r11'], freeSpring),
  'energy-r10': (given) => ({
    stored_energy_ft_lbf: footPounds(
      gasEnergyJ({
        form: 'isentropic',
        volumeM3: given.si('volume_ft3'),
        pressurePaAbs: given.si('p_psia'),
        atmospherePaAbs: given.si('atmospheric_psia'),
        heatRatio: given.number('k'),
      }),
    ),
  }),
});
