/** Rules about what shows an energy safe. They go by energies and gauges, whatever the procedure is. */
import { conductanceOfHole } from '../../../procedures/calculations/orifice-flow.ts';
import { chokedDischarge } from '../../../procedures/calculations/sonic-conductance.ts';
import type { Reading } from '../../../procedures/job.ts';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import { CONDITIONS, type ConditionId } from '../../../safety/conditions.ts';
import { sayReading } from '../say-line.ts';
import { type AuditedJob, type Exception, exception, type JobLine } from './exception.ts';

const PRESSURES: readonly ConditionId[] = [
  'supplyAir',
  'secondSupply',
  'signalAir',
  'trappedAir',
  'lockUpAir',
  'oppositeAir',
  'processInlet',
  'processOutlet',
];

function shownSafe({ effects }: JobLine): readonly ConditionId[] {
  const sets = Object.entries(effects.sets ?? {}) as [ConditionId, string][];
  return sets.filter(([id, state]) => PRESSURES.includes(id) && state === 'isolated').map(([id]) => id);
}

const readingsOf = ({ inputs }: JobLine): readonly Reading[] => inputs.readings ?? [];
const isPressure = ({ field, gauge }: Reading): boolean => field.endsWith('Pa') && gauge !== null;
/** Twice the uncertainty above nothing. */
const isLive = ({ valueSi, uncertaintySi }: Reading): boolean => valueSi > 2 * (uncertaintySi ?? 0);

interface Zero {
  readonly line: JobLine;
  readonly zero: Reading;
  /** The last live reading on the same gauge before it. */
  readonly live: { readonly line: JobLine; readonly reading: Reading } | null;
}

/** Every zero on a gauge that shows an energy safe, with what that gauge read live before. */
function zeros({ lines }: AuditedJob): readonly Zero[] {
  const live = new Map<string, { readonly line: JobLine; readonly reading: Reading }>();
  return lines.flatMap((line) => {
    const pressures = readingsOf(line).filter(isPressure);
    for (const reading of pressures) if (isLive(reading)) live.set(reading.gauge ?? '', { line, reading });
    if (shownSafe(line).length === 0) return [];
    return pressures
      .filter((reading) => !isLive(reading))
      .map((zero) => ({ line, zero, live: live.get(zero.gauge ?? '') ?? null }));
  });
}

export function notLive(job: AuditedJob): readonly Exception[] {
  // A job that goes on from another has its live readings there.
  if ((job.opened.goesOnFrom ?? null) !== null) return [];
  return zeros(job)
    .filter(({ live }) => live === null)
    .map(({ line, zero }) => exception('notLive', line, sayReading(zero)));
}

export function noEvidence({ lines }: AuditedJob): readonly Exception[] {
  return lines
    .filter((line) => line.kind !== 'locks-removed' && shownSafe(line).length > 0)
    .filter((line) => readingsOf(line).length === 0 && Object.keys(line.inputs.words ?? {}).length === 0)
    .map((line) =>
      exception(
        'noEvidence',
        line,
        shownSafe(line)
          .map((id) => CONDITIONS[id].name)
          .join(', '),
      ),
    );
}

/**
 * The widest that a vent can be: no sheet says it. A tank is drained through a cock of one inch at the most, a case through
 * its tubing or the half inch connection of it (bores of thin-walled pipe, from memory; that none is wider is common practice).
 */
const WIDEST_VENT_M = { tank: 0.028, case: 0.018 };
const NO_LOSS = 1;
const AIR = { heatRatio: 1.4, gasConstantJPerKgK: 287.05 };
const ATMOSPHERE_PA_ABS = 101_325;
/** Warm air leaves quicker: the error is on the side of the technician. */
const WARM_K = 323.15;

/**
 * The least time in which air can leave a volume: choked to its end, without loss. It takes longer in truth.
 * @example leastVentS({ volumeM3: 0.05, boreM: 0.012, fromPa: 700000, toPa: 3000 }) // 4.3
 */
