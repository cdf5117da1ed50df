import { CONDITIONS, type ConditionId } from '../safety/conditions.ts';
import { MARGIN_OVER_SIGNAL_PA, SAFE_LIMIT_PA, SAFE_TOUCH_C, testAirLimit } from '../safety/limits.ts';
import { adjusterTurnsForShift, rangeShift } from './calculations/bench-set.ts';
import { format, preferredUnit } from './calculations/units.ts';
import { COMMISSIONING_FIGURES, failText } from './commissioning-figures.ts';
import { plannedPa } from './cycle-verdict.ts';
import { energiesMissing, sayEnergy } from './energies.ts';
import type { Figure } from './figure.ts';
import type { Job } from './job.ts';
import { OVERHAUL_FIGURES } from './overhaul-figures.ts';
import { plugForceN } from './plug-force-of.ts';
import { POSITIONER_FIGURES } from './positioner-figures.ts';
import { REPAIR_FIGURES } from './repair-figures.ts';
import { seatingFigures, turnDirection, turnsWanted } from './seating.ts';
import { SETTING_FIGURES } from './setting-figures.ts';
import { SHUT_IN_FIGURES } from './shut-in-figures.ts';
import { springRateOf } from './valve-sheet/derived.ts';

const pressure = (label: string, of: Figure['of']): Figure => ({ label, dimension: 'pressure', of });
const text = (label: string, of: Figure['of']): Figure => ({ label, dimension: 'text', of });

function energy(condition: ConditionId): Figure {
  return text(CONDITIONS[condition].name, (job) => sayEnergy(condition, job));
}

function yesNo(is: boolean): string {
  return is ? 'yes' : 'no';
}

function percentPa(percent: number): Figure['of'] {
  return (job) => plannedPa(job.sheet, { percent });
}

/** Where the valve is fully open by air: the top of the range for air-to-open, the bottom for air-to-close. */
function openEndPa({ sheet }: Job): number {
  return sheet.airAction === 'air-to-open' ? sheet.benchSetHighPa : sheet.benchSetLowPa;
}

function shiftByFlow(job: Job) {
  const { airAction, effectiveAreaM2 } = job.sheet;
  return rangeShift({ airAction, effectiveAreaM2, plugForceOpeningN: plugForceN(job) });
}

function movedEnd(job: Job): string {
  const { moves, endThatMoves } = shiftByFlow(job);
  return moves === 'not at all' ? 'neither end' : `the ${endThatMoves} end`;
}

function movedBy(job: Job): string {
  const { shiftPa, moves } = shiftByFlow(job);
  const by = pressureWords(Math.abs(shiftPa), job);
  return moves === 'not at all' ? by : `${by} ${moves}`;
}

function pressureWords(valueSi: number, { sheet }: Job): string {
  return format({ valueSi, unit: preferredUnit('pressure', sheet.units) });
}

function shellOf({ actuatorKind }: Job['sheet']): string {
  return actuatorKind === 'piston' ? 'cylinder' : 'case';
}

function testAirBecause(job: Job): string {
  switch (testAirLimit(job.sheet).because) {
    case 'case rating':
      return `the rating of the ${shellOf(job.sheet)}`;
    case 'blank case rating':
      return `common practice, since the sheet names no rating of the ${shellOf(job.sheet)}`;
    case 'signal and margin':
      return `the highest signal and ${pressureWords(MARGIN_OVER_SIGNAL_PA, job)} over it`;
    case 'bench set and margin':
      return `the end of its bench set and ${pressureWords(MARGIN_OVER_SIGNAL_PA, job)} over it, which its positioner gives it in service`;
    case 'supply':
      return 'the highest supply, which its positioner gives it in service';
  }
}

function adjusterNeed(job: Job) {
  const { asLeftVerdict, asFoundVerdict, benchLeft, benchFound } = job.figures;
  const shiftPa = (benchLeft ?? benchFound ?? asLeftVerdict ?? asFoundVerdict)?.benchSetShiftPa;
  const pitchM = job.sheet.adjusterThreadPitchM;
  if (typeof shiftPa !== 'number' || pitchM === null) return null;
  return adjusterTurnsForShift({
    springRateNPerM: springRateOf(job.sheet),
    effectiveAreaM2: job.sheet.effectiveAreaM2,
    threadPitchM: pitchM,
    wantedShiftPa: -shiftPa,
  });
}

const TURNS_BY = {
  sheet: 'the sheet',
  'seat load': 'the seat load wanted',
  'common practice': 'common practice',
} as const;

