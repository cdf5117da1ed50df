import type { EnergyTag } from '../energy-tag.ts';

/** What a space holds: full pressure, test air held on a gauge, nothing that hurts, or no such space. */
export type Filling = 'live' | 'held' | 'safe' | 'absent';
export type SpringState = 'loaded' | 'contained' | 'released' | 'absent';

/** A cock or block valve: drawn filled when shut, with its padlock and number when locked. */
export interface Cock {
  readonly shut: boolean;
  readonly lock?: string;
}

export interface ValveSection {
  /** Unique on the page: patterns and moving parts are named by it. */
  readonly id: string;
  /** The picture in one sentence; the evidence list beside it says the same in full. */
  readonly sentence: string;
  readonly plugCloses: 'down' | 'up';
  readonly airMovesStem: 'down' | 'up';
  readonly flow: 'under' | 'over';
  readonly actuatorKind: 'diaphragm' | 'piston';
  readonly springHeldBy: 'adjuster' | 'case' | 'no spring';
  /** Letters in the box on the signal line, for example `I/P`; blank: no box. */
  readonly device: string;
  /** A positioner's lever is drawn from the box to the stem. */
  readonly positioner: boolean;
  /** 0 shut, 1 fully open. */
  readonly openFraction: number;
  readonly supply: Filling;
  readonly signal: Filling;
  readonly spring: SpringState;
  readonly inlet: Filling;
  readonly outlet: Filling;
  /** How the controller's line ends: joined to the case, capped, or capped with a test gauge at the case. */
  readonly signalLine: 'joined' | 'capped' | 'test gauge';
  /** Null where the line has no such valve. */
  readonly supplyCock: Cock | null;
  readonly inletCock: Cock | null;
  readonly outletCock: Cock | null;
  readonly inletDrain: Cock | null;
  readonly outletDrain: Cock | null;
  readonly bypass: Cock | null;
  readonly tags: readonly EnergyTag[];
  readonly words: {
    readonly open: string;
    readonly shut: string;
    readonly travel: string;
    /** The travel as read, with its unit. */
    readonly travelValue: string;
  };
}

/** The stroke on the drawing, whatever the valve's real travel. */
export const STROKE_U = 28;

/** How far the stem stands up, 0 to 1: a plug that closes moving down is open when the stem is up. */
export function stemUpFraction(valve: Pick<ValveSection, 'plugCloses' | 'openFraction'>): number {
  const open = Math.min(1, Math.max(0, valve.openFraction));
  return valve.plugCloses === 'down' ? open : 1 - open;
}

/** Where the plug's sealing edge and the seat stand, in drawing units, up positive. */
export function seating(valve: Pick<ValveSection, 'plugCloses' | 'openFraction'>): {
  readonly seatU: number;
  readonly plugEdgeU: number;
} {
  const up = STROKE_U * stemUpFraction(valve);
  return valve.plugCloses === 'down'
    ? { seatU: 11, plugEdgeU: 11 + up }
    : { seatU: -9, plugEdgeU: -9 - STROKE_U + up };
}
