import type { UnitId } from '../../procedures/calculations/unit-table.ts';
import { convert } from '../../procedures/calculations/units.ts';
import { each, type Given, runCases } from './cases.ts';

const UNITS_NAMED: Readonly<Record<string, readonly [UnitId, UnitId]>> = {
  psi_to_Pa: ['psi', 'Pa'],
  bar_to_Pa: ['bar', 'Pa'],
  kgf_per_cm2_to_Pa: ['kgf/cm2', 'Pa'],
  standard_atmosphere_to_Pa: ['atm', 'Pa'],
  inH2O_conventional_to_Pa: ['inH2O', 'Pa'],
  'inH2O_39.2F_to_Pa': ['inH2O 4C', 'Pa'],
  inH2O_60F_to_Pa: ['inH2O 60F', 'Pa'],
  mmHg_conventional_to_Pa: ['mmHg', 'Pa'],
  lbf_to_N: ['lbf', 'N'],
  inch_to_m: ['in', 'm'],
  US_gallon_to_m3: ['gal', 'm3'],
  US_gpm_to_m3_per_s: ['gpm', 'm3/s'],
  ft_lbf_to_J: ['ft.lbf', 'J'],
  cmH2O_4C_to_Pa: ['cmH2O 4C', 'Pa'],
  kip_to_N: ['kip', 'N'],
  'scfm (60 F, 14.696 psia) to normal m3/h (0 C, 101.325 kPa)': ['scfm', 'Nm3/h'],
  'lbf/in to N/mm': ['lbf/in', 'N/mm'],
};

function factor(name: string): number {
  const pair = UNITS_NAMED[name];
  if (pair === undefined) throw new Error(`no units for ${name}`);
  return convert({ value: 1, from: pair[0], to: pair[1] });
}

const byFactor = (given: Given) => ({
  factor: factor(given.text(given.has('conversion') ? 'conversion' : 'convert')),
});

runCases('units', {
  ...each(
    [
      '01',
      '02',
      '03',
      '04',
      '05',
      '06',
      '07',
      '08',
      '10',
      '11',
      '12',
      '13',
      '15',
      '20',
      '23',
      '31',
      '32',
    ].map((number) => `unit-r${number}`),
    byFactor,
  ),
  'unit-r33': (given) => {
    given.notNeeded('convert');
    return { value: convert({ value: 100, from: 'in2', to: 'cm2' }) };
  },
});
