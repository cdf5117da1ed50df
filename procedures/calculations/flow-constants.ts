/**
 * Numerical constants of the control-valve equations, as the standard rounds them [S-18]. The form that a figure comes
 * from is named, since the rounded forms disagree by up to 0.35 %.
 */
export const N = {
  /** m³/h, kPa, Kv. */
  n1: 0.1,
  /** Kv, mm. */
  n2: 1.6e-3,
  /** m³/h, m²/s. */
  n4: 7.07e-2,
  /** Kv, mm. */
  n5: 1.8e-3,
  /** Kv, mm. */
  n18: 0.865,
} as const;

/** The range that the equations are tested for: C/(N18 · d²) below this. */
export const LARGEST_RELATIVE_CAPACITY = 0.047;

/** Below this valve Reynolds number the turbulent equations do not hold. */
export const TURBULENT_FROM = 10_000;

export type GasForm = 'iec-normal' | 'iec-standard' | 'isa-scfh';

export interface GasFormConstants {
  readonly title: string;
  readonly n9: number;
  readonly coefficient: 'Kv' | 'Cv';
  readonly pressure: 'kPa' | 'psi';
  readonly temperature: 'K' | 'degR';
  readonly flow: 'Nm3/h' | 'Sm3/h' | 'scfh';
}

/** N9 carries the state that gas volumes are counted at: 0 °C, 15 °C, or 60 °F. Absolute pressures and temperatures. */
export const GAS_FORMS: Readonly<Record<GasForm, GasFormConstants>> = {
  'iec-normal': {
    title: 'IEC, Kv, kPa, normal cubic metres at 0 °C',
    n9: 24.6,
    coefficient: 'Kv',
    pressure: 'kPa',
    temperature: 'K',
    flow: 'Nm3/h',
  },
  'iec-standard': {
    title: 'IEC, Kv, kPa, standard cubic metres at 15 °C',
    n9: 26,
    coefficient: 'Kv',
    pressure: 'kPa',
    temperature: 'K',
    flow: 'Sm3/h',
  },
  'isa-scfh': {
    title: 'ISA, Cv, psi, standard cubic feet at 60 °F',
    n9: 7320,
    coefficient: 'Cv',
    pressure: 'psi',
    temperature: 'degR',
    flow: 'scfh',
  },
};
