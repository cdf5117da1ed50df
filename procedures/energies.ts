import type { ConditionId } from '../safety/conditions.ts';
import { ENERGIES } from '../safety/energies.ts';
import { benchSet } from './calculations/bench-set.ts';
import { springEnergy } from './calculations/spring-energy.ts';
import { gasEnergyJ } from './calculations/stored-energy.ts';
import type { Dimension } from './calculations/unit-table.ts';
import { capital } from './capital.ts';
import type { Job } from './job.ts';
import { bothEndsFed, springRateOf } from './valve-sheet/derived.ts';
import type { ValveSheet } from './valve-sheet/sheet.ts';
import { worded } from './valve-sheet/worded.ts';

/** One standard atmosphere, and the heat ratio of air (dry, near room temperature): what stored air is worked out with. */
const ATMOSPHERE_PA_ABS = 101_325;
const AIR_HEAT_RATIO = 1.4;
const ZERO_CELSIUS_K = 273.15;

export interface Size {
  readonly valueSi: number;
  readonly dimension: Dimension;
}

/** One energy of one valve, as whoever isolates it is told before anything is shut (29 CFR 1910.147(d)(1)). */
export interface EnergyOfValve {
  readonly condition: ConditionId;
  /** By the sheet; what is not there is looked for at the valve all the same. */
  readonly onSheet: boolean;
  /** How big, as far as the sheet says or lets it be worked out; an empty list where its size is missing. */
  readonly sizes: readonly Size[];
  /** What is not a number: the fluid, what acts from outside. */
  readonly kind: string;
  /** Tags of the points that isolate it. */
  readonly points: readonly string[];
}

type Sheet = Job['sheet'];

/**
 * Every energy that a valve can have, with its size from the sheet or worked out from it.
 * @example energiesOf(sheet).find(({ condition }) => condition === 'supplyAir').sizes[0].valueSi // 137895.15, 20 psi
 */
export function energiesOf(sheet: ValveSheet): readonly EnergyOfValve[] {
  const row = (condition: ConditionId, of: Partial<EnergyOfValve>): EnergyOfValve => ({
    condition,
    onSheet: true,
    sizes: [],
    kind: '',
    points: [],
    ...of,
  });
  return [
    row('supplyAir', { sizes: pressure(sheet.supplyHighPa), points: tags(sheet.supplyPoint) }),
    row('secondSupply', {
      onSheet: sheet.secondSupplyPoint !== null,
      sizes: pressure(sheet.secondSupplyHighPa),
      points: tags(sheet.secondSupplyPoint),
    }),
    row('signalAir', { sizes: [...pressure(onActuatorPa(sheet)), ...caseAir(sheet)] }),
    row('trappedAir', { onSheet: sheet.volumeTank, sizes: tankAir(sheet) }),
    row('lockUpAir', { onSheet: sheet.lockUp, sizes: pressure(sheet.supplyHighPa) }),
    row('oppositeAir', {
      onSheet: bothEndsFed(sheet),
      sizes: pressure(sheet.supplyHighPa),
    }),
    row('spring', { onSheet: sheet.springHeldBy !== 'no spring', sizes: spring(sheet) }),
    row('processInlet', {
      sizes: pressure(sheet.processInletPa),
      kind: sheet.processFluid,
      points: tags(sheet.inletPoint),
    }),
    row('processOutlet', {
      sizes: pressure(sheet.processOutletPa),
      kind: sheet.processFluid,
      points: tags(sheet.outletPoint),
    }),
    row('temperature', {
      sizes: [{ valueSi: sheet.processTemperatureC + ZERO_CELSIUS_K, dimension: 'temperature' }],
      kind: sheet.heatTracing ? 'with tracing or jacket' : '',
    }),
    row('weight', {
      sizes: sheet.actuatorMassKg === null ? [] : [{ valueSi: sheet.actuatorMassKg, dimension: 'mass' }],
    }),
    row('residue', {
      onSheet: sheet.fluidHarm !== 'none',
      kind: `${sheet.processFluid}, ${sheet.fluidHarm === 'none' ? 'does no harm' : sheet.fluidHarm}`,
    }),
    row('electrical', {
      onSheet: sheet.electricalV !== null,
      kind: sheet.electricalV === null ? '' : `${sheet.electricalV} V`,
      points: tags(sheet.electricalPoint),
    }),
    row('commands', {
      sizes: [{ valueSi: sheet.travelM, dimension: 'length' }],
      kind: 'the whole travel',
    }),
    row('safetyFunction', { onSheet: sheet.tripFunction, kind: sheet.tripFunction ? 'part of a trip' : '' }),
  ];
}

