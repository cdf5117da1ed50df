import type { Grade, Piece, Shows } from './cause.ts';
import { signalFull, signalLost } from './senses.ts';
import { decayPercentPerMinute, leakAtTheEnd } from './tube-leak.ts';
import { hasPositioner, type ValveFacts } from './valve-facts.ts';

/** Hole diameters of a small, a medium and a large leak: judgement. */
const HOLES_M = {
  small: [0.0001, 0.0004],
  medium: [0.0005, 0.0015],
  large: [0.002, 0.004],
} as const;

export type LeakGrade = keyof typeof HOLES_M;
const GRADES: readonly LeakGrade[] = ['small', 'medium', 'large'];

/** Each grade is split into so many holes of equal share. */
const PARTS = 4;
/** A small dead volume and the stroke: judgement. */
const DEAD_STROKE_M = 0.05;

export interface LeakPlace {
  /** The signal tube ends before the actuator; the actuator hangs on whatever feeds it. */
  readonly place: 'signal tube' | 'actuator';
  readonly shares: { readonly [G in LeakGrade]?: number };
  /** What shows it whatever its size. */
  readonly always: Shows;
}

/**
 * A leak in its grades. With the air for the actuator coming straight from the source, physics says what is lost
 * along the tube and at the source; with a positioner between them the positioner makes it good until it cannot.
 */
export function leakGrades(v: ValveFacts, of: LeakPlace): readonly Grade[] {
  const behindPositioner = of.place === 'actuator' && hasPositioner(v);
  return GRADES.flatMap((id): readonly Grade[] => {
    const share = of.shares[id];
    if (share === undefined) return [];
    if (behindPositioner) return [{ id, share, shows: { ...hiddenLeak(v, id), ...of.always } }];
    const parts = PARTED[id];
    return parts.map((part) => ({
      id: [id, ...part.sources, ...part.holes].join(' '),
      share: share / parts.length,
      shows: { ...openLeak(v, { id, place: of.place, part }), ...of.always },
    }));
  });
}

/** Which quarters of its holes a part of a grade has, and which sources feed it. */
interface Part {
  readonly holes: readonly number[];
  readonly sources: readonly Source[];
}

const SOURCES = ['strong', 'weak'] as const;
type Source = (typeof SOURCES)[number];
const ALL_HOLES = [0, 1, 2, 3];

/**
 * What a leak of some size takes along the tube and at its source hangs together, and so does what the stem then does: of
 * those that are neither hidden nor plain each half is a grade of its own, on either source.
 */
const PARTED: Readonly<Record<LeakGrade, readonly Part[]>> = {
  small: [{ holes: ALL_HOLES, sources: SOURCES }],
  medium: SOURCES.flatMap((source) => [
    { holes: [0, 1], sources: [source] },
    { holes: [2, 3], sources: [source] },
  ]),
  large: SOURCES.map((source) => ({ holes: ALL_HOLES, sources: [source] })),
};

interface Holes {
  readonly lowM: number;
  readonly highM: number;
}

function holesOf(id: LeakGrade): readonly Holes[] {
  const [lowM, highM] = HOLES_M[id];
  const stepM = (highM - lowM) / PARTS;
  return Array.from({ length: PARTS }, (_, part) => ({
    lowM: lowM + part * stepM,
    highM: lowM + (part + 1) * stepM,
  }));
}

/** Worked out once for a valve: several causes leak in the same place. */
const KNOWN = new WeakMap<ValveFacts, Map<string, Shows>>();

/** The source itself feeds the leak. */
function openLeak(v: ValveFacts, of: OpenLeak): Shows {
  const known = KNOWN.get(v) ?? new Map<string, Shows>();
  KNOWN.set(v, known);
  const key = `${of.id} ${of.place} ${of.part.sources} ${of.part.holes}`;
  const shows = known.get(key) ?? workOutOpenLeak(v, of);
  known.set(key, shows);
  return shows;
}

interface OpenLeak {
  readonly id: LeakGrade;
  readonly place: LeakPlace['place'];
  readonly part: Part;
}

