import { GAS_STATES, molPerM3, ZERO_CELSIUS_K } from './gas-states.ts';

/** What is measured. Inside, each is in its SI unit; pressure names say whether they are gauge or absolute. */
export const DIMENSIONS = {
  pressure: { title: 'pressure', si: 'kPa', us: 'psi' },
  length: { title: 'length', si: 'mm', us: 'in' },
  area: { title: 'area', si: 'cm2', us: 'in2' },
  volume: { title: 'volume', si: 'l', us: 'in3' },
  force: { title: 'force', si: 'N', us: 'lbf' },
  forcePerLength: { title: 'spring rate, or seat load for each length of port', si: 'N/mm', us: 'lbf/in' },
  torque: { title: 'torque', si: 'N.m', us: 'lbf.ft' },
  mass: { title: 'mass', si: 'kg', us: 'lb' },
  flowVolume: { title: 'liquid flow', si: 'm3/h', us: 'gpm' },
  gasFlow: { title: 'gas flow', si: 'Nl/min', us: 'scfh' },
  flowMass: { title: 'mass flow', si: 'kg/h', us: 'lb/h' },
  flowCoefficient: { title: 'flow coefficient', si: 'Kv', us: 'Cv' },
  conductance: { title: 'sonic conductance', si: 'dm3/(s.bar)', us: 'dm3/(s.bar)' },
  density: { title: 'density', si: 'kg/m3', us: 'lb/ft3' },
  viscosity: { title: 'kinematic viscosity', si: 'mm2/s', us: 'mm2/s' },
  molarMass: { title: 'molar mass', si: 'g/mol', us: 'lb/lbmol' },
  temperature: { title: 'temperature', si: 'degC', us: 'degF' },
  temperatureDifference: { title: 'difference of temperature', si: 'K diff', us: 'degF diff' },
  percent: { title: 'percent', si: '%', us: '%' },
  ratio: { title: 'plain number', si: '1', us: '1' },
  turns: { title: 'turns', si: 'turns', us: 'turns' },
  time: { title: 'time', si: 's', us: 's' },
  current: { title: 'current', si: 'mA', us: 'mA' },
  energy: { title: 'energy', si: 'J', us: 'ft.lbf' },
  threadsPerLength: { title: 'threads for each length', si: '1/mm', us: '1/in' },
} as const;

export type Dimension = keyof typeof DIMENSIONS;

export interface Unit {
  readonly dimension: Dimension;
  /** As printed behind a number. */
  readonly label: string;
  /** SI value of one unit. */
  readonly factor: number;
  /** Added to the value before the factor is applied: scales whose zero is not nothing. */
  readonly shift?: number;
  /** How many decimals are printed unless others are asked for. */
  readonly decimals: number;
}

const INCH_M = 0.0254;
const FOOT_M = 0.3048;
const POUND_KG = 0.45359237;
const STANDARD_GRAVITY_M_PER_S2 = 9.80665;
const LBF_N = POUND_KG * STANDARD_GRAVITY_M_PER_S2;
const PSI_PA = LBF_N / INCH_M ** 2;
const GALLON_M3 = 231 * INCH_M ** 3;
const HOUR_S = 3600;
const NORMAL_MOL = molPerM3(GAS_STATES.normal);
const STANDARD_MOL = molPerM3(GAS_STATES.standard);
const ANR_MOL = molPerM3(GAS_STATES.anr);
const SCF_MOL = molPerM3(GAS_STATES.scf) * FOOT_M ** 3;

/**
 * Every unit that is read, typed or printed [S-01]. Made of the exact definitions; water columns at a
 * temperature have only the digits that are printed. Three inches of water differ by 0.1 %.
 */