/** Energies whose size the sheet should have and does not: pressure, weight, volume. */
export function energiesMissing({ sheet }: Pick<Job, 'sheet'>): readonly ConditionId[] {
  return energiesOf(sheet)
    .filter(({ onSheet, sizes, kind }) => onSheet && sizes.length === 0 && kind === '')
    .map(({ condition }) => condition);
}

/**
 * One energy in a sentence: its size, where it is to be isolated, what it does, how it is controlled and how shown.
 * @example sayEnergy('weight', job) // '70 lb: actuator, plug and stem drop or swing when ...'
 */
export function sayEnergy(condition: ConditionId, { sheet }: Pick<Job, 'sheet'>): string {
  const row = ENERGIES[condition];
  const found = energiesOf(sheet).find((one) => one.condition === condition);
  if (row === undefined || found === undefined) return 'not on the sheet';
  if (!found.onSheet) return `None on the sheet. Look for it all the same: ${row.hazard}.`;
  const sizes = found.sizes.map(({ valueSi, dimension }) =>
    worded({ valueSi, dimension, units: sheet.units }),
  );
  const size = [...sizes, found.kind].filter((text) => text !== '').join(', ');
  const { control, shownBy } = madeSafe(row, { condition, sheet });
  const at = found.points.length === 0 ? '' : `, to be isolated at ${found.points.join(' and ')}`;
  return `${size === '' ? 'Size not on the sheet' : size}${at}. ${capital(row.hazard)}. Control: ${control}. Shown by: ${shownBy}.`;
}

interface MadeSafe {
  readonly control: string;
  readonly shownBy: string;
}

const LONG_BOLTS: MadeSafe = {
  control: 'left shut in under its cover, or let off evenly by its long bolts once the short ones are out',
  shownBy: 'case shut and every bolt in and tight, or its cover loose on all long bolts',
};

const IN_CYLINDER: MadeSafe = {
  control: 'left shut in: a cylinder with a spring is opened by its maker’s manual alone',
  shownBy: 'cylinder shut and every bolt in and tight',
};

/** A spring is made safe as its actuator holds it; every other energy as its row says. */
function madeSafe(row: MadeSafe, { condition, sheet }: { condition: ConditionId; sheet: Sheet }): MadeSafe {
  if (condition !== 'spring' || sheet.springHeldBy === 'no spring') return row;
  if (sheet.actuatorKind === 'piston') return IN_CYLINDER;
  return sheet.springHeldBy === 'case' ? LONG_BOLTS : row;
}

function pressure(valuePa: number | null): readonly Size[] {
  return valuePa === null ? [] : [{ valueSi: valuePa, dimension: 'pressure' }];
}

function tags(tag: string | null): readonly string[] {
  return tag === null ? [] : [tag];
}

/** A positioner gives the actuator up to its whole supply; without one no more comes than the signal. */
function onActuatorPa({ positioner, signalHighPa, supplyHighPa }: Sheet): number {
  return positioner === 'none' ? signalHighPa : Math.max(signalHighPa, supplyHighPa ?? 0);
}

/** The most air on the actuator, over the volume that the stroke sweeps: the least that is stored there. */
function caseAir(sheet: Sheet): readonly Size[] {
  return stored({ volumeM3: sheet.effectiveAreaM2 * sheet.travelM, gaugePa: onActuatorPa(sheet) });
}

function tankAir({ tankVolumeM3, supplyHighPa }: Sheet): readonly Size[] {
  if (tankVolumeM3 === null || supplyHighPa === null) return [];
  const air = stored({ volumeM3: tankVolumeM3, gaugePa: supplyHighPa });
  return [{ valueSi: tankVolumeM3, dimension: 'volume' }, ...pressure(supplyHighPa), ...air];
}

function stored({
  volumeM3,
  gaugePa,
}: {
  readonly volumeM3: number;
  readonly gaugePa: number;
}): readonly Size[] {
  const valueSi = gasEnergyJ({
    form: 'isentropic',
    volumeM3,
    pressurePaAbs: gaugePa + ATMOSPHERE_PA_ABS,
    atmospherePaAbs: ATMOSPHERE_PA_ABS,
    heatRatio: AIR_HEAT_RATIO,
  });
  return [{ valueSi, dimension: 'energy' }];
}

/** Force that the shut case holds with no air on it, and what the spring sets free from there. */
function spring(sheet: Sheet): readonly Size[] {
  if (sheet.springHeldBy === 'no spring') return [];
  const { preloadN } = benchSet(sheet);
  const springRateNPerM = springRateOf(sheet);
  const installedM = preloadN / springRateNPerM;
  const { installedJ } = springEnergy({
    springRateNPerM,
    installedM,
    fullTravelM: installedM + sheet.travelM,
  });
  return [
    { valueSi: preloadN, dimension: 'force' },
    { valueSi: installedJ, dimension: 'energy' },
  ];
}
