import { testAirLimit } from '../safety/limits.ts';
import { benchSet } from './calculations/bench-set.ts';
import { crossPattern, torquePasses } from './calculations/bolting.ts';
import { type GlandTorque, glandTorque } from './calculations/gland.ts';
import { format, preferredUnit } from './calculations/units.ts';
import type { Figure } from './figure.ts';
import type { Job } from './job.ts';
import { type NewSpring, newSpringOf } from './new-spring.ts';
import { shutOffWanted } from './rules/open-line.ts';
import { moreSeatTurns } from './seat-turns.ts';
import { RUN_OUT_USUAL_M } from './trim-limits.ts';
import { springRateOf } from './valve-sheet/derived.ts';
import type { ValveSheet } from './valve-sheet/sheet.ts';
import { worded } from './valve-sheet/worded.ts';

/** The highest signal that this case may be given: enough to show a leak, never more than the case may have. */
export function soapPressurePa(sheet: ValveSheet): number {
  return Math.min(sheet.signalHighPa, testAirLimit(sheet).limitPa);
}

/**
 * How far the signals up and down at one travel may differ, which is twice the friction: by the hysteresis that the sheet
 * allows, and by the friction that it allows, whichever is less.
 */
export function frictionGapPa({
  hysteresisTolerancePercent,
  benchSetLowPa,
  benchSetHighPa,
  frictionMaxN,
  effectiveAreaM2,
}: ValveSheet): number {
  const byHysteresisPa = (hysteresisTolerancePercent / 100) * (benchSetHighPa - benchSetLowPa);
  if (frictionMaxN === null) return byHysteresisPa;
  return Math.min(byHysteresisPa, (2 * frictionMaxN) / effectiveAreaM2);
}

/** Spring force while no air is on the case, by the bench set; null where there is no spring. */
export function springForceShutN(sheet: ValveSheet): number | null {
  return sheet.springHeldBy === 'no spring' ? null : benchSet(sheet).preloadN;
}

/**
 * Turns of the adjuster after which the spring can be free, by bench set, spring rate and thread: at the least, since
 * a plug that is screwed hard on its seat presses the spring further.
 */
export function turnsToFree(sheet: ValveSheet): number | null {
  const forceN = springForceShutN(sheet);
  if (forceN === null || sheet.springHeldBy !== 'adjuster' || sheet.adjusterThreadPitchM === null)
    return null;
  return forceN / (springRateOf(sheet) * sheet.adjusterThreadPitchM);
}

/** What the turns counted leave in the spring, by bench set, rate and thread; null where the thread is not known. */
export function springForceLeftN({ sheet, readings }: Job): number | null {
  const forceN = springForceShutN(sheet);
  const turns = readings.adjusterTurnsOff?.valueSi;
  if (forceN === null || turns === undefined || sheet.adjusterThreadPitchM === null) return null;
  return Math.max(0, forceN - springRateOf(sheet) * sheet.adjusterThreadPitchM * turns);
}

/** The crosswise order of so many nuts, numbered clockwise; nothing where they cannot be counted in pairs. */
export function crossOrder(counted: string | undefined): string {
  const bolts = Number(counted);
  if (!Number.isInteger(bolts) || bolts < 4 || bolts % 2 !== 0) return 'opposite nuts in turn';
  return crossPattern({ bolts }).join(', ');
}

/** The graphite method on the box that was measured; null for other packing, or where something was not measured. */
function glandByMethod({ sheet, readings, words }: Job): GlandTorque | null {
  const boreM = readings.boxBoreM?.valueSi ?? 0;
  const studM = readings.glandStudM?.valueSi ?? 0;
  if (sheet.packingKind !== 'graphite' || studM <= 0 || boreM <= sheet.stemDiameterM) return null;
  return glandTorque({
    method: 'one-page-1996',
    packing: 'die-formed graphite set',
    boreDiameterM: boreM,
    stemDiameterM: sheet.stemDiameterM,
    systemPa: Math.max(0, sheet.processInletPa),
    bolts: Number(words.glandStuds ?? '2'),
    boltDiameterM: studM,
  });
}

