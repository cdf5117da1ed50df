/** Which inputs of which calculations a valve sheet answers, and the text that stands for its figure. */
import type { Calculation, InputSpec } from '../../procedures/calculations/calculation-types.ts';
import { ZERO_CELSIUS_K } from '../../procedures/calculations/gas-states.ts';
import { plugForce } from '../../procedures/calculations/plug-force.ts';
import type { UnitId } from '../../procedures/calculations/unit-table.ts';
import {
  fromSi,
  preferredUnit,
  toSi,
  type UnitSystem,
  unitFor,
} from '../../procedures/calculations/units.ts';
import { exactDigits, plainDigits } from '../../procedures/readings/exact-digits.ts';
import { springRateOf } from '../../procedures/valve-sheet/derived.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import { choiceWords, isAbsolute } from './input-text.ts';

type Figure = (sheet: ValveSheet) => number | string | boolean | null;

const hasSpring = (sheet: ValveSheet): boolean => sheet.springHeldBy !== 'no spring';

/** By name of the input, wherever it stands. */
const BY_NAME: Readonly<Record<string, Figure>> = {
  airAction: (sheet) => sheet.airAction,
  plugCloses: (sheet) => sheet.plugCloses,
  bellowsSeal: (sheet) => sheet.bellowsSeal,
  stemPinned: (sheet) => sheet.stemPinned,
  effectiveAreaM2: (sheet) => sheet.effectiveAreaM2,
  benchSetLowPa: (sheet) => sheet.benchSetLowPa,
  benchSetHighPa: (sheet) => sheet.benchSetHighPa,
  installedLowPa: (sheet) => sheet.installedLowPa,
  installedHighPa: (sheet) => sheet.installedHighPa,
  springRateNPerM: (sheet) => (hasSpring(sheet) ? springRateOf(sheet) : null),
  travelM: (sheet) => sheet.travelM,
  ratedTravelM: (sheet) => sheet.travelM,
  portDiameterM: (sheet) => sheet.portDiameterM,
  seatDiameterM: (sheet) => sheet.portDiameterM,
  orificeDiameterM: (sheet) => sheet.portDiameterM,
  stemDiameterM: (sheet) => sheet.stemDiameterM,
  balanceSealDiameterM: (sheet) => sheet.balanceSealDiameterM,
  ratedKv: (sheet) => sheet.ratedKv,
  pressureDropRatioXt: (sheet) => sheet.pressureDropRatioXt,
  leakageClass: (sheet) => sheet.leakageClass,
  seatLoadNeedNPerM: (sheet) => sheet.seatLoadNPerM,
  frictionN: (sheet) => sheet.packingFrictionN,
  supplyPa: (sheet) => sheet.supplyLowPa,
  plugForceOpeningN: atShutOff,
  rangeLowPa: (sheet) => sheet.signalLowPa,
  rangeHighPa: (sheet) => sheet.signalHighPa,
  inputSpanPa: (sheet) => sheet.signalHighPa - sheet.signalLowPa,
  signalSpanPa: (sheet) => sheet.signalHighPa - sheet.signalLowPa,
  threadEngagedMinM: (sheet) => sheet.stemThreadEngagedMinM,
};

const SIGNAL_RANGE: Readonly<Record<string, Figure>> = {
  rangeLow: (sheet) => sheet.signalLowPa,
  rangeHigh: (sheet) => sheet.signalHighPa,
};
const STEM: Readonly<Record<string, Figure>> = {
  threadPitchM: (sheet) => sheet.stemThreadPitchM,
  turns: (sheet) => sheet.seatingTurns,
};
const ADJUSTER: Readonly<Record<string, Figure>> = { threadPitchM: (sheet) => sheet.adjusterThreadPitchM };
const CAPACITY: Readonly<Record<string, Figure>> = { kv: (sheet) => sheet.ratedKv };
/** Nothing of what is called so stands on a sheet: the air of a nozzle is not that of the actuator. */
const NOT_THE_ACTUATORS: Readonly<Record<string, null>> = { supplyPa: null };

