import { group, round, shape } from '../svg.ts';
import { fillingClass } from './fillings.ts';
import { STROKE_U, stemUpFraction, type ValveSection } from './model.ts';
import { spring } from './spring.ts';

/** Height of the case rim, above the pipe. */
const RIM = { up: 306, down: 372 } as const;
const CASE_LINE = { 'stroke-width': 4, 'stroke-linejoin': 'round' };
const cut = { 'stroke-width': 1.6 };

/** How a half of the case runs from the left rim to the right: `side` is +1 for the half above the rim. */
function half(valve: ValveSection, side: 1 | -1): string {
  const y = RIM[valve.airMovesStem];
  const at = (height: number) => y + side * height;
  if (valve.actuatorKind === 'piston') return `M-84 ${at(0)}H-80V${at(36)}H80V${at(0)}H84`;
  return `M-92 ${at(0)}C-82 ${at(8)} -80 ${at(36)} -62 ${at(36)}H62C80 ${at(36)} 82 ${at(8)} 92 ${at(0)}`;
}

/** The diaphragm from rim to rim; the fold hangs to the side without pressure. */
function diaphragm(valve: ValveSection): string {
  const rim = RIM[valve.airMovesStem];
  const fraction = stemUpFraction(valve);
  const away = valve.airMovesStem === 'up' ? 1 : -1;
  const plateY = rim - away * 19 + (valve.airMovesStem === 'up' ? fraction : fraction - 1) * STROKE_U;
  const near = valve.airMovesStem === 'up' ? fraction : 1 - fraction;
  const foldY = (rim + plateY) / 2 + away * 15;
  const foldX = 83 - 6 * near;
  const leg = (side: 1 | -1) =>
    side === -1
      ? `C-89 ${rim} ${-foldX - 4} ${round(foldY)} ${-foldX} ${round(foldY)}C${-foldX + 4} ${round(foldY)} -72 ${round(plateY + away * 8)} -64 ${round(plateY)}`
      : `C72 ${round(plateY + away * 8)} ${foldX - 4} ${round(foldY)} ${foldX} ${round(foldY)}C${foldX + 4} ${round(foldY)} 89 ${rim} 92 ${rim}`;
  return `M-92 ${rim}${leg(-1)}H64${leg(1)}`;
}

/** The lower face (air up) or upper face (air down) of the piston, as a line across the cylinder. */
function pistonFace(valve: ValveSection): string {
  return `M-80 ${plateFaceY(valve)}H80`;
}

function plateFaceY(valve: ValveSection): number {
  const fraction = stemUpFraction(valve);
  return valve.airMovesStem === 'up' ? 287 + STROKE_U * fraction : 363 + STROKE_U * fraction;
}

/** The space that the air fills, between the diaphragm or piston and its half of the case. */
function chamber(valve: ValveSection): string {
  const side = valve.airMovesStem === 'up' ? -1 : 1;
  const rim = RIM[valve.airMovesStem];
  const back = `C82 ${rim + side * 8} 80 ${rim + side * 36} 62 ${rim + side * 36}H-62C-80 ${rim + side * 36} -82 ${rim + side * 8} -92 ${rim}Z`;
  const d =
    valve.actuatorKind === 'piston'
      ? `${pistonFace(valve)}V${rim + side * 36}H-80Z`
      : `${diaphragm(valve)}${back}`;
  const { fill, class: ground } = fillingClass(valve.id, valve.signal);
  return shape('path', { id: `${valve.id}-air`, d, fill, class: ground ? `${ground} moves` : 'moves' });
}

/** Plate or piston with its bolt, in the lowest place; moves with the stem. */
function plate(valve: ValveSection): string {
  const up = valve.airMovesStem === 'up';
  const wide = valve.actuatorKind === 'piston' ? 79 : 62;
  const d = up
    ? `M${-wide} 288H${wide}V293L${wide - 6} 297H${6 - wide}L${-wide} 293Z`
    : `M${-wide} 362H${wide}V357L${wide - 6} 353H${6 - wide}L${-wide} 357Z`;
  const seal = [-wide + 5, wide - 5].map((cx) =>
    shape('circle', { cx, cy: up ? 291 : 359, r: 2.2, class: 'ink-fill' }),
  );
  const head = shape('rect', {
    x: -9,
    y: up ? 297 : 363,
    width: 18,
    height: 9,
    ...cut,
    class: 'ink-line sheet-ground',
  });
  const stem = shape('rect', {
    x: -5.5,
    y: 226,
    width: 11,
    height: up ? 60 : 127,
    ...cut,
    class: 'ink-line sheet-ground',
  });
  const washer = up
    ? shape('rect', { x: -11, y: 282, width: 22, height: 4.5, ...cut, class: 'ink-line sheet-ground' })
    : '';
  return group({}, [
    stem,
    washer,
    shape('path', { d, class: 'sheet-fill' }),
    shape('path', { d, ...cut, fill: `url(#${valve.id}-metal)`, class: 'cut' }),
    ...(valve.actuatorKind === 'piston' ? seal : []),
    head,
  ]);
}

