import { ABOVE_ZERO, oneOf, refuseOutside, ZERO_OR_MORE } from './checks.ts';
import { toSi } from './units.ts';

/** The forms differ by up to a factor of 2.5 on the same data: an energy is always given with its form. */
export type EnergyForm = 'isentropic' | 'constant volume' | 'isothermal' | 'isothermal availability';

export const ENERGY_FORMS: readonly EnergyForm[] = [
  'isentropic',
  'constant volume',
  'isothermal',
  'isothermal availability',
];

interface GasVolume {
  readonly volumeM3: number;
  readonly pressurePaAbs: number;
  readonly atmospherePaAbs: number;
}

/**
 * Energy that a gas under pressure can set free.
 *
 * Shape: form, volume, pressure, barometer and heat ratio in, an energy out.
 *   isentropic p V/(k − 1) · (1 − (pa/p)^((k−1)/k)); constant volume (p − pa) V/(k − 1); isothermal p V ln(p/pa);
 *   isothermal availability p V (ln(p/pa) − 1 + pa/p)
 * Valid: absolute pressures; a double-acting cylinder has two volumes, and hoses count.
 * @param form             isentropic, constant volume, isothermal or isothermal availability
 * @param volumeM3         above 0
 * @param pressurePaAbs    not below the barometer
 * @param atmospherePaAbs  above 0
 * @param heatRatio        k; above 1, at most 2
 * @returns energy in J
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-005 if the form is unknown
 * @source [S-33] isentropic form; the others are named in the literature of vessel bursts
 * @example gasEnergyJ({ form: 'isentropic', volumeM3: 0.005, pressurePaAbs: 5e5, atmospherePaAbs: 1e5, heatRatio: 1.4 }) // 2303.84
 */
export function gasEnergyJ(
  input: GasVolume & { readonly form: EnergyForm; readonly heatRatio: number },
): number {
  const { volumeM3, pressurePaAbs: p, atmospherePaAbs: pa, heatRatio: k } = input;
  const form = oneOf({ name: 'form', value: input.form, choices: ENERGY_FORMS });
  refuseOutside({ volumeM3, atmospherePaAbs: pa }, ABOVE_ZERO);
  refuseOutside({ pressurePaAbs: p }, { atLeast: pa });
  refuseOutside({ heatRatio: k }, { above: 1.0001, atMost: 2 });
  const forms: Readonly<Record<EnergyForm, () => number>> = {
    isentropic: () => ((p * volumeM3) / (k - 1)) * (1 - (pa / p) ** ((k - 1) / k)),
    'constant volume': () => ((p - pa) * volumeM3) / (k - 1),
    isothermal: () => p * volumeM3 * Math.log(p / pa),
    'isothermal availability': () => p * volumeM3 * (Math.log(p / pa) - 1 + pa / p),
  };
  return forms[form]();
}

export type TntForm = 'SI' | 'US';

/**
 * J for one kg of explosive in the two printed forms of the rule: 4 266 920 J/kg, and 1 488 617 ft·lbf/lb. They differ
 * by 4 %, so each is used as printed and never converted into the other.
 */
const J_PER_KG_TNT: Readonly<Record<TntForm, number>> = {
  SI: 4_266_920,
  US: toSi({ value: 1_488_617, unit: 'ft.lbf' }) / toSi({ value: 1, unit: 'lb' }),
};

/**
 * Stored energy of a pressure test by ASME PCC-2, air or nitrogen.
 *
 * Shape: volume, gauge pressure and barometer in, energy and mass of explosive out.
 *   E = 2.5 · p · V · (1 − (pa/p)^0.286)
 * Valid: k = 1.4 with the rule's rounded exponent. Written for vessels and piping: an indicator of hazard for an
 *   actuator, from which no distance is derived.
 * @param volumeM3         above 0
 * @param testPa           gauge; 0 or more
 * @param atmospherePaAbs  above 0; the rule takes 101 000 Pa, or 14.7 psi
 * @param form             SI or US: whose figure for the explosive
 * @returns energy in J, mass of explosive in kg
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-005 if the form is unknown
 * @source [S-33] appendix II
 * @example pressureTestEnergy({ volumeM3: 0.01, testPa: 600e3, atmospherePaAbs: 101e3, form: 'SI' })
 *   // { energyJ: 7455.25, tntKg: 0.00174722 }
 */
export function pressureTestEnergy(input: {
  readonly volumeM3: number;
  readonly testPa: number;
  readonly atmospherePaAbs: number;
  readonly form: TntForm;
}): { readonly energyJ: number; readonly tntKg: number } {
  const { volumeM3, testPa, atmospherePaAbs } = input;
  const form = oneOf<TntForm>({ name: 'form', value: input.form, choices: ['SI', 'US'] });
  refuseOutside({ volumeM3, atmospherePaAbs }, ABOVE_ZERO);
  refuseOutside({ testPa }, ZERO_OR_MORE);
  const pressurePaAbs = testPa + atmospherePaAbs;
  const energyJ = 2.5 * pressurePaAbs * volumeM3 * (1 - (atmospherePaAbs / pressurePaAbs) ** 0.286);
  return { energyJ, tntKg: energyJ / J_PER_KG_TNT[form] };
}

export type DistanceEdition = '2008' | 'later';

/** Least distance in m up to an energy in J: the rule's floors. */
const DISTANCE_FLOORS = [
  { upToJ: 135.5e6, distanceM: 30 },
  { upToJ: 271e6, distanceM: 60 },
] as const;

/**
 * Distance that the rule for pressure tests of vessels and piping asks for.
 *
 * Shape: energy and edition in, distances out. R = 20 m · (TNT in kg)^(1/3); a later reproduction has 2 TNT
 * Valid: vessels and piping under pressure test only. Its floor of 30 m makes no sense for an actuator case: never
 *   shown there.
 * @param energyJ  0 or more
 * @param edition  2008, or later (twice the explosive; 26 % further)
 * @returns mass of explosive, distance by the formula, floor, and the larger of the two
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-005 if the edition is unknown
 * @source [S-33] appendix II; the two editions disagree
 * @example pressureTestDistance({ energyJ: 500000, edition: '2008' })
 *   // { tntKg: 0.117181, byFormulaM: 9.78698, floorM: 30, requiredM: 30 }
 */
export function pressureTestDistance(input: {
  readonly energyJ: number;
  readonly edition: DistanceEdition;
}): {
  readonly tntKg: number;
  readonly byFormulaM: number;
  readonly floorM: number;
  readonly requiredM: number;
} {
  const { energyJ } = input;
  refuseOutside({ energyJ }, ZERO_OR_MORE);
  const edition = oneOf<DistanceEdition>({
    name: 'edition',
    value: input.edition,
    choices: ['2008', 'later'],
  });
  const tntKg = energyJ / J_PER_KG_TNT.SI;
  const byFormulaM = 20 * Math.cbrt(edition === '2008' ? tntKg : 2 * tntKg);
  const floorM = DISTANCE_FLOORS.find(({ upToJ }) => energyJ <= upToJ)?.distanceM ?? 0;
  return { tntKg, byFormulaM, floorM, requiredM: Math.max(byFormulaM, floorM) };
}
