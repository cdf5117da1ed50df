import { group, letters, shape } from '../svg.ts';
import type { Cock, Filling, ValveSection } from './model.ts';

/** Screen dots: the valve stands in the middle of a sheet 498 wide, its pipe 416 down. */
export const SHEET = { width: 498, height: 584, centreX: 249, pipeY: 416, scale: 0.9 } as const;
export const BYPASS_Y = 500;
export const COCK_X = { supply: 34, inlet: 58, outlet: 440 } as const;
const DEVICE_X = 75;
const END_X = 101;
/** A line ends at the flank of a cock, so that nothing live shows behind a shut one. */
const NECK = 10;

/** Height of the signal line: it enters the lower case where air lifts the stem, the upper one where it pushes. */
export function signalY(valve: Pick<ValveSection, 'airMovesStem'>): number {
  return valve.airMovesStem === 'up' ? 173 : 57;
}

/** A line with what it holds: live wide with a dotted core, held with a dashed core, safe plain. */
function pipe(d: string, filling: Filling): string {
  if (filling === 'absent') return '';
  if (filling === 'safe') return shape('path', { d, 'stroke-width': 2.4, class: 'ink-line' });
  return (
    shape('path', { d, 'stroke-width': 7, class: 'live-line' }) +
    shape('path', {
      d,
      'stroke-width': 2.2,
      'stroke-dasharray': filling === 'live' ? '2 4' : '7 5',
      class: 'onlive-line',
    })
  );
}

function bowTie(at: { x: number; y: number; turned?: boolean }, shut: boolean): string {
  const { x, y } = at;
  const d = at.turned
    ? `M${x - 5} ${y - 9}H${x + 5}L${x - 5} ${y + 9}H${x + 5}Z`
    : `M${x - 12} ${y - 8}L${x + 12} ${y + 8}V${y - 8}L${x - 12} ${y + 8}Z`;
  return shape('path', { d, 'stroke-width': 1.5, class: shut ? 'ink-line ink-fill' : 'ink-line sheet-fill' });
}

function cock(at: { x: number; y: number; lock: 'above' | 'below' }, { shut, lock }: Cock): string {
  return bowTie(at, shut) + (lock === undefined ? '' : padlockAt(at, lock));
}

/** The lock with its number, hanging at the cock that it holds. */
function padlockAt(
  { x, y, lock }: { x: number; y: number; lock: 'above' | 'below' },
  number: string,
): string {
  const top = lock === 'above' ? y - 25 : y + 12;
  const bow =
    lock === 'above'
      ? `M${x - 8} ${top}V${top - 4}a8 8 0 0 1 16 0V${top}`
      : `M${x - 8} ${top}V${y - 2}M${x + 8} ${top}V${y - 2}`;
  return group({}, [
    shape('path', { d: bow, 'stroke-width': 3, class: 'ink-line' }),
    shape('rect', { x: x - 13, y: top, width: 26, height: 17, rx: 1.5, class: 'ink-fill' }),
    letters({ x, y: top + 13.5, 'text-anchor': 'middle', class: 'lock-number bold sheet-fill' }, number),
  ]);
}

function drain(x: number, valve: { cock: Cock | null; filling: Filling }): string {
  if (valve.cock === null) return '';
  const y = SHEET.pipeY;
  return (
    pipe(`M${x} ${y}V${y + 20}`, valve.filling) +
    shape('path', {
      d: `M${x} ${y + 38}V${y + 46}M${x - 5} ${y + 46}H${x + 5}`,
      'stroke-width': 1.5,
      class: 'ink-line',
    }) +
    bowTie({ x, y: y + 29, turned: true }, valve.cock.shut)
  );
}

