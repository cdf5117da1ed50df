import type { Grade, Piece, Shows } from './cause.ts';
import { signalOpens, type ValveFacts } from './valve-facts.ts';

/**
 * Where the stem comes to rest for the opening that is asked: a straight line between two stops, everything as a share
 * of the travel. A cause that moves the line or the stops is told by it in every check that looks at travel.
 */
export interface TravelMap {
  readonly factor: number;
  readonly shiftFraction: number;
  readonly low: number;
  readonly high: number;
  /** How far the others of its grade stand from it, as a share of the travel: a grade is a stretch, not one place. */
  readonly spreadFraction?: number;
}

export const TRUE_TRAVEL: TravelMap = { factor: 1, shiftFraction: 0, low: 0, high: 1 };

/** @example restsAt({ factor: 1, shift: 0.1, low: 0, high: 1 }, 0.5) // 0.6 */
export function restsAt(map: TravelMap, asked: number): number {
  return Math.min(map.high, Math.max(map.low, map.factor * asked + map.shiftFraction));
}

/** The map of a valve whose signal arrives changed: share of the span times a factor, moved by a shift. */
export function signalMap(
  v: ValveFacts,
  of: { readonly factor: number; readonly shiftFraction: number; readonly spreadFraction?: number },
): TravelMap {
  const { factor, shiftFraction, spreadFraction = 0 } = of;
  return {
    ...TRUE_TRAVEL,
    factor,
    spreadFraction,
    shiftFraction: signalOpens(v) ? shiftFraction : 1 - factor - shiftFraction,
  };
}

/** Openings that a loop asks for in its work: judgement. */
export const ASKED = [0.3, 0.4, 0.5, 0.6, 0.7, 0.8] as const;
/** How far a step of the output is taken where somebody looks whether the travel follows. */
const STEP = 0.12;
/** Beyond both ends of the signal, as a full stroke is often made and as a controller goes. Common practice, no source. */
const BEYOND = 0.05;
/** The same where the step is small: a twentieth, and what a person adds to be sure. */
const SMALL_STEP = 0.08;
/** A difference of travel that is seen. */
const SEEN = 0.02;

interface Told {
  /** Share of such faults that come at one moment. */
  readonly atOnce?: number;
  /** Openings that are asked for when somebody looks; left out: those of its usual work. */
  readonly asked?: readonly number[];
}

/**
 * A stop that the work never asks to pass troubles nobody: where it is complained of, half of the looks find it asked
 * beyond, and then every check shows it. Judgement.
 */
export function waysAsked({ low, high }: TravelMap): readonly {
  readonly id: string;
  readonly part: number;
  readonly asked: readonly number[];
}[] {
  const parts = [0, 0.25, 0.5, 0.75];
  const beyond = parts.map((part) => (low > 0 ? part * low : 1 - part * (1 - high)));
  return [
    { id: '', part: 0.5, asked: ASKED },
    { id: ', asked beyond', part: 0.5, asked: beyond },
  ];
}

/** What all checks show that look at the travel, and at how the loop comes to terms with it. */
export function travelShows(map: TravelMap, told: Told = {}): Shows {
  const stroke = strokeShows(map);
  const openings = told.asked ?? ASKED;
  const shareOf = (is: (map: TravelMap, asked: number) => boolean) =>
    openings.filter((asked) => is(map, asked)).length / openings.length;
  const [still, oneWay] = [shareOf(stands), shareOf(movesOneWay)];
  return {
    travelAgainstOutput: againstOutput(map, openings),
    // At its stop it waits until what was wound up beyond it has come back, and goes then.
    smallStep: { 'no move': 0.97 * still + 0.3 * oneWay, jumps: 0.4 * oneWay },
    strokeByController: stroke,
    strokeOnTestAir: stroke,
    leakShut: drivenShut(map),
    ...loopShows(map, told),
  };
}

function stands(map: TravelMap, asked: number): boolean {
  return Math.abs(restsAt(map, asked + STEP) - restsAt(map, asked - STEP)) < SEEN;
}

/** A small step is seen one way, and the other way a stop is in its path. */
function movesOneWay(map: TravelMap, asked: number): boolean {
  if (stands(map, asked)) return false;
  const at = restsAt(map, asked);
  const [up, down] = [restsAt(map, asked + SMALL_STEP) - at, at - restsAt(map, asked - SMALL_STEP)];
  return up < SEEN !== down < SEEN;
}

function againstOutput(map: TravelMap, openings: readonly number[]) {
  const pieces: Piece[] = [];
  const words: Record<string, number> = {};
  const share = 0.98 / openings.length;
  for (const asked of openings) {
    const at = restsAt(map, asked);
    if (stands(map, asked)) {
      const word = at < SEEN ? 'stays shut' : at > 1 - SEEN ? 'stays open' : 'stays part way';
      words[word] = (words[word] ?? 0) + share;
      continue;
    }
    const off = [-0.05, 0.05].map((by) => 100 * (restsAt(map, asked + by) - asked - by));
    const wide = 100 * (map.spreadFraction ?? 0);
    const [low, high] = [Math.min(...off), Math.max(...off)];
    if (Math.max(-low, high) > 0.5) pieces.push([share, low - wide, high + wide]);
  }
  return { pieces, words };
}