function glandLoad(job: Job): { readonly say: string; readonly because: string } {
  const unit = preferredUnit('torque', job.sheet.units);
  const eachNut = (valueSi: number) => `${format({ valueSi, unit })} on each nut`;
  const byMaker = job.readings.glandMakerNm?.valueSi;
  if (byMaker !== undefined) return { say: eachNut(byMaker), because: 'By the maker of the packing' };
  const byMethod = glandByMethod(job);
  if (byMethod !== null)
    return {
      say: eachNut(byMethod.torquePerBoltNm),
      because: `By a published gland method for die-formed graphite; the ${byMethod.stressSetBy} sets it`,
    };
  return {
    say: 'finger tight, then a quarter turn on each nut',
    because: 'Common practice, no source: no torque was given, and no table fits this packing',
  };
}

const PACKING: Readonly<Record<ValveSheet['packingKind'], string>> = {
  'ptfe-single': 'PTFE, single',
  'ptfe-double': 'PTFE, double',
  graphite: 'Graphite',
  other: 'Packing as the maker has it',
};

function bonnetPasses({ readings, sheet }: Job): string {
  const finalTorqueNm = readings.bonnetTorqueNm?.valueSi ?? 0;
  if (finalTorqueNm <= 0) return 'by hand, a third, two thirds, all of it';
  const unit = preferredUnit('torque', sheet.units);
  const crosswise = torquePasses({ finalTorqueNm, scheme: '30/60/100' }).filter(
    ({ pattern }) => pattern === 'crosswise',
  );
  return crosswise.map(({ highNm }) => format({ valueSi: highNm, unit })).join(', ');
}

/** Null while no contact was found: nothing is known of the load yet. */
function seatTurnsSay(job: Job): string | null {
  const more = moreSeatTurns(job);
  if (more === null) return job.sheet.seatLoadNPerM === null ? 'The sheet names no seat load.' : null;
  const unit = preferredUnit('force', job.sheet.units);
  const has = format({ valueSi: more.hasN, unit });
  const needs = format({ valueSi: more.neededN, unit });
  return `It has ${has} of ${needs}; ${more.turns} turns more bring it there.`;
}

function ofNewSpring(name: keyof NewSpring): Figure['of'] {
  return (job) => newSpringOf(job)?.[name] ?? null;
}