function workOutOpenLeak(v: ValveFacts, of: OpenLeak): Shows {
  const { signalLowPa, signalHighPa } = v.numbers;
  const spanPa = signalHighPa - signalLowPa;
  // Half way along the tube for the tube's own leaks; the far half then carries no air.
  const tubeM = of.place === 'actuator' ? v.tubeM : v.tubeM / 2;
  const seen = (holeM: number, source: Source) =>
    leakAtTheEnd({ holeM, tubeM, sentPa: signalLowPa + 0.75 * spanPa, source });
  const lostPercent = (holeM: number, source: Source) => {
    const { sourcePa, endPa } = seen(holeM, source);
    return { along: (-100 * (sourcePa - endPa)) / spanPa, sag: sagPercent(v, sourcePa) };
  };
  const along: Piece[] = [];
  const sag: Piece[] = [];
  const total: Piece[] = [];
  const holes = holesOf(of.id).filter((_, at) => of.part.holes.includes(at));
  for (const { lowM, highM } of holes) {
    for (const source of of.part.sources) {
      const [one, two] = [lostPercent(lowM, source), lostPercent(highM, source)];
      const share = 1 / holes.length / of.part.sources.length;
      along.push(piece(share, [one.along, two.along]));
      sag.push(piece(share, [one.sag, two.sag]));
      total.push(piece(share, [one.along + one.sag, two.along + two.sag]));
    }
  }
  const worst = meanOf(total);
  const { sourceFollows, valveSuffers } = sizes(worst);
  return {
    valveAgainstSource: { pieces: along },
    sourceOutlet: { pieces: sag },
    valveAgainstCommand: { pieces: total },
    blockSourceSide:
      of.place === 'actuator' ? { 'climbs to full': sourceFollows } : { 'stays low': sourceFollows },
    listenExhaust: LISTEN[of.id],
    // It falls away most at its top, where most is lost: that looks like a span.
    sourceFivePoints: fivePoints(meanOf(sag)),
    supplyDroop: { large: { small: 0, medium: 0.12, large: 0.38 }[of.id] },
    ...(of.place === 'actuator' ? { blockActuatorSide: { pieces: decay(v, holes) } } : {}),
    ...(hasPositioner(v)
      ? positionerStarved(v, { total, valveSuffers })
      : stemSuffers(v, { total, valveSuffers })),
    controllerOutput: { [signalLost(v).output]: valveSuffers * 0.88 },
    trend: trendOf(of.id),
  };
}

function sagPercent(v: ValveFacts, sourcePa: number): number {
  const { signalLowPa, signalHighPa } = v.numbers;
  const spanPa = signalHighPa - signalLowPa;
  return (100 * (sourcePa - (signalLowPa + 0.75 * spanPa))) / spanPa;
}

function fivePoints(sagPercentLost: number): Readonly<Record<string, number>> {
  const seen = Math.min(1, Math.max(0, (sagPercentLost - 0.5) / 4));
  const weak = Math.min(1, Math.max(0, (sagPercentLost - 15) / 40));
  return { weak: 0.9 * seen * weak, 'off by a zero or span': 0.9 * seen * (1 - weak) };
}

/** How far a lost share of the span shows: nothing below 2 %, everything from 20 %. */
function sizes(lostPercent: number): { readonly sourceFollows: number; readonly valveSuffers: number } {
  const share = (from: number, to: number) => Math.min(1, Math.max(0, (lostPercent - from) / (to - from)));
  return { sourceFollows: 0.97 * share(1, 8), valveSuffers: share(2, 30) };
}

interface Suffers {
  readonly total: readonly Piece[];
  readonly valveSuffers: number;
}

/** The stem goes where the signal that is left sends it, or stands where hardly any is. */
function standsOffBy(
  v: ValveFacts,
  { total, stuck }: { readonly total: Suffers['total']; readonly stuck: number },
) {
  const sign = signalLost(v).leans === 'less open' ? 1 : -1;
  return {
    pieces: total.map(([share, low, high]) => piece(share * (1 - stuck), [sign * low, sign * high])),
    words: { [signalLost(v).stays]: stuck },
  };
}

function stemSuffers(v: ValveFacts, of: Suffers): Shows {
  return {
    travelAgainstOutput: standsOffBy(v, { ...of, stuck: 0.6 * of.valveSuffers }),
    smallStep: { 'no move': of.valveSuffers * 0.7, slow: 0.3 * Math.min(1, 3 * of.valveSuffers) },
    strokeByController: {
      [signalFull(v).short]: 0.75 * Math.min(1, 2 * of.valveSuffers) * (1 - 0.6 * of.valveSuffers),
      'does not move': 0.6 * of.valveSuffers,
    },
    airAtTravel: { 'does not build': 0.9 * of.valveSuffers },
    leavesSeatAt: { never: 0.65 * of.valveSuffers },
  };
}

