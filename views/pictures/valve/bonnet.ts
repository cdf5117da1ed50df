import { group, shape } from '../svg.ts';
import type { ValveSection } from './model.ts';

/** Bonnet, packing, yoke and travel scale: what stands still between body and case. */
const BONNET = 'M-52 64H-6.5V104H-12V162H-26V96C-26 86 -31 80 -40 80H-52Z';
const YOKE =
  'M-26 138H-40C-54 138 -61 152 -62 176L-66 244L-72 251V262H-14V250H-60L-54 240L-50 172C-49.5 158 -46 150 -38 150H-26Z';
const RINGS = [112, 119, 126, 133, 140];

const cut = { 'stroke-width': 1.6 };
const fine = { 'stroke-width': 0.9 };

function hatched(id: string, d: string, pattern: 'metal' | 'fine'): string {
  return (
    shape('path', { d, class: 'sheet-fill' }) +
    shape('path', { d, ...cut, fill: `url(#${id}-${pattern})`, class: 'cut' })
  );
}

/** One half of the packing box, right of the stem: spacer, five rings with their lips to the process, follower. */
function packing(): string[] {
  return [
    shape('rect', { x: 4.5, y: 64, width: 2, height: 40, class: 'ink2-fill' }),
    shape('rect', { x: 4.5, y: 104, width: 7.5, height: 8, ...cut, class: 'ink-line sheet-ground' }),
    shape('rect', { x: 4.5, y: 112, width: 7.5, height: 35, class: 'ink2-fill' }),
    ...RINGS.map((y) =>
      shape('path', {
        d: `M4.8 ${y + 1.2}L8.2 ${y + 4.4}L11.7 ${y + 1.2}`,
        'stroke-width': 1.1,
        class: 'sheet-line',
      }),
    ),
    shape('rect', { x: 4.5, y: 147, width: 6.5, height: 23, ...cut, class: 'ink-line sheet-ground' }),
    shape('rect', { x: 4.5, y: 170, width: 21.5, height: 7, ...cut, class: 'ink-line sheet-ground' }),
    shape('rect', { x: 17, y: 148, width: 4, height: 42, ...cut, class: 'ink-line sheet-ground' }),
    shape('rect', { x: 13.5, y: 177, width: 11, height: 7.5, ...cut, class: 'ink-line sheet-ground' }),
  ];
}

function stud(): string[] {
  return [
    shape('rect', { x: 43.4, y: 48, width: 5.2, height: 32, ...cut, class: 'ink-line tint-ground' }),
    shape('rect', { x: 43.4, y: 80, width: 5.2, height: 12.5, ...cut, class: 'ink-line sheet-ground' }),
    shape('rect', { x: 38.8, y: 80, width: 14.4, height: 9, ...cut, class: 'ink-line sheet-ground' }),
  ];
}

export function bonnet(valve: ValveSection): string {
  const half = [
    hatched(valve.id, BONNET, 'fine'),
    hatched(valve.id, YOKE, 'metal'),
    shape('rect', { x: -36, y: 128.5, width: 10, height: 9.5, ...cut, class: 'ink-line sheet-ground' }),
  ];
  return group({}, [
    ...half,
    group({ transform: 'scale(-1 1)' }, half),
    ...packing(),
    ...stud(),
    group({ transform: 'scale(-1 1)' }, [...packing(), ...stud()]),
    travelScale(),
  ]);
}

/** Scale on the right leg: a tick each quarter of the stroke. */
function travelScale(): string {
  const ticks = [0, 1, 2, 3, 4].map((at) => `M36.5 ${210 + 7 * at}H${at % 2 === 0 ? 46 : 42}`);
  return (
    shape('rect', {
      x: 36,
      y: 204,
      width: 14.5,
      height: 40,
      'stroke-width': 1.4,
      class: 'ink-line sheet-ground',
    }) + shape('path', { d: ticks.join(''), ...fine, class: 'ink-line' })
  );
}

/** Connector with its bolts, two lock nuts and the pointer: they move with the stem. */
export function connector(): string {
  const bolts = [-7.5, 7.5].flatMap((cx) =>
    [202, 218].map((cy) =>
      shape('circle', { cx, cy, r: 2.7, 'stroke-width': 1.6, class: 'ink-line sheet-ground' }),
    ),
  );
  return group({}, [
    shape('path', { d: 'M13 213.5H22L33.5 210L22 206.5H13Z', class: 'ink-fill' }),
    shape('rect', { x: -9, y: 180.8, width: 18, height: 6.4, ...cut, class: 'ink-line sheet-ground' }),
    shape('rect', { x: -9, y: 187.4, width: 18, height: 6.4, ...cut, class: 'ink-line sheet-ground' }),
    shape('rect', { x: -13, y: 194, width: 26, height: 32, ...cut, class: 'ink-line sheet-ground' }),
    ...bolts,
  ]);
}
