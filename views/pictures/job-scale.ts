import { isLanguage } from '../language/language.ts';
import { textIn } from '../language/speak.ts';
import { group, hatchPattern, letters, shape } from './svg.ts';

export interface ScaleTick {
  readonly state: 'done' | 'current' | 'next';
  /** Name of the phase that begins with this tick. */
  readonly phase?: string;
  /** Short name of a hold, for example `H1`. */
  readonly hold?: string;
}

export interface JobScale {
  readonly ticks: readonly ScaleTick[];
  /** Unique on the page. */
  readonly id?: string;
  /** In which its words are read: they are put in as the page leaves, and their room is kept here. */
  readonly lang?: string;
}

const LETTER_PX = 7;
const NARROW_PX = 840;
const WIDE_PX = 1120;
/** On a phone the name of the phase stands alone, and may have to end where it would else begin. */
const PHONE_PX = 270;

interface Label {
  readonly at: number;
  readonly text: string;
  readonly widthPx: number;
  readonly now: boolean;
}

function labelsOf(ticks: readonly ScaleTick[], lang: string): Label[] {
  const say = textIn(isLanguage(lang) ? lang : 'en');
  const current = ticks.findIndex((tick) => tick.state === 'current');
  const starts = ticks.flatMap((tick, at) => ((tick.hold ?? tick.phase) ? [at] : []));
  const now = starts.filter((at) => at <= current).at(-1);
  return starts.map((at) => {
    const text = ticks[at]?.hold ?? ticks[at]?.phase ?? '';
    return { at, text, widthPx: say(text).length * LETTER_PX + 6, now: at === now };
  });
}

/** The labels that do not run into each other where the scale is `widthPx` wide; the current one always stands. */
export function labelsThatFit(
  ticks: readonly ScaleTick[],
  { widthPx, lang = 'en' }: { readonly widthPx: number; readonly lang?: string },
): Label[] {
  const kept: Label[] = [];
  const start = (label: Label) => (label.at / ticks.length) * widthPx;
  const end = (label: Label) => start(label) + label.widthPx;
  for (const label of labelsOf(ticks, lang)) {
    const last = kept.at(-1);
    const overlaps = last !== undefined && end(last) > start(label);
    if (overlaps && !label.now) continue;
    if (overlaps) kept.pop();
    kept.push(label);
  }
  return kept.filter((label) => label.now || end(label) <= widthPx);
}

/** Lines straight down at some ticks, as one path. */
function linesDown(at: readonly number[], [from, to]: readonly [number, number]): string {
  return at.map((tick) => `M${tick} ${from}V${to}`).join('');
}

/** Everything that is drawn by the tick: one tick wide a step, stretched to the width there is while lines keep theirs. */
function tickPieces(ticks: readonly ScaleTick[], hatch: string): string {
  const all = ticks.map((tick, at) => ({ ...tick, at, taller: (tick.phase ?? tick.hold) !== undefined }));
  const at = (wanted: (tick: (typeof all)[number]) => boolean) => all.filter(wanted).map((tick) => tick.at);
  const done = at(({ state }) => state === 'done');
  const line = (d: string, width: number, name = 'ink-line') =>
    d === ''
      ? ''
      : shape('path', { d, 'stroke-width': width, 'vector-effect': 'non-scaling-stroke', class: name });
  const holds = at(({ hold }) => hold !== undefined);
  return (
    group(
      {
        is: 'svg',
        width: '100%',
        height: 44,
        viewBox: `0 0 ${ticks.length} 44`,
        preserveAspectRatio: 'none',
      },
      [
        done.length === 0
          ? ''
          : shape('path', { d: done.map((from) => `M${from} 24h1v10h-1z`).join(''), class: 'ink-fill' }),
        line(
          linesDown(
            done.filter((tick) => tick > 0),
            [24, 34],
          ),
          1,
          'sheet-line',
        ),
        line(
          linesDown(
            at(({ state, taller }) => state !== 'done' && !taller),
            [26, 34],
          ),
          1,
        ),
        line(
          linesDown(
            at(({ state, taller }) => state !== 'done' && taller),
            [22, 40],
          ) +
            linesDown(
              at(({ state, taller }) => state === 'done' && taller),
              [26, 40],
            ),
          1.6,
        ),
        line(
          linesDown(
            holds.flatMap((from) => [from, from + 1]),
            [20, 42],
          ),
          2.6,
        ),
      ],
    ) + currentTick(ticks, hatch)
  );
}

/** Hatched where the work is; not stretched, so that the hatching stays at its angle. */
function currentTick(ticks: readonly ScaleTick[], hatch: string): string {
  const at = ticks.findIndex(({ state }) => state === 'current');
  const percent = (of: number) => `${Math.round((of / ticks.length) * 1e5) / 1000}%`;
  const box = { x: percent(at), y: 24, width: percent(1), height: 10 };
  return at < 0
    ? ''
    : shape('rect', { ...box, fill: `url(#${hatch})`, 'stroke-width': 1, class: 'scale-now' });
}

function isLate({ at, widthPx }: Label, ticks: readonly ScaleTick[]): boolean {
  return (at / ticks.length) * PHONE_PX + widthPx > PHONE_PX;
}

/**
 * The job as a travel scale: a tick a step, taller at a phase, double bars at a hold, black where done,
 * hatched where the work is. The line beside it says the same in words, so it is hidden from readers.
 */
export function jobScale({ ticks, id = 'scale', lang = 'en' }: JobScale): string {
  const hatch = `${id}-hatch`;
  const narrow = new Set(labelsThatFit(ticks, { widthPx: NARROW_PX, lang }).map((label) => label.at));
  const labels = labelsThatFit(ticks, { widthPx: WIDE_PX, lang }).map((label) =>
    letters(
      {
        x: `${Math.round((label.at / ticks.length) * 1e5) / 1000}%`,
        dx: 3,
        y: 17,
        class: `scale-label${label.now ? ' scale-label--now' : ''}${narrow.has(label.at) ? '' : ' scale-label--roomy'}${isLate(label, ticks) ? ' scale-label--late' : ''}`,
      },
      label.text,
    ),
  );
  return group({ is: 'svg', width: '100%', height: 44, 'aria-hidden': 'true', class: 'scale' }, [
    group({ is: 'defs' }, [
      hatchPattern({ id: hatch, every: 5, degrees: 45, width: 3.4, class: 'ink-line' }),
    ]),
    tickPieces(ticks, hatch),
    shape('line', { x1: 0, x2: '100%', y1: 34, y2: 34, 'stroke-width': 1, class: 'ink-line' }),
    shape('line', { x1: '100%', x2: '100%', y1: 24, y2: 40, 'stroke-width': 1.6, class: 'ink-line' }),
    ...labels,
  ]);
}

/** How long somebody has waited, on a scale of 0 to 60 minutes. The figure above it says the same. */
export function waitScale(minutes: number): string {
  const width = 138;
  const filled = (Math.min(60, Math.max(0, minutes)) / 60) * width;
  const ticks = [0, 15, 30, 45, 60].map((at) => {
    const x = 1 + (at / 60) * width;
    return `M${x} ${at % 60 === 0 ? 1 : 5}V13`;
  });
  return group(
    { is: 'svg', width: width + 2, height: 14, viewBox: `0 0 ${width + 2} 14`, 'aria-hidden': 'true' },
    [
      shape('rect', { x: 1, y: 2, width: filled, height: 10, class: 'ink-fill' }),
      shape('path', { d: `${ticks.join('')}M1 13H${width + 1}`, 'stroke-width': 1.2, class: 'edge-line' }),
    ],
  );
}