/** Some give the ends of the signal, some a little more: half and half, judgement. */
function strokeShows(map: TravelMap): Readonly<Record<string, number>> {
  const shows: Record<string, number> = {};
  for (const beyond of [0, BEYOND]) {
    const [word, share] = strokedTo(map, beyond);
    shows[word] = (shows[word] ?? 0) + share / 2;
  }
  return shows;
}

function strokedTo(map: TravelMap, beyond: number): readonly [word: string, share: number] {
  const shortOpen = 1 - restsAt(map, 1 + beyond);
  const shortShut = restsAt(map, -beyond);
  if (1 - shortOpen - shortShut < 0.05) return ['does not move', 0.97];
  const seen = 0.97 * shareSeen(Math.max(shortOpen, shortShut), [0.02, 0.045]);
  return [shortOpen >= shortShut ? 'short of open' : 'short of shut', seen];
}

/** What passes a plug that stands so far off its seat, with a plug of the usual shape. */
export function leftOpen(at: number): Readonly<Record<string, number>> {
  const some = shareSeen(at, [0.003, 0.01]);
  const much = shareSeen(at, [0.02, 0.045]);
  return { passes: 0.96 * (some - much), 'passes much': 0.96 * much };
}

/** Driven shut with full load, as its check says; of those who say that it passes some gave no more than no output. */
const NO_MORE_THAN_SHUT = 0.3;
function drivenShut(map: TravelMap): Readonly<Record<string, number>> {
  const [home, ended] = [leftOpen(restsAt(map, -8 * BEYOND)), leftOpen(restsAt(map, 0))];
  const part = (word: string) =>
    (1 - NO_MORE_THAN_SHUT) * (home[word] ?? 0) + NO_MORE_THAN_SHUT * (ended[word] ?? 0);
  return { passes: part('passes'), 'passes much': part('passes much') };
}

/** From nothing at the first place to everything at the second. */
export function shareSeen(size: number, [from, to]: readonly [number, number]): number {
  return Math.min(1, Math.max(0, (size - from) / (to - from)));
}

function loopShows(map: TravelMap, { atOnce = 0, asked = ASKED }: Told): Shows {
  const [most, least] = [restsAt(map, 1 + BEYOND), restsAt(map, -BEYOND)];
  const shareOf = (is: (wanted: number) => boolean) => asked.filter(is).length / asked.length;
  const up = shareOf((wanted) => wanted > most + SEEN);
  const down = shareOf((wanted) => wanted < least - SEEN);
  // The loop comes to terms with what the valve adds by asking for less.
  const nearShut = shareOf(
    (wanted) => wanted >= least - SEEN && wanted <= most + SEEN && outputFor(map, wanted) < NEAR_SHUT,
  );
  const cannot = up + down;
  // Where the loop makes up for it, the output moves all the same.
  const moved = shareSeen(Math.abs(restsAt(map, 0.55) - 0.55), [0.04, 0.1]);
  return {
    controllerOutput: {
      'wound up': 0.92 * up,
      'wound down': 0.92 * down,
      'near shut': 0.85 * nearShut,
      frozen: 0.04 * cannot,
    },
    trend: {
      'sudden change': 0.9 * atOnce * Math.max(cannot, moved),
      offset: 0.9 * cannot * (1 - 0.9 * atOnce),
      sluggish: 0.05 * cannot,
    },
  };
}

/** Output, as opening, at which a loop that looks only at the flow comes to the opening that it needs. */
function outputFor({ factor, shiftFraction }: TravelMap, wanted: number): number {
  return (wanted - shiftFraction) / factor;
}

/** Below it a controller output reads as near shut, as its check says. */
const NEAR_SHUT = 0.2;

/** One grade for each map, with what the cause shows beside its travel. */
export function gradesOf(
  parts: readonly {
    readonly id: string;
    readonly share: number;
    readonly map: TravelMap;
    readonly told?: Told;
    readonly shows?: Shows;
  }[],
): readonly Grade[] {
  const total = parts.reduce((sum, { share }) => sum + share, 0);
  return parts.map(({ id, share, map, told, shows }) => ({
    id,
    share: share / total,
    shows: { ...travelShows(map, told), ...shows },
  }));
}

/** How far off such things usually are, as a share of the span, and how often: judgement. */
export const OFF_BY = [
  { id: 'a little', by: 0.05, spreadFraction: 0.02, share: 0.3 },
  { id: 'plainly', by: 0.1, spreadFraction: 0.03, share: 0.35 },
  { id: 'far', by: 0.18, spreadFraction: 0.05, share: 0.35 },
] as const;
