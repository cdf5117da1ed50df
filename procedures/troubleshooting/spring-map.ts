import type { Piece, Shows } from './cause.ts';
import { ASKED, restsAt, TRUE_TRAVEL, type TravelMap } from './travel-map.ts';
import { hasPositioner, signalOpens, type ValveFacts } from './valve-facts.ts';

/** A spring that is not the one of the sheet. 1, 0 and 1 is the spring of the sheet. */
export interface SpringSet {
  /** Share of its force that is left. */
  readonly left: number;
  /** Moved bench set, as a share of its range. */
  readonly shiftFraction: number;
  /** Its rate over that of the sheet. */
  readonly rateFactor: number;
  /** How far the bench sets of its grade lie apart from it, as a share of its range. */
  readonly spreadFraction?: number;
}

/** Supply of a positioner over a spring where the sheet has none: judgement. */
const USUAL_SUPPLY_FACTOR = 1.33;

export interface Balance {
  /** Spring force where the air begins to move it, in bench set ranges. */
  readonly preloadFraction: number;
  readonly leastAir: number;
  readonly mostAir: number;
}

/** The balance of spring and air with the spring of the sheet. */
export function balanceOf(v: ValveFacts): Balance {
  const { benchSetLowPa, benchSetHighPa, signalLowPa, signalHighPa, supplyPa } = v.numbers;
  const rangePa = benchSetHighPa - benchSetLowPa;
  const positioner = hasPositioner(v);
  const fullPa = positioner ? (supplyPa ?? USUAL_SUPPLY_FACTOR * benchSetHighPa) : signalHighPa;
  return {
    preloadFraction: benchSetLowPa / rangePa,
    leastAir: positioner ? 0 : signalLowPa / rangePa,
    mostAir: fullPa / rangePa,
  };
}

/** How far the air has moved the stem, as a share of the travel, not yet stopped by its ends. */
function movedBy(air: number, of: SpringSet & Balance): number {
  return (air / of.left - of.preloadFraction - of.shiftFraction) / of.rateFactor;
}

/** Air, in bench set ranges, that holds the stem there. */
function airFor(moved: number, of: SpringSet & Balance): number {
  return of.left * (of.preloadFraction + of.shiftFraction + of.rateFactor * moved);
}

/**
 * Force balance of spring and air: where the stem rests. Without a positioner the whole line moves; a positioner holds
 * the line and only its ends are lost, where the supply no longer reaches.
 */
export function springMap(v: ValveFacts, set: SpringSet): TravelMap {
  const of = { ...set, ...balanceOf(v) };
  const at = (moved: number) => (signalOpens(v) ? moved : 1 - moved);
  const { spreadFraction = 0 } = set;
  if (hasPositioner(v)) {
    const ends = [of.leastAir, of.mostAir].map((air) => at(Math.min(1, Math.max(0, movedBy(air, of)))));
    return { ...TRUE_TRAVEL, low: Math.min(...ends), high: Math.max(...ends) };
  }
  const spanAir = of.mostAir - of.leastAir;
  const shut = at(movedBy(signalOpens(v) ? of.leastAir : of.mostAir, of));
  return { ...TRUE_TRAVEL, spreadFraction, factor: spanAir / (of.left * of.rateFactor), shiftFraction: shut };
}

/** The checks that read actuator air against travel, for the same balance; on the axis in percent of the range. */
export function springAirShows(v: ValveFacts, set: SpringSet): Shows {
  const of = { ...set, ...balanceOf(v) };
  const map = springMap(v, set);
  const wide = 100 * (set.spreadFraction ?? 0);
  const pieces = [0.35, 0.5, 0.65].map((asked): Piece => {
    const off = [-0.1, 0.1].map((by) => offAt(v, { of, map, asked: asked + by }));
    return [0.32, Math.min(...off) - wide, Math.max(...off) + wide];
  });
  const seatAt = signalOpens(v) ? 0 : 1;
  const leaves = 100 * (airFor(seatAt, of) - of.preloadFraction - seatAt);
  return {
    airAtTravel: { pieces },
    leavesSeatAt: { pieces: [[0.95, leaves - 1 - wide, leaves + 1 + wide]] },
  };
}

function offAt(
  v: ValveFacts,
  at: { readonly of: SpringSet & Balance; readonly map: TravelMap; readonly asked: number },
): number {
  const opened = restsAt(at.map, at.asked);
  const moved = signalOpens(v) ? opened : 1 - opened;
  const signal = signalOpens(v) ? at.asked : 1 - at.asked;
  const { leastAir, mostAir, preloadFraction } = at.of;
  const air = hasPositioner(v)
    ? Math.min(mostAir, airFor(moved, at.of))
    : leastAir + signal * (mostAir - leastAir);
  return 100 * (air - preloadFraction - moved);
}

/** Actuator air where the stem stands at a stop and is asked beyond it; elsewhere it reads as it should. */
export function stoppedAirShows(
  v: ValveFacts,
  { map, asked = ASKED }: { readonly map: TravelMap; readonly asked?: readonly number[] },
): Shows {
  if (!v.spring) return {};
  const { leastAir, mostAir, preloadFraction } = balanceOf(v);
  const pieces = asked.flatMap((one): Piece[] => {
    const opened = restsAt(map, one);
    if (Math.abs(opened - one) < 0.03) return [];
    const [moved, wanted] = signalOpens(v) ? [opened, one] : [1 - opened, 1 - one];
    const driven = wanted > moved ? mostAir : 0;
    const air = hasPositioner(v) ? driven : leastAir + wanted * (mostAir - leastAir);
    const off = 100 * (air - preloadFraction - moved);
    return [[0.97 / asked.length, off - 4, off + 4]];
  });
  return { airAtTravel: { pieces } };
}

/** Ends of a cylinder, and the output of a positioner, for a stem that cannot go where it is asked. */
export function stoppedShareOf(
  map: TravelMap,
  asked: readonly number[] = ASKED,
): { readonly wantsOpen: number; readonly wantsShut: number } {
  const share = (of: (one: number) => boolean) => asked.filter(of).length / asked.length;
  return {
    wantsOpen: share((one) => one - restsAt(map, one) > 0.03),
    wantsShut: share((one) => restsAt(map, one) - one > 0.03),
  };
}
