/** Forces and sizes: spring against bench set, plug against port, process against spring. */
import { benchSet, installedRange } from '../../calculations/bench-set.ts';
import { shutEnd } from '../../calculations/force-balance.ts';
import { plugForce } from '../../calculations/plug-force.ts';
import type { ValveSheet } from '../sheet.ts';
import { HAIR, type Rule, wordsFor } from './rule.ts';

/**
 * How far spring rate and bench set may part: a tenth (common practice, no source). The effective area alone changes
 * by a few percent over the travel.
 */
const SPRING_RATE_PART = 0.1;

/** How far an end of the installed range may lie from the one worked out, of the span (common practice, no source). */
const INSTALLED_PART = 0.1;

/** What PTFE packing stands, from memory: 232 degrees Celsius, 450 degrees Fahrenheit. */
const PTFE_MAX_C = 232;

export const forceRules: readonly Rule[] = [
  {
    code: 'VAL-111',
    fields: ['portDiameterM', 'stemDiameterM', 'balanceSealDiameterM'],
    says: (sheet) => {
      const { portDiameterM, stemDiameterM, balanceSealDiameterM } = sheet;
      const length = wordsFor(sheet, 'length');
      if (stemDiameterM >= portDiameterM * (1 - HAIR))
        return `The stem is ${length(stemDiameterM)} and the port ${length(portDiameterM)}: the stem must be the thinner.`;
      if (
        balanceSealDiameterM !== null &&
        balanceSealDiameterM !== portDiameterM &&
        balanceSealDiameterM < portDiameterM * (1 + HAIR)
      )
        return `The balance seal is ${length(balanceSealDiameterM)} and the port ${length(portDiameterM)}: the seal cannot be the narrower.`;
      return null;
    },
  },
  {
    code: 'VAL-105',
    fields: ['springRateNPerM', 'benchSetLowPa', 'benchSetHighPa', 'travelM', 'effectiveAreaM2'],
    says: (sheet) => {
      const { springRateNPerM, springHeldBy } = sheet;
      if (springRateNPerM === null || springHeldBy === 'no spring') return null;
      const worksOut = benchSet(sheet).springRateNPerM;
      if (Math.abs(springRateNPerM / worksOut - 1) <= SPRING_RATE_PART) return null;
      const [rate, pressure] = [wordsFor(sheet, 'forcePerLength'), wordsFor(sheet, 'pressure')];
      return `A spring of ${rate(springRateNPerM)} does not give this bench set: ${pressure(sheet.benchSetHighPa - sheet.benchSetLowPa)} on ${wordsFor(sheet, 'area')(sheet.effectiveAreaM2)} over ${wordsFor(sheet, 'length')(sheet.travelM)} is ${rate(worksOut)}.`;
    },
  },
  {
    code: 'VAL-113',
    fields: ['installedLowPa', 'installedHighPa', 'benchSetLowPa', 'benchSetHighPa', 'flow', 'shutOffDropPa'],
    says: installed,
  },
  {
    code: 'VAL-122',
    fields: ['benchSetLowPa', 'shutOffDropPa', 'portDiameterM', 'effectiveAreaM2', 'supplyLowPa'],
    says: heldShut,
  },
  {
    code: 'VAL-121',
    fields: ['packingKind', 'processTemperatureC'],
    says: (sheet) => {
      if (!sheet.packingKind.startsWith('ptfe') || sheet.processTemperatureC <= PTFE_MAX_C + HAIR)
        return null;
      const temperature = (celsius: number) => wordsFor(sheet, 'temperature')(celsius + 273.15);
      return `The process is at ${temperature(sheet.processTemperatureC)}; PTFE packing stands about ${temperature(PTFE_MAX_C)}.`;
    },
  },
];

function openingN(sheet: ValveSheet, { dropPa }: { readonly dropPa: number }): number {
  return plugForce({ ...sheet, inletPa: dropPa, outletPa: 0 }).openingN;
}

function frictionOf(sheet: ValveSheet): number {
  return sheet.packingFrictionN ?? 0;
}

/** The range with the process on may differ from the bench set at one end only, by no more than the process moves it. */
function installed(sheet: ValveSheet): string | null {
  const { installedLowPa, installedHighPa } = sheet;
  if (installedLowPa === null || installedHighPa === null) return null;
  const plugForceOpeningN = openingN(sheet, { dropPa: sheet.shutOffDropPa });
  const worksOut = installedRange({ ...sheet, plugForceOpeningN });
  const spanPa = sheet.benchSetHighPa - sheet.benchSetLowPa;
  const allowedPa = INSTALLED_PART * spanPa + frictionOf(sheet) / sheet.effectiveAreaM2;
  // With less drop than at shut-off the end lies between bench set and worst case.
  const inside = (isPa: number, ends: readonly [number, number]) =>
    isPa >= Math.min(...ends) - allowedPa && isPa <= Math.max(...ends) + allowedPa;
  const fits =
    inside(installedLowPa, [sheet.benchSetLowPa, worksOut.lowPa]) &&
    inside(installedHighPa, [sheet.benchSetHighPa, worksOut.highPa]);
  if (fits) return null;
  const pressure = wordsFor(sheet, 'pressure');
  return `A bench set of ${pressure(sheet.benchSetLowPa)} to ${pressure(sheet.benchSetHighPa)} becomes ${pressure(worksOut.lowPa)} to ${pressure(worksOut.highPa)} at most with the process ${sheet.flow} the plug, and the sheet says ${pressure(installedLowPa)} to ${pressure(installedHighPa)}.`;
}

/** Does spring, or supply, hold the plug shut against the shut-off drop? */
function heldShut(sheet: ValveSheet): string | null {
  const airShuts = sheet.airAction === 'air-to-close';
  if (sheet.springHeldBy === 'no spring' || (airShuts && sheet.supplyLowPa === null)) return null;
  const dropPa = sheet.shutOffDropPa;
  const end = shutEnd({
    ...sheet,
    plugForceOpeningN: openingN(sheet, { dropPa }),
    frictionN: frictionOf(sheet),
    supplyPa: sheet.supplyLowPa ?? 0,
  });
  if (end.heldShut) return null;
  const [force, pressure] = [wordsFor(sheet, 'force'), wordsFor(sheet, 'pressure')];
  const by = airShuts ? `a supply of ${pressure(sheet.supplyLowPa ?? 0)}` : 'the spring';
  return `At a drop of ${pressure(dropPa)} the process pushes the plug open with ${force(-end.plugForceN)}, and ${by} holds it with ${force(end.springOrAirN + end.frictionN)}.`;
}
