import { group, letters, shape } from './svg.ts';

export interface ChartWay {
  readonly label: string;
  /** Number of the step that it leads to. */
  readonly to: number;
}

export interface ChartBox {
  readonly number: number;
  readonly title: string;
  readonly kind: 'step' | 'hold' | 'end';
  readonly ways: readonly ChartWay[];
  /** Number of the step that making safe leads to; null for an end. */
  readonly makeSafe: number | null;
}

export interface Chart {
  readonly boxes: readonly ChartBox[];
  readonly sentence: string;
}

const BOX_WIDTH = 470;
const LETTERS_A_LINE = 46;
const TITLE_LINE = 20;
const WAY_LINE = 17;
const PADDING = 10;
const GAP = 16;
const LANE = 11;

interface Placed extends ChartBox {
  readonly top: number;
  readonly height: number;
  readonly titleLines: readonly string[];
}

/**
 * Steps of one phase as boxes from top to bottom, each with its ways by number. A way to the next box is an arrow down,
 * one to another box of the phase runs in a lane at the right; ways that leave the phase are numbers alone.
 */
export function statechart({ boxes, sentence }: Chart): string {
  const placed = place(boxes);
  const lanes = laneWays(placed);
  const laneCount = Math.max(0, ...lanes.map(({ lane }) => lane + 1));
  const width = BOX_WIDTH + 24 + laneCount * LANE;
  const last = placed.at(-1);
  const height = last === undefined ? 0 : last.top + last.height + 2;
  return group(
    {
      is: 'svg',
      viewBox: `0 0 ${width} ${height}`,
      role: 'img',
      'aria-label': sentence,
      class: 'statechart',
    },
    [
      ...lanes.map(drawLane),
      ...placed.map(drawBox),
      ...placed.slice(0, -1).flatMap((box, at) => {
        const next = placed[at + 1];
        return next !== undefined && box.ways.some(({ to }) => to === next.number)
          ? [arrowDown(box, next)]
          : [];
      }),
    ],
  );
}

function place(boxes: readonly ChartBox[]): readonly Placed[] {
  let top = 1;
  return boxes.map((box) => {
    const titleLines = wrap(box.title);
    const wayCount = box.ways.length + (box.makeSafe === null ? 0 : 1);
    const height = 2 * PADDING + titleLines.length * TITLE_LINE + wayCount * WAY_LINE;
    const placed = { ...box, top, height, titleLines };
    top += height + GAP;
    return placed;
  });
}

function wrap(text: string): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && `${last} ${word}`.length <= LETTERS_A_LINE)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

interface LaneWay {
  readonly fromY: number;
  readonly toY: number;
  readonly lane: number;
}

/** Ways within the phase that skip a box or go back, each in the nearest lane that is free beside it. */
function laneWays(placed: readonly Placed[]): readonly LaneWay[] {
  const byNumber = new Map(placed.map((box, at) => [box.number, { box, at }]));
  const wanted = placed.flatMap((box, at) =>
    box.ways.flatMap(({ to }, index) => {
      const target = byNumber.get(to);
      if (target === undefined || target.at === at + 1) return [];
      return [{ fromY: wayY(box, index), toY: target.box.top + 14 }];
    }),
  );
  const taken: { readonly from: number; readonly to: number }[][] = [];
  return wanted
    .toSorted((one, other) => Math.abs(one.toY - one.fromY) - Math.abs(other.toY - other.fromY))
    .map((way) => {
      const span = { from: Math.min(way.fromY, way.toY) - 4, to: Math.max(way.fromY, way.toY) + 4 };
      const free = taken.findIndex((spans) => spans.every((one) => one.to < span.from || one.from > span.to));
      const lane = free === -1 ? taken.length : free;
      taken[lane] = [...(taken[lane] ?? []), span];
      return { ...way, lane };
    });
}

function wayY({ top, titleLines }: Placed, index: number): number {
  return top + PADDING + titleLines.length * TITLE_LINE + index * WAY_LINE + 9;
}

function drawBox(box: Placed): string {
  const { top, height, titleLines, number, ways, makeSafe, kind } = box;
  const isHold = kind === 'hold';
  const ends = ways.map(({ label, to }, index) =>
    letters({ x: 52, y: wayY(box, index) + 4, class: 'statechart__way' }, `${label}: ${to}`),
  );
  const stop =
    makeSafe === null
      ? []
      : [
          letters(
            { x: 52, y: wayY(box, ways.length) + 4, class: 'statechart__safe' },
            `make safe: ${makeSafe}`,
          ),
        ];
  return group({}, [
    shape('rect', {
      x: 1,
      y: top,
      width: BOX_WIDTH,
      height,
      'stroke-width': isHold ? 3 : 1.5,
      rx: kind === 'end' ? 14 : 0,
      class: 'ink-line sheet-ground',
    }),
    shape('rect', { x: 1, y: top, width: 40, height, class: isHold ? 'ink-fill' : 'tint-fill' }),
    letters(
      {
        x: 21,
        y: top + 25,
        'text-anchor': 'middle',
        class: isHold ? 'statechart__number sheet-fill' : 'statechart__number',
      },
      String(number),
    ),
    ...titleLines.map((line, index) =>
      letters({ x: 52, y: top + PADDING + 14 + index * TITLE_LINE, class: 'statechart__title' }, line),
    ),
    ...ends,
    ...stop,
  ]);
}

function drawLane({ fromY, toY, lane }: LaneWay): string {
  const right = BOX_WIDTH + 14 + lane * LANE;
  const edge = BOX_WIDTH + 1;
  return group({}, [
    shape('path', {
      d: `M${edge} ${fromY}H${right}V${toY}H${edge + 7}`,
      'stroke-width': 1.25,
      class: 'ink2-line',
    }),
    shape('path', { d: `M${edge} ${toY}l8 -4v8z`, class: 'ink2-fill' }),
  ]);
}

function arrowDown(box: Placed, next: Placed): string {
  const y = box.top + box.height;
  return group({}, [
    shape('path', { d: `M21 ${y}V${next.top - 6}`, 'stroke-width': 2, class: 'ink-line' }),
    shape('path', { d: `M21 ${next.top}l-5 -9h10z`, class: 'ink-fill' }),
  ]);
}
