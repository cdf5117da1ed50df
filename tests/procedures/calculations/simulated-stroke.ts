import type { AirAction } from '../../../procedures/calculations/signal-travel.ts';
import type { Direction, StrokeRow } from '../../../procedures/calculations/stroke-rows.ts';

export interface SimulatedValve {
  readonly airAction: AirAction;
  readonly benchSetLowPa: number;
  readonly benchSetHighPa: number;
  readonly travelM: number;
  /** Friction as a pressure, one way. */
  readonly frictionPa: number;
  readonly percents: readonly number[];
  readonly cycles?: number;
}

/**
 * Rows of a stem that friction holds: it moves only as far as it must to stay within the friction of its balance, so it
 * stands still after each reversal, and never passes a stop.
 */
export function strokeOf(valve: SimulatedValve): StrokeRow[] {
  const { benchSetLowPa, benchSetHighPa, travelM, frictionPa } = valve;
  const spanPa = benchSetHighPa - benchSetLowPa;
  const balanceAt = (pressurePa: number) => ((pressurePa - benchSetLowPa) / spanPa) * travelM;
  const rows: StrokeRow[] = [];
  let alongAirM = 0;
  for (let cycle = 1; cycle <= (valve.cycles ?? 1); cycle++) {
    for (const { percent, direction } of thereAndBack(valve.percents)) {
      const signalPa = benchSetLowPa + (percent / 100) * spanPa;
      const [leastM, mostM] = [balanceAt(signalPa - frictionPa), balanceAt(signalPa + frictionPa)];
      alongAirM = Math.min(travelM, Math.max(0, Math.min(mostM, Math.max(leastM, alongAirM))));
      const openM = valve.airAction === 'air-to-open' ? alongAirM : travelM - alongAirM;
      rows.push({ signalPa, travelM: openM, direction, cycle });
    }
  }
  return rows;
}

function thereAndBack(
  percents: readonly number[],
): readonly { readonly percent: number; readonly direction: Direction }[] {
  const up = percents.map((percent) => ({ percent, direction: 'up' as const }));
  const down = percents
    .toReversed()
    .slice(1)
    .map((percent) => ({ percent, direction: 'down' as const }));
  return [...up, ...down];
}