/** The closed list of numbers and words of a valve that definitions name by placeholder. */
export const FIGURES = {
  tag: text('valve', (job) => job.tag),
  benchSetLow: pressure('bench set, low', percentPa(0)),
  benchSetQuarter: pressure('a quarter of the bench set', percentPa(25)),
  benchSetMid: pressure('middle of the bench set', percentPa(50)),
  benchSetHigh: pressure('bench set, high', percentPa(100)),
  openEndSignal: pressure('signal at the open end', openEndPa),
  testAirLimit: pressure('test air, at most', (job) => testAirLimit(job.sheet).limitPa),
  testAirBecause: text('set by', testAirBecause),
  travel: { label: 'travel', dimension: 'length', of: (job) => job.sheet.travelM },
  airAction: text('air action', (job) => job.sheet.airAction.replaceAll('-', ' ')),
  failPosition: text('on loss of air', failText),
  airMoves: text('air moves the stem', (job) => job.sheet.airMovesStem),
  rangeMoved: text('flow would move', movedEnd),
  rangeMovedBy: text('by up to', movedBy),
  supplyPoint: text('supply cock', (job) => job.sheet.supplyPoint),
  secondSupplyPoint: text('cock of the second feed', (job) => job.sheet.secondSupplyPoint),
  inletPoint: text('inlet block valve', (job) => job.sheet.inletPoint),
  outletPoint: text('outlet block valve', (job) => job.sheet.outletPoint),
  bypassPoint: text('bypass valve', (job) => job.sheet.bypassPoint),
  supplySafeLimit: pressure('counts as no supply air, at most', () => SAFE_LIMIT_PA.supplyAir),
  signalSafeLimit: pressure('counts as no air on the actuator, at most', () => SAFE_LIMIT_PA.signalAir),
  processSafeLimit: pressure('counts as drained, at most', () => SAFE_LIMIT_PA.processInlet),
  safeTouch: {
    label: 'may be touched, at most',
    dimension: 'temperature',
    of: () => SAFE_TOUCH_C + 273.15,
  },
  energySupply: energy('supplyAir'),
  energySecond: energy('secondSupply'),
  energySignal: energy('signalAir'),
  energyKept: text('Air that is kept', (job) =>
    (['trappedAir', 'lockUpAir', 'oppositeAir'] as const)
      .map((id) => `${CONDITIONS[id].name}: ${sayEnergy(id, job)}`)
      .join(' '),
  ),
  energySpring: energy('spring'),
  energyInlet: energy('processInlet'),
  energyOutlet: energy('processOutlet'),
  energyTemperature: energy('temperature'),
  energyWeight: energy('weight'),
  energyResidue: energy('residue'),
  energyElectrical: energy('electrical'),
  energyCommands: energy('commands'),
  energySafety: energy('safetyFunction'),
  energiesMissing: text('sizes missing on the sheet', (job) => {
    const names = energiesMissing(job).map((id) => CONDITIONS[id].name.toLowerCase());
    return names.length === 0 ? 'nothing' : names.join(', ');
  }),
  sheetTank: text('tank or booster', (job) => yesNo(job.sheet.volumeTank)),
  sheetLockUp: text('lock-up relay', (job) => yesNo(job.sheet.lockUp)),
  sheetTrip: text('part of a trip', (job) => yesNo(job.sheet.tripFunction)),
  actuatorKind: text('actuator', (job) => `a ${job.sheet.actuatorKind} actuator`),
  turnsWanted: { label: 'turns wanted', dimension: 'turns', of: (job) => turnsWanted(job).turns },
  turnsBecause: text('turns by', (job) => TURNS_BY[turnsWanted(job).because]),
  turnDirection: text('screw the plug stem', (job) => turnDirection(job.sheet)),
  stemThread: text('plug stem', (job) => job.sheet.stemThread),
  expectedContact: pressure('contact expected after', (job) => seatingFigures(job).expectedContactPa),
  signalShift: pressure('seat is met earlier by', (job) => seatingFigures(job).signalShiftPa),
  contactFound: pressure('contact as found', (job) => number(job.figures.contactFound?.contactPa)),
  seatLoadExpected: {
    label: 'seat load expected',
    dimension: 'force',
    of: (job) => seatingFigures(job).seatLoadN,
  },
  seatLoadNeed: {
    label: 'seat load wanted',
    dimension: 'force',
    of: (job) => seatingFigures(job).seatLoadNeedN,
  },
  liftLeft: { label: 'lift left', dimension: 'length', of: (job) => seatingFigures(job).liftLeftM },
  adjusterTurns: {
    label: 'adjuster turns',
    dimension: 'turns',
    of: (job) => absolute(adjusterNeed(job)?.turns),
  },
  adjusterDirection: text('turn the adjuster to', (job) => adjusterNeed(job)?.turn ?? null),
  ...OVERHAUL_FIGURES,
  ...COMMISSIONING_FIGURES,
  ...POSITIONER_FIGURES,
  ...REPAIR_FIGURES,
  ...SETTING_FIGURES,
  ...SHUT_IN_FIGURES,
} as const satisfies Record<string, Figure>;

export type FigureName = keyof typeof FIGURES;

export function isFigureName(name: string): name is FigureName {
  return Object.hasOwn(FIGURES, name);
}

function number(value: number | string | null | undefined): number | null {
  return typeof value === 'number' ? value : null;
}

function absolute(value: number | undefined): number | null {
  return value === undefined ? null : Math.abs(value);
}