/** The leak is before the positioner: it moves to a lower signal, as asked. */
function positionerStarved(v: ValveFacts, { total, valveSuffers: suffers }: Suffers): Shows {
  return {
    travelAgainstOutput: standsOffBy(v, { total, stuck: 0.35 * suffers }),
    smallStep: { slow: 0.35 * suffers, 'no move': 0.2 * suffers },
    strokeByController: { [signalFull(v).short]: 0.8 * suffers },
  };
}

/** Behind a positioner: travel agrees, the positioner works for it, and only air and speed tell. */
function hiddenLeak(v: ValveFacts, id: LeakGrade): Shows {
  const { stays, leans, output } = signalLost(v);
  const cannot = { small: 0, medium: 0.06, large: 0.5 }[id];
  return {
    travelAgainstOutput: { [leans]: 0.6 * cannot, [stays]: 0.35 * cannot },
    controllerOutput: { [output]: cannot },
    trend: { sluggish: { small: 0.02, medium: 0.3, large: 0.3 }[id], 'sudden change': 0.5 * cannot },
    smallStep: { slow: { small: 0.03, medium: 0.35, large: 0.5 }[id], 'no move': 0.5 * cannot },
    strokeByController: {
      slow: { small: 0.02, medium: 0.3, large: 0.35 }[id],
      [signalFull(v).short]: 0.7 * cannot,
      'does not move': 0.25 * cannot,
    },
    strokeOnTestAir: { slow: { small: 0.02, medium: 0.3, large: 0.4 }[id], [signalFull(v).short]: cannot },
    airAtTravel: { 'does not build': 0.85 * cannot },
    outputGauge: { full: 0.8 * cannot, slow: { small: 0.02, medium: 0.3, large: 0.35 }[id] },
    positionerExhaust: { blows: 0.02, nothing: { small: 0.02, medium: 0.15, large: 0.4 }[id] },
    flapperAgainstGauges: { 'covered, low': 0.8 * cannot },
    supplyDroop: { large: { small: 0.02, medium: 0.25, large: 0.65 }[id] },
    listenExhaust: LISTEN[id],
    leavesSeatAt: { never: 0.6 * cannot },
    blockActuatorSide: { pieces: decay(v, holesOf(id)) },
  };
}

const LISTEN = {
  small: { loud: 0.18 },
  medium: { loud: 0.5, 'no bleed': 0.05 },
  large: { loud: 0.78, 'no bleed': 0.08 },
} as const;

function trendOf(id: LeakGrade): Readonly<Record<string, number>> {
  if (id === 'small') return {};
  return id === 'medium'
    ? { offset: 0.4, sluggish: 0.15, 'sudden change': 0.05 }
    : { 'sudden change': 0.6, offset: 0.15, sluggish: 0.05 };
}

/** Everything lost within the watch, of a minute or of a third of it, in percent a minute. */
const SEEN_FROM = 90;
const SEEN_AT_MOST = 310;

function decay(v: ValveFacts, holes: readonly Holes[]): readonly Piece[] {
  const { effectiveAreaM2, travelM, benchSetLowPa, benchSetHighPa } = v.numbers;
  const volumeM3 = effectiveAreaM2 * (DEAD_STROKE_M + travelM / 2);
  const gaugePa = Math.max(2e4, (benchSetLowPa + benchSetHighPa) / 2);
  const of = (holeM: number) => decayPercentPerMinute({ holeM, volumeM3, gaugePa });
  // A fast fall is over before the watch ends: then its share a minute says how long it was watched.
  const seen = (share: number) => Math.min(SEEN_AT_MOST, share);
  const share = 1 / holes.length;
  return holes.map(({ lowM, highM }) =>
    of(highM) > SEEN_FROM
      ? piece(share, [Math.min(SEEN_FROM, of(lowM)), SEEN_AT_MOST])
      : piece(share, [seen(of(lowM)), seen(of(highM))]),
  );
}

function piece(share: number, [one, two]: readonly [number, number]): Piece {
  return [share, Math.min(one, two), Math.max(one, two)];
}

function meanOf(pieces: readonly Piece[]): number {
  return pieces.reduce((sum, [share, low, high]) => sum - (share * (low + high)) / 2, 0);
}
