/** Rules about what shows an energy safe. They go by energies and gauges, whatever the procedure is. */
import { conductanceOfHole } from '../../../procedures/calculations/orifice-flow.ts';
import { chokedDischarge } from '../../../procedures/calculations/sonic-conductance.ts';
import type { Reading } from '../../../procedures/job.ts';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import { CONDITIONS, type ConditionId } from '../../../safety/conditions.ts';
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

export function shownSafe({ effects }: JobLine): readonly ConditionId[] {
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
    .map(({ line, zero }) => exception('notLive', line, `${zero.typed} on ${zero.gauge}`));
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

/** The widest opening that air can be let out by here, and with no loss in it: common practice, no source. */
const WIDEST_VENT_M = 0.012;
const NO_LOSS = 1;
const AIR = { heatRatio: 1.4, gasConstantJPerKgK: 287.05 };
const ATMOSPHERE_PA_ABS = 101_325;
/** Warm air leaves quicker: the error is on the side of the technician. */
const WARM_K = 323.15;

/**
 * The least time in which air can leave a volume: choked to its end, through the widest vent. It takes longer in truth.
 * @example leastVentS({ volumeM3: 0.05, fromPa: 700000, toPa: 3000 }) // 4.4
 */
export function leastVentS(of: {
  readonly volumeM3: number;
  readonly fromPa: number;
  readonly toPa: number;
}): number {
  const { conductanceM3PerSPa } = conductanceOfHole({
    diameterM: WIDEST_VENT_M,
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

/** As much as must be emptied at the least: a full tank, or the case with its stem at the end of its travel. */
function volumeM3(condition: ConditionId, sheet: Partial<ValveSheet>): number | null {
  if (condition === 'trappedAir') return sheet.tankVolumeM3 ?? null;
  const { effectiveAreaM2, travelM } = sheet;
  if (condition !== 'signalAir' || effectiveAreaM2 === undefined || travelM === undefined) return null;
  return effectiveAreaM2 * travelM;
}

export function ventTooQuick(job: AuditedJob): readonly Exception[] {
  return zeros(job).flatMap(({ line, zero, live }) => {
    // Lines of one go, and late ones, carry the time when they were written.
    const isTimed = live !== null && !isLate(line) && !isLate(live.line) && live.line !== line;
    if (!isTimed || line.inputs.together !== undefined) return [];
    const elapsedS = (Date.parse(line.at) - Date.parse(live.line.at)) / 1000;
    return shownSafe(line).flatMap((condition) => {
      const volume = volumeM3(condition, job.opened.sheet);
      if (volume === null) return [];
      const toPa = Math.max(zero.valueSi, 0) + (zero.uncertaintySi ?? 0);
      const leastS = leastVentS({ volumeM3: volume, fromPa: live.reading.valueSi, toPa });
      if (elapsedS >= leastS) return [];
      const what = `${live.reading.typed} to ${zero.typed} in ${elapsedS.toFixed(1)} s, at least ${leastS.toFixed(1)} s`;
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