/** By calculation, before the name alone is asked. */
const BY_CALCULATION: Readonly<Record<string, Readonly<Record<string, Figure | null>>>> = {
  'signal-percent': SIGNAL_RANGE,
  'signal-travel': SIGNAL_RANGE,
  'signal-at-percent': SIGNAL_RANGE,
  'seating-travel': SIGNAL_RANGE,
  'seating-turns': STEM,
  'seating-obstacles': STEM,
  'seating-turns-wanted': STEM,
  'adjuster-turns': ADJUSTER,
  'adjuster-turns-wanted': ADJUSTER,
  'plug-force': {
    flow: (sheet) => sheet.flow,
    inletPa: (sheet) => sheet.processInletPa,
    outletPa: (sheet) => sheet.processOutletPa,
  },
  'packing-friction': {
    packing: (sheet) => sheet.packingKind,
    table: (sheet) => sheet.packingFrictionSource,
  },
  'seat-load-need': { table: (sheet) => sheet.seatLoadSource },
  'stem-thread': { thread: (sheet) => (/^M/.test(sheet.stemThread) ? null : sheet.stemThread) },
  'liquid-flow': CAPACITY,
  'gas-flow': { ...CAPACITY, temperatureK: (sheet) => sheet.processTemperatureC + ZERO_CELSIUS_K },
  'gas-coefficient': { temperatureK: (sheet) => sheet.processTemperatureC + ZERO_CELSIUS_K },
  'valve-reynolds': CAPACITY,
  'nozzle-back-pressure': NOT_THE_ACTUATORS,
  'nozzle-back-pressure-simple': NOT_THE_ACTUATORS,
  'nozzle-gap-simple': NOT_THE_ACTUATORS,
};

/** Against the shut plug at the drop that it must hold, the side that is not under pressure at zero. */
function atShutOff(sheet: ValveSheet): number {
  const { flow, shutOffDropPa, portDiameterM, stemDiameterM, balanceSealDiameterM } = sheet;
  const ends = { inletPa: shutOffDropPa, outletPa: 0 };
  return plugForce({ flow, ...ends, portDiameterM, stemDiameterM, balanceSealDiameterM }).openingN;
}

/**
 * The text of each input that the sheet answers, with its unit, so that it means the same in either system.
 *
 * @example fromSheet(calculationOf('bench-set'), { sheet, units: 'us' }).effectiveAreaM2 // '100 in²'
 */
export function fromSheet(
  { id, inputs }: Pick<Calculation, 'id' | 'inputs'>,
  { sheet, units }: { readonly sheet: ValveSheet; readonly units: UnitSystem },
): Readonly<Record<string, string>> {
  const own = BY_CALCULATION[id] ?? {};
  const texts: Record<string, string> = {};
  for (const [name, spec] of Object.entries(inputs)) {
    const figure = Object.hasOwn(own, name) ? own[name] : BY_NAME[name];
    const value = figure?.(sheet) ?? null;
    if (value === null || value === '') continue;
    // A table of a maker's that this program does not have stands on the sheet in words.
    if (spec.kind === 'choice' && !spec.choices.some((choice) => choice === value)) continue;
    texts[name] = textOf(value, { name, spec, units });
  }
  return texts;
}

function textOf(
  value: number | string | boolean,
  { name, spec, units }: { readonly name: string; readonly spec: InputSpec; readonly units: UnitSystem },
): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return spec.kind === 'choice' ? value : choiceWords(value);
  if (spec.kind !== 'number') return plainDigits(value);
  const { digits, unit } = shortest(value, [
    preferredUnit(spec.dimension, units),
    preferredUnit(spec.dimension, units === 'us' ? 'si' : 'us'),
  ]);
  const { label } = unitFor(unit);
  return `${digits} ${label}${isAbsolute(name) ? ' absolute' : ''}`.trim();
}

/** More digits than a plate has: then the figure was written in the other unit, or was worked out. */
const SHORT_DIGITS = 8;
const WORKED_DIGITS = 5;

function shortest(
  valueSi: number,
  units: readonly [UnitId, UnitId],
): { readonly digits: string; readonly unit: UnitId } {
  for (const unit of units) {
    const digits = exactDigits({
      near: fromSi({ valueSi, unit }),
      isExact: (value) => toSi({ value, unit }) === valueSi,
    });
    if (digits !== null && digits.replaceAll(/\D/g, '').length <= SHORT_DIGITS) return { digits, unit };
  }
  const [unit] = units;
  return { digits: plainDigits(Number(fromSi({ valueSi, unit }).toPrecision(WORKED_DIGITS))), unit };
}