export const UNITS = {
  Pa: { dimension: 'pressure', label: 'Pa', factor: 1, decimals: 0 },
  kPa: { dimension: 'pressure', label: 'kPa', factor: 1e3, decimals: 1 },
  MPa: { dimension: 'pressure', label: 'MPa', factor: 1e6, decimals: 3 },
  mbar: { dimension: 'pressure', label: 'mbar', factor: 100, decimals: 0 },
  bar: { dimension: 'pressure', label: 'bar', factor: 1e5, decimals: 3 },
  psi: { dimension: 'pressure', label: 'psi', factor: PSI_PA, decimals: 2 },
  ksi: { dimension: 'pressure', label: 'ksi', factor: 1e3 * PSI_PA, decimals: 2 },
  'kgf/cm2': { dimension: 'pressure', label: 'kgf/cm²', factor: 98066.5, decimals: 3 },
  atm: { dimension: 'pressure', label: 'atm', factor: 101325, decimals: 4 },
  inH2O: { dimension: 'pressure', label: 'inH₂O', factor: 249.08891, decimals: 1 },
  'inH2O 4C': { dimension: 'pressure', label: 'inH₂O (4 °C)', factor: 249.082, decimals: 1 },
  'inH2O 60F': { dimension: 'pressure', label: 'inH₂O (60 °F)', factor: 248.84, decimals: 1 },
  'cmH2O 4C': { dimension: 'pressure', label: 'cmH₂O (4 °C)', factor: 98.0638, decimals: 1 },
  mmH2O: { dimension: 'pressure', label: 'mmH₂O', factor: 9.80665, decimals: 0 },
  mmHg: { dimension: 'pressure', label: 'mmHg', factor: 133.322387415, decimals: 1 },
  torr: { dimension: 'pressure', label: 'Torr', factor: 101325 / 760, decimals: 1 },
  inHg: { dimension: 'pressure', label: 'inHg', factor: 25.4 * 133.322387415, decimals: 2 },

  m: { dimension: 'length', label: 'm', factor: 1, decimals: 4 },
  cm: { dimension: 'length', label: 'cm', factor: 0.01, decimals: 2 },
  mm: { dimension: 'length', label: 'mm', factor: 1e-3, decimals: 2 },
  in: { dimension: 'length', label: 'in', factor: INCH_M, decimals: 3 },
  ft: { dimension: 'length', label: 'ft', factor: FOOT_M, decimals: 2 },

  m2: { dimension: 'area', label: 'm²', factor: 1, decimals: 5 },
  cm2: { dimension: 'area', label: 'cm²', factor: 1e-4, decimals: 1 },
  mm2: { dimension: 'area', label: 'mm²', factor: 1e-6, decimals: 1 },
  in2: { dimension: 'area', label: 'in²', factor: INCH_M ** 2, decimals: 2 },

  m3: { dimension: 'volume', label: 'm³', factor: 1, decimals: 4 },
  l: { dimension: 'volume', label: 'l', factor: 1e-3, decimals: 2 },
  ml: { dimension: 'volume', label: 'ml', factor: 1e-6, decimals: 1 },
  in3: { dimension: 'volume', label: 'in³', factor: INCH_M ** 3, decimals: 1 },
  ft3: { dimension: 'volume', label: 'ft³', factor: FOOT_M ** 3, decimals: 3 },
  gal: { dimension: 'volume', label: 'US gal', factor: GALLON_M3, decimals: 2 },

  N: { dimension: 'force', label: 'N', factor: 1, decimals: 0 },
  kN: { dimension: 'force', label: 'kN', factor: 1e3, decimals: 3 },
  lbf: { dimension: 'force', label: 'lbf', factor: LBF_N, decimals: 0 },
  kip: { dimension: 'force', label: 'kip', factor: 1e3 * LBF_N, decimals: 3 },
  kgf: { dimension: 'force', label: 'kgf', factor: STANDARD_GRAVITY_M_PER_S2, decimals: 1 },

  'N/m': { dimension: 'forcePerLength', label: 'N/m', factor: 1, decimals: 0 },
  'N/mm': { dimension: 'forcePerLength', label: 'N/mm', factor: 1e3, decimals: 2 },
  'lbf/in': { dimension: 'forcePerLength', label: 'lbf/in', factor: LBF_N / INCH_M, decimals: 1 },

  'N.m': { dimension: 'torque', label: 'N·m', factor: 1, decimals: 1 },
  'lbf.in': { dimension: 'torque', label: 'lbf·in', factor: LBF_N * INCH_M, decimals: 0 },
  'lbf.ft': { dimension: 'torque', label: 'lbf·ft', factor: LBF_N * FOOT_M, decimals: 1 },

  kg: { dimension: 'mass', label: 'kg', factor: 1, decimals: 2 },
  g: { dimension: 'mass', label: 'g', factor: 1e-3, decimals: 1 },
  lb: { dimension: 'mass', label: 'lb', factor: POUND_KG, decimals: 2 },

  'm3/s': { dimension: 'flowVolume', label: 'm³/s', factor: 1, decimals: 6 },
  'm3/h': { dimension: 'flowVolume', label: 'm³/h', factor: 1 / HOUR_S, decimals: 2 },
  'l/h': { dimension: 'flowVolume', label: 'l/h', factor: 1e-3 / HOUR_S, decimals: 2 },
  'l/min': { dimension: 'flowVolume', label: 'l/min', factor: 1e-3 / 60, decimals: 2 },
  'ml/min': { dimension: 'flowVolume', label: 'ml/min', factor: 1e-6 / 60, decimals: 2 },
  gpm: { dimension: 'flowVolume', label: 'US gal/min', factor: GALLON_M3 / 60, decimals: 2 },
  'ft3/min': { dimension: 'flowVolume', label: 'ft³/min', factor: FOOT_M ** 3 / 60, decimals: 2 },

  'mol/s': { dimension: 'gasFlow', label: 'mol/s', factor: 1, decimals: 6 },
  'Nm3/h': { dimension: 'gasFlow', label: 'm³/h normal (0 °C)', factor: NORMAL_MOL / HOUR_S, decimals: 2 },
  'Nl/min': {
    dimension: 'gasFlow',
    label: 'l/min normal (0 °C)',
    factor: (NORMAL_MOL * 1e-3) / 60,
    decimals: 2,
  },
  'Nml/min': {
    dimension: 'gasFlow',
    label: 'ml/min normal (0 °C)',
    factor: (NORMAL_MOL * 1e-6) / 60,
    decimals: 1,
  },
  'Sm3/h': {
    dimension: 'gasFlow',
    label: 'm³/h standard (15 °C)',
    factor: STANDARD_MOL / HOUR_S,
    decimals: 2,
  },
  'Sl/min': {
    dimension: 'gasFlow',
    label: 'l/min standard (15 °C)',
    factor: (STANDARD_MOL * 1e-3) / 60,
    decimals: 2,
  },
  'Sml/min': {
    dimension: 'gasFlow',
    label: 'ml/min standard (15 °C)',
    factor: (STANDARD_MOL * 1e-6) / 60,
    decimals: 1,
  },
  'l/min ANR': {
    dimension: 'gasFlow',
    label: 'l/min ANR (20 °C)',
    factor: (ANR_MOL * 1e-3) / 60,
    decimals: 2,
  },
  'ml/min ANR': {
    dimension: 'gasFlow',
    label: 'ml/min ANR (20 °C)',
    factor: (ANR_MOL * 1e-6) / 60,
    decimals: 1,
  },
  scfh: { dimension: 'gasFlow', label: 'scfh (60 °F)', factor: SCF_MOL / HOUR_S, decimals: 2 },
  scfm: { dimension: 'gasFlow', label: 'scfm (60 °F)', factor: SCF_MOL / 60, decimals: 2 },

  'kg/s': { dimension: 'flowMass', label: 'kg/s', factor: 1, decimals: 5 },
  'kg/h': { dimension: 'flowMass', label: 'kg/h', factor: 1 / HOUR_S, decimals: 2 },
  'lb/h': { dimension: 'flowMass', label: 'lb/h', factor: POUND_KG / HOUR_S, decimals: 2 },

  // From the definitions: 1 US gal/min at 1 psi, put as m³/h at 1 bar.
  Kv: { dimension: 'flowCoefficient', label: 'Kv', factor: 1, decimals: 3 },
  Cv: {
    dimension: 'flowCoefficient',
    label: 'Cv',
    factor: (GALLON_M3 / 60) * HOUR_S * Math.sqrt(1e5 / PSI_PA),
    decimals: 3,
  },

  'm3/(s.Pa)': { dimension: 'conductance', label: 'm³/(s·Pa)', factor: 1, decimals: 12 },
  'dm3/(s.bar)': { dimension: 'conductance', label: 'dm³/(s·bar)', factor: 1e-8, decimals: 4 },

  'kg/m3': { dimension: 'density', label: 'kg/m³', factor: 1, decimals: 1 },
  'lb/ft3': { dimension: 'density', label: 'lb/ft³', factor: POUND_KG / FOOT_M ** 3, decimals: 2 },

  'm2/s': { dimension: 'viscosity', label: 'm²/s', factor: 1, decimals: 8 },
  'mm2/s': { dimension: 'viscosity', label: 'mm²/s (cSt)', factor: 1e-6, decimals: 2 },

  'kg/mol': { dimension: 'molarMass', label: 'kg/mol', factor: 1, decimals: 5 },
  'g/mol': { dimension: 'molarMass', label: 'g/mol', factor: 1e-3, decimals: 2 },
  'lb/lbmol': { dimension: 'molarMass', label: 'lb/lbmol', factor: 1e-3, decimals: 2 },

  K: { dimension: 'temperature', label: 'K', factor: 1, decimals: 1 },
  degC: { dimension: 'temperature', label: '°C', factor: 1, shift: ZERO_CELSIUS_K, decimals: 1 },
  degF: { dimension: 'temperature', label: '°F', factor: 5 / 9, shift: 459.67, decimals: 1 },
  degR: { dimension: 'temperature', label: '°R', factor: 5 / 9, decimals: 1 },

  'K diff': { dimension: 'temperatureDifference', label: 'K', factor: 1, decimals: 1 },
  'degF diff': { dimension: 'temperatureDifference', label: '°F', factor: 5 / 9, decimals: 1 },

  '%': { dimension: 'percent', label: '%', factor: 1, decimals: 1 },
  '1': { dimension: 'ratio', label: '', factor: 1, decimals: 3 },
  turns: { dimension: 'turns', label: 'turns', factor: 1, decimals: 2 },

  s: { dimension: 'time', label: 's', factor: 1, decimals: 1 },
  ms: { dimension: 'time', label: 'ms', factor: 1e-3, decimals: 0 },
  min: { dimension: 'time', label: 'min', factor: 60, decimals: 1 },
  h: { dimension: 'time', label: 'h', factor: HOUR_S, decimals: 2 },

  A: { dimension: 'current', label: 'A', factor: 1, decimals: 4 },
  mA: { dimension: 'current', label: 'mA', factor: 1e-3, decimals: 2 },

  J: { dimension: 'energy', label: 'J', factor: 1, decimals: 1 },
  kJ: { dimension: 'energy', label: 'kJ', factor: 1e3, decimals: 2 },
  'ft.lbf': { dimension: 'energy', label: 'ft·lbf', factor: LBF_N * FOOT_M, decimals: 1 },
  'in.lbf': { dimension: 'energy', label: 'in·lbf', factor: LBF_N * INCH_M, decimals: 0 },

  '1/m': { dimension: 'threadsPerLength', label: 'threads/m', factor: 1, decimals: 0 },
  '1/mm': { dimension: 'threadsPerLength', label: 'threads/mm', factor: 1e3, decimals: 3 },
  '1/in': { dimension: 'threadsPerLength', label: 'threads/in', factor: 1 / INCH_M, decimals: 0 },
} as const satisfies Readonly<Record<string, Unit>>;

export type UnitId = keyof typeof UNITS;
