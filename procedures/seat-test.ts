import { GAS_CONSTANT_J_PER_MOL_K } from './calculations/gas-states.ts';
import { ratedCapacityGas } from './calculations/rated-capacity.ts';
import { fciCapacityLimit, fciClassV, fciClassVi } from './calculations/seat-leakage-fci.ts';
import { iecCapacityLimit, iecClassVi, iecClassVM3PerS } from './calculations/seat-leakage-iec.ts';
import { toSi } from './calculations/units.ts';
import type { ValveSheet } from './valve-sheet/sheet.ts';

/** Test pressure and the most of it, by the standard: FCI 45 to 60 psi [S-19], IEC 300 to 400 kPa (from memory). */
const GAS_TEST = {
  us: { pressurePa: toSi({ value: 50, unit: 'psi' }), mostPa: toSi({ value: 60, unit: 'psi' }) },
  si: { pressurePa: 350e3, mostPa: 400e3 },
} as const;

/** The least drop of the class V water test by FCI [S-19]. */
const WATER_DROP_MIN_PA = toSi({ value: 100, unit: 'psi' });

/** The widest port of the class VI table, and the 2 mm that count as its last row [S-19]. */
const CLASS_VI_PORT_MAX_M = 0.402;

/** Air as it is collected over water in a room: a few percent with the weather, which the verdict counts in. */
export const ROOM = { pressurePaAbs: 101325, temperatureK: 293.15 } as const;

export interface SeatTest {
  readonly standard: 'ANSI/FCI 70-2' | 'IEC 60534-4';
  readonly medium: 'air' | 'water';
  readonly pressurePa: number;
  readonly mostPa: number;
  /** At room conditions where it is air. */
  readonly allowedM3PerS: number;
  /** With the tube of the standard; null where its table gives none. */
  readonly bubblesPerMin: number | null;
}

type Tested = Pick<
  ValveSheet,
  'units' | 'leakageClass' | 'ratedKv' | 'pressureDropRatioXt' | 'portDiameterM' | 'shutOffDropPa'
>;

/** Why no allowance can be worked out for this valve, in one sentence; null where one can. */
export function noSeatTest(sheet: Tested): string | null {
  const { leakageClass, pressureDropRatioXt, portDiameterM, shutOffDropPa, units } = sheet;
  if (leakageClass === 'I') return 'Class I has no seat test: what it may leak is agreed with its maker.';
  if (shutOffDropPa <= 0) return 'Its sheet has no shut-off drop, and so no test pressure.';
  if (leakageClass === 'V')
    return units === 'us' && shutOffDropPa < WATER_DROP_MIN_PA
      ? 'Class V by its standard wants a larger drop than the sheet has.'
      : null;
  if (leakageClass === 'VI')
    return portDiameterM > CLASS_VI_PORT_MAX_M ? 'Its port is wider than the table of class VI.' : null;
  return pressureDropRatioXt === null
    ? 'Its sheet has no xT: how much air would pass it open, and so may pass it shut, cannot be worked out.'
    : null;
}

/**
 * How the seat of a valve is tested by the standard of its plant, and what it may leak then.
 * @throws Error for a valve that `noSeatTest` names a reason for: it is never offered such a test
 */
export function seatTestOf(sheet: Tested): SeatTest {
  const why = noSeatTest(sheet);
  if (why !== null) throw new Error(why);
  const us = sheet.units === 'us';
  const standard = us ? 'ANSI/FCI 70-2' : 'IEC 60534-4';
  if (sheet.leakageClass === 'V')
    return { standard, ...waterTest(sheet), medium: 'water', bubblesPerMin: null };
  const gas = GAS_TEST[sheet.units];
  const pressurePa = Math.min(gas.pressurePa, sheet.shutOffDropPa);
  const mostPa = Math.min(gas.mostPa, sheet.shutOffDropPa);
  const common = { standard, medium: 'air', pressurePa, mostPa } as const;
  return sheet.leakageClass === 'VI'
    ? { ...common, ...tableTest(sheet, pressurePa) }
    : { ...common, allowedM3PerS: capacityTest(sheet, pressurePa), bubblesPerMin: null };
}

function waterTest({ units, portDiameterM, shutOffDropPa }: Tested) {
  const allowedM3PerS =
    units === 'us'
      ? fciClassV({ portDiameterM, testDropPa: shutOffDropPa }).allowedLeakM3PerS
      : iecClassVM3PerS({ seatDiameterM: portDiameterM, testDropPa: shutOffDropPa });
  return { pressurePa: shutOffDropPa, mostPa: shutOffDropPa, allowedM3PerS };
}

function tableTest({ units, portDiameterM }: Tested, testDropPa: number) {
  if (units === 'us') {
    const { flowM3PerS, bubblesPerMin } = fciClassVi({ portDiameterM });
    return { allowedM3PerS: flowM3PerS, bubblesPerMin };
  }
  const { allowedLeakM3PerS } = iecClassVi({ seatDiameterM: portDiameterM, testDropPa });
  // The bubbles of the table go with its own figure, which the drop changes here.
  return { allowedM3PerS: allowedLeakM3PerS, bubblesPerMin: null };
}

function capacityTest(sheet: Tested, inletPa: number): number {
  const { ratedKv, pressureDropRatioXt, leakageClass, units } = sheet;
  if (leakageClass !== 'II' && leakageClass !== 'III' && leakageClass !== 'IV')
    throw new Error(`class ${leakageClass} is no share of the capacity`);
  const { flowMolPerS: ratedCapacity } = ratedCapacityGas({
    ratedKv,
    inletPa,
    outletPa: 0,
    atmospherePaAbs: ROOM.pressurePaAbs,
    temperatureK: ROOM.temperatureK,
    molarMassKgPerMol: 0.02897,
    heatRatio: 1.4,
    compressibility: 1,
    // `noSeatTest` refuses a sheet without it.
    pressureDropRatioXt: pressureDropRatioXt ?? Number.NaN,
    form: units === 'us' ? 'isa-scfh' : 'iec-normal',
  });
  const limit = units === 'us' ? fciCapacityLimit : iecCapacityLimit;
  return atRoomM3PerS(limit({ leakageClass, ratedCapacity }).allowedLeak);
}

/** @example atRoomM3PerS(1) // 0.0240550: a mole of air at 20 degrees Celsius and 101.325 kPa */
export function atRoomM3PerS(flowMolPerS: number): number {
  return (flowMolPerS * GAS_CONSTANT_J_PER_MOL_K * ROOM.temperatureK) / ROOM.pressurePaAbs;
}