/** Plant lines on both sides, block valves, drains and the bypass loop. Beyond its locks the plant stays live. */
export function processLines(valve: ValveSection): string {
  const y = SHEET.pipeY;
  const plant = (filling: Filling, at: Cock | null): Filling =>
    at === null || filling === 'absent' ? filling : 'live';
  const loop = (x: number) => `M${x} ${y}V${BYPASS_Y}H${SHEET.centreX + (x < SHEET.centreX ? -NECK : NECK)}`;
  const sides = [
    pipe(`M0 ${y}H${valve.inletCock ? COCK_X.inlet - NECK : 146}`, plant(valve.inlet, valve.inletCock)),
    pipe(
      `M${SHEET.width} ${y}H${valve.outletCock ? COCK_X.outlet + NECK : 352}`,
      plant(valve.outlet, valve.outletCock),
    ),
    valve.inletCock ? pipe(`M${COCK_X.inlet + NECK} ${y}H146`, valve.inlet) : '',
    valve.outletCock ? pipe(`M${COCK_X.outlet - NECK} ${y}H352`, valve.outlet) : '',
  ];
  const bypass = valve.bypass
    ? [
        pipe(loop(22), plant(valve.inlet, valve.inletCock)),
        pipe(loop(476), plant(valve.outlet, valve.outletCock)),
        cock({ x: SHEET.centreX, y: BYPASS_Y, lock: 'below' }, { shut: valve.bypass.shut }),
      ]
    : [];
  return group({}, [
    ...sides,
    ...bypass,
    drain(108, { cock: valve.inletDrain, filling: valve.inlet }),
    drain(390, { cock: valve.outletDrain, filling: valve.outlet }),
    valve.inletCock ? cock({ x: COCK_X.inlet, y, lock: 'below' }, valve.inletCock) : '',
    valve.outletCock ? cock({ x: COCK_X.outlet, y, lock: 'below' }, valve.outletCock) : '',
  ]);
}

function gauge(x: number, lineY: number): string {
  return (
    pipe(`M${x} ${lineY}V${lineY - 15}`, 'held') +
    shape('circle', { cx: x, cy: lineY - 28, r: 13, 'stroke-width': 1.6, class: 'ink-line sheet-ground' }) +
    shape('path', {
      d: `M${x - 2} ${lineY - 23}L${x + 6} ${lineY - 35}`,
      'stroke-width': 1.6,
      class: 'ink-line',
    })
  );
}

/** Supply with its cock, the box on the signal line, and how that line ends at the case. */
export function airLines(valve: ValveSection): string {
  const y = signalY(valve);
  const joined = valve.signalLine === 'joined';
  const caseX = valve.actuatorKind === 'piston' ? 177 : valve.airMovesStem === 'up' ? 184 : 180;
  const beyond: Filling = valve.supplyCock === null || valve.supply === 'absent' ? valve.supply : 'live';
  const box = valve.device === '' ? 0 : Math.max(30, valve.device.length * 10 + 6);
  const line = joined ? valve.signal : valve.supply;
  return group({}, [
    pipe(`M0 ${y}H${COCK_X.supply - NECK}`, beyond),
    pipe(`M${COCK_X.supply + NECK} ${y}H${DEVICE_X}`, valve.supply),
    pipe(`M${DEVICE_X} ${y}H${joined ? caseX : END_X}`, line),
    joined ? '' : pipe(`M${END_X + 13} ${y}H${caseX}`, valve.signal),
    joined
      ? ''
      : shape('path', {
          d: `M${END_X} ${y - 7}V${y + 7}M${END_X + 12} ${y - 7}V${y + 7}`,
          'stroke-width': 4,
          class: 'ink-line',
        }),
    valve.signalLine === 'test gauge' ? gauge(124, y) : '',
    valve.supplyCock ? cock({ x: COCK_X.supply, y, lock: 'above' }, valve.supplyCock) : '',
    box === 0
      ? ''
      : shape('rect', {
          x: DEVICE_X - box / 2,
          y: y - 13,
          width: box,
          height: 26,
          'stroke-width': 1.3,
          class: 'ink-line sheet-ground',
        }),
    letters({ x: DEVICE_X, y: y + 5.5, 'text-anchor': 'middle', class: 't16 ink2-fill' }, valve.device),
  ]);
}
