import { group, letters, round, shape } from './svg.ts';
import { actuator } from './valve/actuator.ts';
import { body, flowArrow, plug, stemTransform } from './valve/body.ts';
import { bonnet, connector } from './valve/bonnet.ts';
import { patterns } from './valve/fillings.ts';
import { STROKE_U, stemUpFraction, type ValveSection } from './valve/model.ts';
import { airLines, processLines, SHEET, signalY } from './valve/piping.ts';
import { hangTags } from './valve/placing.ts';

export type { Cock, Filling, SpringState, ValveSection } from './valve/model.ts';

/** The ends of the travel scale by name, and the travel as read. */
function scaleWords(valve: ValveSection): string {
  const y = (unit: number) => SHEET.pipeY - SHEET.scale * unit;
  const [top, bottom] =
    valve.plugCloses === 'down' ? [valve.words.open, valve.words.shut] : [valve.words.shut, valve.words.open];
  const lead = (unit: number) => `M${SHEET.centreX + 42} ${round(y(unit))}H319`;
  return group({ class: 'valve-words' }, [
    shape('path', { d: lead(238) + lead(210), 'stroke-width': 0.9, class: 'edge-line' }),
    letters({ x: 323, y: y(238) + 5, class: 't14 ink2-fill halo' }, top),
    letters({ x: 323, y: y(210) + 5, class: 't14 ink2-fill halo' }, bottom),
    letters({ x: 323, y: y(182) + 5, class: 't14 ink2-fill halo' }, valve.words.travel),
    letters({ x: 382, y: y(182) + 6, class: 't18 bold ink-fill halo' }, valve.words.travelValue),
  ]);
}

/** The lever that tells a positioner where the stem is, led round the tags. */
function lever(valve: ValveSection): string {
  if (!valve.positioner) return '';
  const pinY = SHEET.pipeY - SHEET.scale * (210 + STROKE_U * stemUpFraction(valve));
  const line = signalY(valve);
  const pivot = { x: 177, y: 206 };
  const link = `M75 ${line + 13}V${valve.airMovesStem === 'up' ? 200 : 120}H${pivot.x}V${pivot.y}`;
  return group({}, [
    shape('path', { d: link, 'stroke-width': 1.2, 'stroke-dasharray': '6 3', class: 'ink-line' }),
    shape('path', {
      id: `${valve.id}-lever`,
      d: `M${pivot.x} ${pivot.y}L234 ${round(pinY)}`,
      'stroke-width': 2.4,
      class: 'ink-line moves',
    }),
    shape('circle', { cx: pivot.x, cy: pivot.y, r: 3, 'stroke-width': 1.4, class: 'ink-line sheet-ground' }),
  ]);
}

/**
 * The valve in section, drawn from its sheet: which way the plug closes, which way air moves the stem, which
 * way the process flows, how far it is open, what each space holds, and each energy's tag where the energy sits.
 * All that moves with the stem moves 28 drawing units over the stroke, whatever the real travel.
 */
export function valveSection(valve: ValveSection): string {
  const move = stemTransform(valve);
  const moving = (name: string, children: string[]) =>
    group({ id: `${valve.id}-${name}`, transform: move, class: 'moves' }, children);
  const drawn = group(
    { transform: `translate(${SHEET.centreX} ${SHEET.pipeY}) scale(${SHEET.scale} -${SHEET.scale})` },
    [
      body(valve),
      moving('plug', [plug(valve)]),
      flowArrow(valve.flow),
      bonnet(valve),
      actuator(valve, move),
      moving('connector', [connector()]),
      shape('path', {
        d: 'M0 -84V456',
        'stroke-width': 0.8,
        'stroke-dasharray': '14 3 3 3',
        class: 'edge-line',
      }),
    ],
  );
  return group(
    {
      is: 'svg',
      viewBox: `0 0 ${SHEET.width} ${SHEET.height}`,
      preserveAspectRatio: 'xMidYMin slice',
      role: 'img',
      'aria-label': valve.sentence,
      class: 'valve',
    },
    [
      patterns(valve.id),
      processLines(valve),
      airLines(valve),
      drawn,
      lever(valve),
      scaleWords(valve),
      hangTags(valve),
    ],
  );
}
