import { group, letters, shape } from './svg.ts';

/** What the drawing says, read out in its place. */
export const RELAY_SENTENCE =
  'A relay in section. Supply air passes the restriction on its way to the nozzle; the clean-out plunger stands in line with the restriction, its wire just above the hole. The flapper lies over the nozzle. The gauge on the output of the relay is the proof.';

const WIDTH = 372;
const TOP = 10;
const HEIGHT = 292;

const LABELS: readonly (readonly [text: string, x: number, y: number, bold?: true])[] = [
  ['clean-out plunger', 152, 30, true],
  ['supply', 14, 104],
  ['restriction', 14, 156, true],
  ['flapper', 214, 106],
  ['nozzle', 286, 152],
  ['relay', 178, 254],
  ['gauge on the output:', 222, 214],
  ['the proof', 294, 286, true],
];

/** Walls of the passages, each as one line. */
const WALLS: readonly string[] = [
  // Supply into the upper chamber, its wall up to the plunger.
  'M14 112H112V72H124',
  'M14 132H112V140H126V164H112V200H166V232',
  // The other side, down to the passage of the nozzle.
  'M136 72H148V140H134V164H148V180H252V140L264 124',
  'M186 232V200H280V140L268 124',
];

/** A relay of a pneumatic positioner in section: where plunger, restriction, nozzle and flapper are, and which gauge answers. */
export function relay({ sentence }: { readonly sentence: string }): string {
  return group(
    {
      is: 'svg',
      viewBox: `0 ${TOP} ${WIDTH} ${HEIGHT - TOP}`,
      role: 'img',
      'aria-label': sentence,
      class: 'detail',
    },
    [
      ...WALLS.map((d) => shape('path', { d, 'stroke-width': 2, class: 'ink-line' })),
      ...plunger(),
      ...flapper(),
      ...relayAndGauge(),
      // From the word to the narrow place.
      shape('path', { d: 'M92 152H124', 'stroke-width': 1, class: 'edge-line' }),
      ...LABELS.map(([text, x, y, bold]) =>
        letters({ x, y, class: `t14 ink-fill${bold ? ' bold' : ''}` }, text),
      ),
    ],
  );
}

/** Button, spring, stem and the wire that goes through the restriction. */
function plunger(): readonly string[] {
  const coils = [40, 46, 52, 58].map((y) => `M118 ${y}L142 ${y + 6}`).join('');
  return [
    shape('rect', { x: 116, y: 20, width: 28, height: 14, 'stroke-width': 2, class: 'ink-line ink-fill' }),
    shape('path', { d: coils, 'stroke-width': 1.5, class: 'ink-line' }),
    shape('path', { d: 'M130 34V104', 'stroke-width': 4, class: 'ink-line' }),
    shape('path', { d: 'M130 104V136', 'stroke-width': 1.5, class: 'ink-line' }),
    shape('path', { d: 'M104 16V40M99 32L104 41L109 32', 'stroke-width': 1.5, class: 'edge-line' }),
  ];
}

function flapper(): readonly string[] {
  return [
    shape('path', { d: 'M214 116H332', 'stroke-width': 4, class: 'ink-line' }),
    shape('circle', { cx: 336, cy: 116, r: 5, 'stroke-width': 2, class: 'ink-line sheet-fill' }),
  ];
}

function relayAndGauge(): readonly string[] {
  return [
    shape('rect', { x: 152, y: 232, width: 84, height: 36, 'stroke-width': 2, class: 'ink-line' }),
    shape('path', { d: 'M236 250H290', 'stroke-width': 2, class: 'ink-line' }),
    shape('circle', { cx: 310, cy: 250, r: 20, 'stroke-width': 2, class: 'ink-line' }),
    shape('path', { d: 'M310 250L322 238', 'stroke-width': 2, class: 'ink-line' }),
  ];
}