function rimBolts(valve: ValveSection): string[] {
  const rim = RIM[valve.airMovesStem];
  const boltX = valve.actuatorKind === 'piston' ? 88 : 98;
  return [-boltX, boltX].flatMap((x) => [
    shape('rect', { x: x - 6, y: rim - 3.5, width: 12, height: 7, class: 'ink-fill' }),
    shape('rect', {
      x: x - 5.2,
      y: rim + 3.5,
      width: 10.4,
      height: 6.5,
      'stroke-width': 1.5,
      class: 'ink-line sheet-ground',
    }),
    shape('rect', {
      x: x - 5.2,
      y: rim - 10,
      width: 10.4,
      height: 6.5,
      'stroke-width': 1.5,
      class: 'ink-line sheet-ground',
    }),
    shape('path', { d: `M${x} ${rim + 16}V${rim - 16}`, 'stroke-width': 0.8, class: 'edge-line' }),
  ]);
}

/** Barrel for the spring, with its adjuster where the spring is held by one. */
function barrel(valve: ValveSection): string[] {
  const up = valve.airMovesStem === 'up';
  const adjuster = valve.springHeldBy === 'adjuster' ? (up ? topAdjuster() : ringAdjuster()) : [];
  const wall = up
    ? 'M-40 342V424Q-40 432 -32 432H32Q40 432 40 424V342'
    : 'M-44 262L-40 266V336M44 262L40 266V336';
  return [shape('path', { d: wall, ...CASE_LINE, class: 'ink-line' }), ...adjuster];
}

function topAdjuster(): string[] {
  return [
    shape('rect', { x: -7, y: 422, width: 14, height: 24, ...cut, class: 'ink-line sheet-ground' }),
    shape('path', {
      d: 'M-7 425.5L-4 426.5M-7 428.5L-4 429.5M7 425.5L4 426.5M7 428.5L4 429.5',
      'stroke-width': 0.9,
      class: 'ink-line',
    }),
    shape('rect', { x: -13, y: 433.5, width: 26, height: 7, ...cut, class: 'ink-line sheet-ground' }),
    shape('path', { d: 'M-6 433.5V440.5M6 433.5V440.5', 'stroke-width': 0.9, class: 'ink-line' }),
  ];
}

function ringAdjuster(): string[] {
  return [-1, 1].flatMap((side) => [
    shape('rect', {
      x: side === 1 ? 5.5 : -14.5,
      y: 252,
      width: 9,
      height: 18,
      ...cut,
      class: 'ink-line sheet-ground',
    }),
    shape('path', {
      d: `M${side * 14.5} 256L${side * 11.5} 257M${side * 14.5} 260L${side * 11.5} 261M${side * 14.5} 264L${side * 11.5} 265`,
      'stroke-width': 0.9,
      class: 'ink-line',
    }),
    shape('rect', {
      x: side === 1 ? 5.5 : -20,
      y: 241,
      width: 14.5,
      height: 9,
      ...cut,
      class: 'ink-line sheet-ground',
    }),
  ]);
}

/** Both halves of the case without the openings that the barrel needs. */
function caseLines(valve: ValveSection): string[] {
  const up = valve.airMovesStem === 'up';
  const rim = RIM[valve.airMovesStem];
  const open = up ? rim + 36 : rim - 36;
  const springSide = half(valve, up ? 1 : -1).replace(/H(62|80)(?=[CV])/, `H-40M40 ${open}H$1`);
  const edges = valve.springHeldBy === 'no spring' ? half(valve, up ? 1 : -1) : springSide;
  const vent = up
    ? 'M66 343V354C66 364 82 364 82 354V347M70.5 342V353C70.5 358 77.5 358 77.5 353V347'
    : 'M71.5 338V325M77.5 336V325M71 334H78';
  return [
    shape('path', { d: vent, 'stroke-width': 1.4, class: 'ink-line' }),
    shape('path', { d: half(valve, up ? -1 : 1), ...CASE_LINE, class: 'ink-line' }),
    shape('path', { d: edges, ...CASE_LINE, class: 'ink-line' }),
    ...rimBolts(valve),
  ];
}

/** Where the stem goes through the lower case (air up): a bush, standing in the yoke. */
function bush(valve: ValveSection): string {
  const d = 'M-14 250H-5.5V274H-14ZM14 250H5.5V274H14Z';
  const hatched = shape('path', { d, ...cut, fill: `url(#${valve.id}-fine)`, class: 'cut' });
  return valve.airMovesStem === 'up' ? shape('path', { d, class: 'sheet-fill' }) + hatched : '';
}

export function actuator(valve: ValveSection, stemMove: string): string {
  const sprung = valve.springHeldBy !== 'no spring';
  const moving = group({ id: `${valve.id}-plate`, transform: stemMove, class: 'moves' }, [plate(valve)]);
  const flexing =
    valve.actuatorKind === 'piston'
      ? ''
      : shape('path', {
          id: `${valve.id}-diaphragm`,
          d: diaphragm(valve),
          'stroke-width': 3,
          class: 'ink-line moves',
        });
  return group({}, [
    chamber(valve),
    ...(sprung ? [spring(valve)] : []),
    moving,
    bush(valve),
    flexing,
    ...(sprung || valve.airMovesStem === 'down' ? barrel(valve) : []),
    ...caseLines(valve),
  ]);
}
