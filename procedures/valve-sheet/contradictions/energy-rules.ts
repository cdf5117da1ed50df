/** What can hurt, against how it is shut off: lines by category, air by its cock, what is electrical by its breaker. */
import type { FluidHarm } from '../sheet.ts';
import { type Rule, wordsFor } from './rule.ts';

const HARMS: Readonly<Record<FluidHarm, string>> = {
  none: 'does no harm',
  scalding: 'can burn or freeze',
  corrosive: 'can eat skin',
  flammable: 'can catch fire',
  toxic: 'can poison',
};

const SHUT_OFF = {
  positive: 'a blank',
  'double block and bleed': 'two valves and a bleed',
  'block and bleed': 'one valve and a bleed',
  'block only': 'one valve that is not tried',
} as const;

export const energyRules: readonly Rule[] = [
  {
    // HSG253, category III: only with a risk assessment behind it.
    code: 'VAL-125',
    fields: ['processIsolation', 'isolationReference'],
    says: ({ processIsolation, isolationReference }) =>
      processIsolation === 'block only' && isolationReference === null
        ? 'The line is shut off by one valve that is not tried, and no risk assessment is named.'
        : null,
  },
  {
    // HSG253: a toxic fluid calls for positive isolation.
    code: 'VAL-126',
    fields: ['fluidHarm', 'processIsolation', 'isolationReference'],
    says: ({ fluidHarm, processIsolation, isolationReference }) =>
      fluidHarm === 'toxic' && processIsolation !== 'positive' && isolationReference === null
        ? `The fluid can poison, and the line is shut off by ${processIsolation === null ? 'nothing that the sheet names' : SHUT_OFF[processIsolation]} without a risk assessment. Fit a blank, or name the assessment.`
        : null,
  },
  {
    // HSG253: one block and a bleed is in general no final isolation of a hazardous fluid on live plant.
    code: 'VAL-127',
    fields: ['fluidHarm', 'processIsolation'],
    says: ({ fluidHarm, processIsolation }) =>
      fluidHarm !== 'none' && (processIsolation === 'block and bleed' || processIsolation === 'block only')
        ? `The fluid ${HARMS[fluidHarm]}, and the line is shut off by ${SHUT_OFF[processIsolation]}: in general no final isolation on live plant.`
        : null,
  },
  {
    code: 'VAL-128',
    fields: ['secondSupplyHighPa', 'secondSupplyPoint'],
    says: (sheet) =>
      sheet.secondSupplyHighPa !== null && sheet.secondSupplyPoint === null
        ? `A second feed of ${wordsFor(sheet, 'pressure')(sheet.secondSupplyHighPa)} is on the sheet, and no cock that shuts it.`
        : null,
  },
  {
    code: 'VAL-129',
    fields: ['volumeTank', 'tankVolumeM3'],
    says: ({ volumeTank, tankVolumeM3 }) => {
      if (volumeTank && tankVolumeM3 === null) return 'A tank is fitted, but not how much it holds.';
      return !volumeTank && tankVolumeM3 !== null
        ? 'There is no tank, but the sheet says what it holds.'
        : null;
    },
  },
  {
    code: 'VAL-130',
    fields: ['electricalV', 'electricalPoint', 'positioner'],
    says: ({ electricalV, electricalPoint, positioner }) => {
      if (electricalV === null && electricalPoint !== null)
        return `A breaker ${electricalPoint} is named, but nothing that is electrical.`;
      return electricalV === null && positioner === 'electropneumatic'
        ? 'An electropneumatic positioner is fitted, but no voltage is on the sheet.'
        : null;
    },
  },
];