/** Numbers of an overhaul, which texts name by placeholder. */
export const OVERHAUL_FIGURES = {
  soapPressure: {
    label: 'test air for soap',
    dimension: 'pressure',
    of: ({ sheet }) => soapPressurePa(sheet),
  },
  frictionGap: {
    label: 'up and down may differ by',
    dimension: 'pressure',
    of: ({ sheet }) => frictionGapPa(sheet),
  },
  frictionLimit: {
    label: 'friction each way, at most',
    dimension: 'force',
    of: ({ sheet }) => (frictionGapPa(sheet) * sheet.effectiveAreaM2) / 2,
  },
  packingFriction: {
    label: 'friction that the packing should cost',
    dimension: 'force',
    of: ({ sheet }) => sheet.packingFrictionN,
  },
  processFluid: { label: 'fluid', dimension: 'text', of: ({ sheet }) => sheet.processFluid },
  shutOffWanted: {
    label: 'shut-off wanted, at least',
    dimension: 'text',
    of: ({ sheet }) => shutOffWanted(sheet.fluidHarm),
  },
  shutOffOnSheet: {
    label: 'shut-off by the sheet',
    dimension: 'text',
    of: ({ sheet }) => sheet.processIsolation,
  },
  ringsWanted: {
    label: 'rings by the sheet',
    dimension: 'text',
    of: ({ sheet }) => (sheet.packingRings === null ? null : String(sheet.packingRings)),
  },
  packingKind: { label: 'packing', dimension: 'text', of: ({ sheet }) => PACKING[sheet.packingKind] },
  glandLoad: { label: 'gland load', dimension: 'text', of: (job) => glandLoad(job).say },
  glandLoadBecause: { label: 'gland load by', dimension: 'text', of: (job) => glandLoad(job).because },
  actuatorMass: {
    label: 'weight of the actuator',
    dimension: 'text',
    of: ({ sheet: { actuatorMassKg: valueSi, units } }) =>
      valueSi === null ? null : worded({ valueSi, dimension: 'mass', units }),
  },
  benchSetTolerance: {
    label: 'bench set, each end within',
    dimension: 'pressure',
    of: ({ sheet }) => sheet.benchSetTolerancePa,
  },
  sheetSpringRate: {
    label: 'spring rate by the sheet',
    dimension: 'forcePerLength',
    of: ({ sheet }) => (sheet.springHeldBy === 'no spring' ? null : springRateOf(sheet)),
  },
  newBenchLow: { label: 'bench set low, expected', dimension: 'pressure', of: ofNewSpring('benchLowPa') },
  newBenchHigh: { label: 'bench set high, expected', dimension: 'pressure', of: ofNewSpring('benchHighPa') },
  newInstalledLow: {
    label: 'with the process on, low end',
    dimension: 'pressure',
    of: ofNewSpring('installedLowPa'),
  },
  newInstalledHigh: {
    label: 'with the process on, high end',
    dimension: 'pressure',
    of: ofNewSpring('installedHighPa'),
  },
  newSeatLoad: { label: 'load left on the seat', dimension: 'force', of: ofNewSpring('seatLoadN') },
  turnsFromTouch: {
    label: 'adjuster turns from where it touches the spring',
    dimension: 'turns',
    of: ofNewSpring('turnsFromTouch'),
  },
  bonnetPasses: { label: 'passes of the bonnet nuts', dimension: 'text', of: bonnetPasses },
  bonnetOrder: {
    label: 'order of the bonnet nuts, numbered clockwise',
    dimension: 'text',
    of: ({ words }) => crossOrder(words.bonnetNuts),
  },
  bonnetTorque: {
    label: 'torque of the bonnet nuts',
    dimension: 'torque',
    of: ({ readings }) => readings.bonnetTorqueNm?.valueSi ?? null,
  },
  bonnetTorqueLeft: {
    label: 'torque of each nut, as left',
    dimension: 'torque',
    of: ({ readings }) => readings.bonnetTorqueLeftNm?.valueSi ?? null,
  },
  runOutUsual: { label: 'run-out, at most', dimension: 'length', of: () => RUN_OUT_USUAL_M },
  seatTurns: {
    label: 'turns more for the seat',
    dimension: 'turns',
    of: (job) => moreSeatTurns(job)?.turns ?? null,
  },
  seatTurnsSay: { label: 'seat load', dimension: 'text', of: seatTurnsSay },
  caseNutOrder: {
    label: 'order of the case nuts, numbered clockwise',
    dimension: 'text',
    of: ({ words }) => crossOrder(words.caseBolts),
  },
  springForceShut: {
    label: 'spring force, no air on the case',
    dimension: 'force',
    of: ({ sheet }) => springForceShutN(sheet),
  },
  turnsToFree: {
    label: 'adjuster turns until the spring can be free',
    dimension: 'turns',
    of: ({ sheet }) => turnsToFree(sheet),
  },
  springForceLeft: { label: 'spring force left by the turns', dimension: 'force', of: springForceLeftN },
  adjusterTurnsOff: {
    label: 'adjuster turns that were backed off',
    dimension: 'turns',
    of: ({ readings }) => readings.adjusterTurnsOff?.valueSi ?? null,
  },
} as const satisfies Record<string, Figure>;
