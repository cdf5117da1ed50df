import { group, hatchPattern, shape } from '../svg.ts';
import type { Filling } from './model.ts';

/** The patterns of one drawing: metal in section, live and held spaces. */
export function patterns(id: string): string {
  return group({ is: 'defs' }, [
    hatchPattern({ id: `${id}-metal`, every: 7, degrees: -45, width: 1, class: 'hatch-line' }),
    hatchPattern({ id: `${id}-fine`, every: 5, degrees: 45, width: 1, class: 'hatch-line' }),
    hatchPattern(
      { id: `${id}-held`, every: 7.5, degrees: -45, width: 5.6, class: 'live-line' },
      'sheet-fill',
    ),
    group({ is: 'pattern', id: `${id}-live`, width: 8, height: 8, patternUnits: 'userSpaceOnUse' }, [
      shape('rect', { width: 8, height: 8, class: 'livetint-fill' }),
      shape('circle', { cx: 2, cy: 2, r: 1.35, class: 'live-fill' }),
      shape('circle', { cx: 6, cy: 6, r: 1.35, class: 'live-fill' }),
    ]),
  ]);
}

/** How a space is filled: live dotted, held hatched, anything else the colour of the sheet. */
export function fillingClass(id: string, filling: Filling): { fill?: string; class?: string } {
  if (filling === 'live' || filling === 'held') return { fill: `url(#${id}-${filling})` };
  return { class: 'sheet-fill' };
}
