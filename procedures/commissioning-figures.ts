import { signalAtPercent } from './calculations/signal-travel.ts';
import { format, preferredUnit, toSi } from './calculations/units.ts';
import type { Figure } from './figure.ts';
import type { Job } from './job.ts';
import type { ValveSheet } from './valve-sheet/sheet.ts';

/** The live zero and the end of a current loop (IEC 60381-1). */
export const SIGNAL_CURRENT = { lowA: 0.004, highA: 0.02 } as const;

/** What a cylinder is fed with where the sheet names no range (common practice, no source). */
const CYLINDER_SUPPLY_LOW_PA = toSi({ value: 35, unit: 'psi' });
const CYLINDER_SUPPLY_HIGH_PA = toSi({ value: 100, unit: 'psi' });

/** What an I/P converter may be off, in percent of its span (common practice, no source). */
export const CONVERTER_TOLERANCE_PERCENT = 1;

/**
 * Whether a rising signal opens a valve with its positioner: loading the top drives the stem down, loading the bottom up.
 * Without a positioner the air action says it.
 */
export function risingSignalOpens({
  positionerRisingSignalLoads: loads,
  plugCloses,
  airAction,
}: Pick<ValveSheet, 'positionerRisingSignalLoads' | 'plugCloses' | 'airAction'>): boolean {
  if (loads === null) return airAction === 'air-to-open';
  return (loads === 'top' ? 'down' : 'up') !== plugCloses;
}

/** Travel in percent open that a signal asks for. */
export function askedPercent(sheet: ValveSheet, signalPercent: number): number {
  return risingSignalOpens(sheet) ? signalPercent : 100 - signalPercent;
}

/** Supply that the valve wants; null where neither sheet nor practice says it. */
export function supplyWanted({ actuatorKind, supplyLowPa, supplyHighPa }: ValveSheet): {
  readonly lowPa: number;
  readonly highPa: number;
  readonly because: string;
} | null {
  if (supplyLowPa !== null && supplyHighPa !== null)
    return { lowPa: supplyLowPa, highPa: supplyHighPa, because: 'by the sheet' };
  if (actuatorKind !== 'piston') return null;
  return {
    lowPa: CYLINDER_SUPPLY_LOW_PA,
    highPa: CYLINDER_SUPPLY_HIGH_PA,
    because: 'common practice for a cylinder, no source: the sheet names no range',
  };
}

/** Pressure that the spring wants at a travel, without flow; null for a cylinder, which has two. */
export function actuatorAirPa(sheet: ValveSheet, openPercent: number): number | null {
  if (sheet.actuatorKind === 'piston') return null;
  const percent = sheet.airAction === 'air-to-open' ? openPercent : 100 - openPercent;
  const { benchSetLowPa: rangeLow, benchSetHighPa: rangeHigh } = sheet;
  return signalAtPercent({ percent, rangeLow, rangeHigh });
}

function signalText(percent: number): Figure['of'] {
  return ({ sheet }) => {
    if (sheet.positioner === 'electropneumatic') return currentText(percent);
    const { signalLowPa: rangeLow, signalHighPa: rangeHigh } = sheet;
    const valueSi = signalAtPercent({ percent, rangeLow, rangeHigh });
    return format({ valueSi, unit: preferredUnit('pressure', sheet.units) });
  };
}

function currentText(percent: number): string {
  const { lowA: rangeLow, highA: rangeHigh } = SIGNAL_CURRENT;
  const valueSi = signalAtPercent({ percent, rangeLow, rangeHigh });
  return format({ valueSi, unit: 'mA' });
}

const text = (label: string, of: Figure['of']): Figure => ({ label, dimension: 'text', of });
const supply = (end: 'lowPa' | 'highPa', label: string): Figure => ({
  label,
  dimension: 'pressure',
  of: ({ sheet }) => supplyWanted(sheet)?.[end] ?? null,
});

const time = (label: string, of: 'strokeOpenMaxS' | 'strokeShutMaxS'): Figure => ({
  label,
  dimension: 'time',
  of: ({ sheet }) => sheet[of],
});

/** What the valve does without air, as a sentence has it; a cylinder without a spring stays. */
export function failText({ sheet }: Pick<Job, 'sheet'>): string {
  if (sheet.failPosition === 'stays') return 'stays where it is';
  return sheet.failPosition === 'shut' ? 'shuts' : 'opens';
}

/** Numbers of setting and checking on the valve's own air, which texts name by placeholder. */
export const COMMISSIONING_FIGURES = {
  signalLow: text('signal at the low end', signalText(0)),
  signalQuarter: text('signal at a quarter', signalText(25)),
  signalHalf: text('signal at the middle', signalText(50)),
  signalThreeQuarters: text('signal at three quarters', signalText(75)),
  signalHigh: text('signal at the high end', signalText(100)),
  outputLow: text('output at the low end', () => '0 %'),
  outputQuarter: text('a quarter of the output', () => '25 %'),
  outputHalf: text('half the output', () => '50 %'),
  outputThreeQuarters: text('three quarters of the output', () => '75 %'),
  outputHigh: text('the whole output', () => '100 %'),
  currentLow: text('current at the low end', () => currentText(0)),
  currentQuarter: text('current at a quarter', () => currentText(25)),
  currentHalf: text('current at the middle', () => currentText(50)),
  currentThreeQuarters: text('current at three quarters', () => currentText(75)),
  currentHigh: text('current at the high end', () => currentText(100)),
  risingSignal: text('rising signal', ({ sheet }) => (risingSignalOpens(sheet) ? 'opens' : 'shuts')),
  risingLoads: text('rising signal loads', ({ sheet }) => sheet.positionerRisingSignalLoads),
  supplyWantedLow: supply('lowPa', 'supply, at least'),
  supplyWantedHigh: supply('highPa', 'supply, at most'),
  supplyWantedBecause: text('supply range', ({ sheet }) => supplyWanted(sheet)?.because ?? null),
  actuatorAirHalf: {
    label: 'air on the actuator at half travel, without flow',
    dimension: 'pressure',
    of: ({ sheet }) => actuatorAirPa(sheet, 50),
  },
  flowSide: text('flow', ({ sheet }) => `${sheet.flow} the plug`),
  supplyShutAt: text('where the supply is taken away', ({ sheet, facts }) =>
    facts.place === 'bench' ? 'the shop air off' : `cock ${sheet.supplyPoint} shut`,
  ),
  supplyBackAt: text('where it comes back', ({ sheet, facts }) =>
    facts.place === 'bench' ? 'the shop air on' : `cock ${sheet.supplyPoint} open`,
  ),
  failWanted: text('on loss of air, by the sheet', failText),
  errorTolerance: {
    label: 'error allowed',
    dimension: 'percent',
    of: ({ sheet }) => sheet.errorTolerancePercent,
  },
  strokeOpenMax: time('time to open, at most', 'strokeOpenMaxS'),
  strokeShutMax: time('time to shut, at most', 'strokeShutMaxS'),
  hysteresisTolerance: {
    label: 'hysteresis allowed',
    dimension: 'percent',
    of: ({ sheet }) => sheet.hysteresisTolerancePercent,
  },
  converterTolerance: {
    label: 'converter may be off, common practice',
    dimension: 'percent',
    of: () => CONVERTER_TOLERANCE_PERCENT,
  },
} as const satisfies Record<string, Figure>;
