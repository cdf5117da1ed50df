import type { Dimension } from './unit-table.ts';

export interface NameEnding {
  readonly ending: string;
  /** Printed unit. */
  readonly unit: string;
  readonly dimension: Dimension;
}

/** What the end of a name says of its quantity. Longest first: the first that fits counts. */
const ENDINGS: readonly NameEnding[] = [
  { ending: 'M3PerSPa', unit: 'm³/(s·Pa)', dimension: 'conductance' },
  { ending: 'KgPerMol', unit: 'kg/mol', dimension: 'molarMass' },
  { ending: 'KgPerM3', unit: 'kg/m³', dimension: 'density' },
  { ending: 'JPerKgK', unit: 'J/(kg·K)', dimension: 'ratio' },
  { ending: 'MolPerS', unit: 'mol/s', dimension: 'gasFlow' },
  { ending: 'Percent', unit: '%', dimension: 'percent' },
  { ending: 'M2PerS', unit: 'm²/s', dimension: 'viscosity' },
  { ending: 'M3PerS', unit: 'm³/s', dimension: 'flowVolume' },
  { ending: 'KgPerS', unit: 'kg/s', dimension: 'flowMass' },
  { ending: 'PerMin', unit: '1/min', dimension: 'ratio' },
  { ending: 'MPerS', unit: 'm/s', dimension: 'ratio' },
  { ending: 'NPerM', unit: 'N/m', dimension: 'forcePerLength' },
  { ending: 'PaAbs', unit: 'Pa absolute', dimension: 'pressure' },
  { ending: 'Mol', unit: 'mol', dimension: 'ratio' },
  { ending: 'Nm', unit: 'N·m', dimension: 'torque' },
  { ending: 'Kv', unit: '', dimension: 'flowCoefficient' },
  { ending: 'Kg', unit: 'kg', dimension: 'mass' },
  { ending: 'M2', unit: 'm²', dimension: 'area' },
  { ending: 'M3', unit: 'm³', dimension: 'volume' },
  { ending: 'Pa', unit: 'Pa', dimension: 'pressure' },
  { ending: 'M', unit: 'm', dimension: 'length' },
  { ending: 'N', unit: 'N', dimension: 'force' },
  { ending: 'S', unit: 's', dimension: 'time' },
  { ending: 'K', unit: 'K', dimension: 'temperature' },
  { ending: 'A', unit: 'A', dimension: 'current' },
  { ending: 'J', unit: 'J', dimension: 'energy' },
];

/** The ending that a name carries before its qualifier; undefined for a plain number. */
export function endingOf(name: string): NameEnding | undefined {
  const bare = name.replace(/(?<!Per)(Min|Max|Low|High)$/, '');
  return ENDINGS.find(({ ending }) => {
    const before = bare.at(-ending.length - 1);
    return bare.endsWith(ending) && before !== undefined && /[a-z0-9]/.test(before);
  });
}