export function leastVentS(of: {
  readonly volumeM3: number;
  readonly boreM: number;
  readonly fromPa: number;
  readonly toPa: number;
}): number {
  const { conductanceM3PerSPa } = conductanceOfHole({
    diameterM: of.boreM,
    dischargeFactor: NO_LOSS,
    ...AIR,
  });
  const { timeConstantS } = chokedDischarge({
    volumeM3: of.volumeM3,
    conductanceM3PerSPa,
    startPa: of.fromPa,
    atmospherePaAbs: ATMOSPHERE_PA_ABS,
    temperatureK: WARM_K,
    elapsedS: 0,
  });
  return timeConstantS * Math.log((of.fromPa + ATMOSPHERE_PA_ABS) / (of.toPa + ATMOSPHERE_PA_ABS));
}

/** What must be emptied at the least, and through what at the most; null where nobody can say. */
function toBeVented(
  condition: ConditionId,
  { sheet, fromPa }: { readonly sheet: Partial<ValveSheet>; readonly fromPa: number },
): { readonly volumeM3: number; readonly boreM: number } | null {
  const { tankVolumeM3 = null, effectiveAreaM2 = 0, travelM = 0 } = sheet;
  if (condition === 'trappedAir')
    return tankVolumeM3 === null ? null : { volumeM3: tankVolumeM3, boreM: WIDEST_VENT_M.tank };
  if (condition !== 'signalAir') return null;
  const volumeM3 = effectiveAreaM2 * travelM * movedAt(fromPa, sheet);
  return volumeM3 > 0 ? { volumeM3, boreM: WIDEST_VENT_M.case } : null;
}

/** The share of its travel that the stem has made at the least, by the highest range that the sheet has. */
function movedAt(pressurePa: number, sheet: Partial<ValveSheet>): number {
  const lowPa = Math.max(sheet.benchSetLowPa ?? 0, sheet.installedLowPa ?? 0);
  const highPa = Math.max(sheet.benchSetHighPa ?? 0, sheet.installedHighPa ?? 0);
  if (!(highPa > lowPa)) return 0;
  return Math.min(1, Math.max(0, (pressurePa - lowPa) / (highPa - lowPa)));
}

export function ventTooQuick(job: AuditedJob): readonly Exception[] {
  return zeros(job).flatMap(({ line, zero, live }) => {
    // Lines of one go, and late ones, carry the time when they were written.
    const isTimed = live !== null && !isLate(line) && !isLate(live.line) && live.line !== line;
    if (!isTimed || line.inputs.together !== undefined) return [];
    const elapsedS = (Date.parse(line.at) - Date.parse(live.line.at)) / 1000;
    return shownSafe(line).flatMap((condition) => {
      const fromPa = live.reading.valueSi;
      const vented = toBeVented(condition, { sheet: job.opened.sheet, fromPa });
      if (vented === null) return [];
      const toPa = Math.max(zero.valueSi, 0) + (zero.uncertaintySi ?? 0);
      const leastS = leastVentS({ ...vented, fromPa, toPa });
      if (elapsedS >= leastS) return [];
      const litres = (vented.volumeM3 * 1000).toFixed(0);
      const what = `${sayReading(live.reading)} to ${sayReading(zero)} in ${elapsedS.toFixed(1)} s; ${litres} L through ${vented.boreM * 1000} mm take at least ${leastS.toFixed(1)} s`;
      return [{ ...exception('ventTooQuick', line, what), lines: [live.line.place, line.place] }];
    });
  });
}

const isLate = ({ inputs }: JobLine): boolean => inputs.late !== undefined;

/** What showed an energy safe: each gauge with its live reading and its zero. */
function markOf(found: readonly Zero[]): string {
  return found
    .map(
      ({ zero, live }) =>
        `${zero.gauge} ${live?.reading.valueSi ?? ''} at ${live?.line.place ?? ''} ${zero.valueSi}`,
    )
    .join('; ');
}

export function sameEvidence(job: AuditedJob): readonly Exception[] {
  const seen = new Map<string, { readonly line: JobLine; readonly energies: readonly ConditionId[] }>();
  const all = zeros(job);
  return [...new Set(all.map(({ line }) => line))].flatMap((line) => {
    const mark = markOf(all.filter((one) => one.line === line));
    const energies = shownSafe(line);
    const before = seen.get(mark);
    seen.set(mark, { line, energies });
    if (before === undefined || energies.some((id) => before.energies.includes(id))) return [];
    const names = [...before.energies, ...energies].map((id) => CONDITIONS[id].name).join(' and ');
    return [{ ...exception('sameEvidence', line, names), lines: [before.line.place, line.place] }];
  });
}
