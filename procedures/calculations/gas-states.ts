/** Molar gas constant in J/(mol·K), exact since the SI of 2019. */
export const GAS_CONSTANT_J_PER_MOL_K = 8.31446261815324;

/** Zero of the Celsius scale in K, exact. */
export const ZERO_CELSIUS_K = 273.15;

export interface GasState {
  readonly title: string;
  readonly temperatureK: number;
  readonly pressurePaAbs: number;
}

/**
 * The states that gas volumes are counted at: a gas flow without its state says nothing.
 * `scf` is the 60 degree Fahrenheit, 14.696 psi one; 14.7 and 14.73 psi and 68 or 70 °F are also in use.
 */
export const GAS_STATES = {
  normal: { title: 'normal, 0 °C and 101.325 kPa', temperatureK: 273.15, pressurePaAbs: 101325 },
  standard: { title: 'standard, 15 °C and 101.325 kPa', temperatureK: 288.15, pressurePaAbs: 101325 },
  anr: { title: 'ANR, 20 °C and 100 kPa', temperatureK: 293.15, pressurePaAbs: 100000 },
  scf: {
    title: 'standard cubic foot, 60 °F and 14.696 psi absolute',
    temperatureK: (60 + 459.67) * (5 / 9),
    pressurePaAbs: 14.696 * 6894.757293168361,
  },
} as const satisfies Readonly<Record<string, GasState>>;

/**
 * Amount of gas in one cubic metre at a state.
 *
 * Shape: a state in, a number out. n/V = p/(R · T)
 * Valid: ideal gas; air near atmospheric pressure follows it within 0.1 %.
 * @param temperatureK   absolute temperature; above 0
 * @param pressurePaAbs  absolute pressure; above 0
 * @returns amount in mol/m³
 * @source [S-01] ideal gas law with the exact gas constant
 * @example molPerM3(GAS_STATES.normal) // 44.615
 */
export function molPerM3({ temperatureK, pressurePaAbs }: Omit<GasState, 'title'>): number {
  return pressurePaAbs / (GAS_CONSTANT_J_PER_MOL_K * temperatureK);
}
