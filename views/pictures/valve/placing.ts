import { type EnergyTag, energyTagPiece, TAG_HEIGHT, TAG_WIDTH } from '../energy-tag.ts';
import { group, letters, shape } from '../svg.ts';
import type { ValveSection } from './model.ts';
import { BYPASS_Y, COCK_X, SHEET, signalY } from './piping.ts';

interface Place {
  readonly x: number;
  readonly y: number;
  readonly side: 'left' | 'right';
  /** Where the energy sits. */
  readonly dot?: { readonly x: number; readonly y: number } | undefined;
  /** Where its letter stands when there is no room for the tag. */
  readonly letter: { readonly x: number; readonly y: number };
}

/** Where each letter's tag hangs. The two actuators differ, because the case stands high or low beside them. */
function places(valve: ValveSection): Readonly<Record<string, Place>> {
  const line = signalY(valve);
  const up = valve.airMovesStem === 'up';
  const cockDot = { x: COCK_X.supply - 3, y: line + 8 };
  const sprung = valve.spring !== 'absent';
  const block = { y: SHEET.pipeY - 8 };
  const air: Record<string, Place> = up
    ? {
        A: { x: 4, y: 216, side: 'left', dot: cockDot, letter: { x: 36, y: line + 46 } },
        B: { x: 4, y: 34, side: 'right', dot: { x: 143, y: line }, letter: { x: 126, y: line + 46 } },
        C: {
          x: 326,
          y: 34,
          side: 'left',
          dot: sprung ? { x: 273, y: 90 } : undefined,
          letter: { x: 330, y: 58 },
        },
      }
    : {
        A: { x: 4, y: 128, side: 'left', dot: cockDot, letter: { x: 36, y: line + 46 } },
        B: { x: 326, y: 126, side: 'left', dot: { x: 300, y: 58 }, letter: { x: 376, y: 96 } },
        C: {
          x: 4,
          y: 210,
          side: 'right',
          dot: sprung ? { x: 226, y: 148 } : undefined,
          letter: { x: 168, y: 196 },
        },
      };
  return {
    ...air,
    D: { x: 4, y: 298, side: 'left', dot: { ...block, x: COCK_X.inlet - 7 }, letter: { x: 58, y: 362 } },
    E: { x: 326, y: 298, side: 'right', dot: { ...block, x: COCK_X.outlet + 7 }, letter: { x: 440, y: 362 } },
    F: { x: 290, y: 514, side: 'left', dot: { x: 256, y: BYPASS_Y + 7 }, letter: { x: 290, y: 536 } },
    G: { x: 4, y: 514, side: 'left', letter: { x: 100, y: 540 } },
  };
}

function string(place: Place): string {
  if (!place.dot) return '';
  const eyelet = {
    x: place.side === 'left' ? place.x + 11 : place.x + TAG_WIDTH - 11,
    y: place.y + TAG_HEIGHT / 2,
  };
  const { dot } = place;
  const bend = { x: (eyelet.x * 2 + dot.x) / 3, y: (eyelet.y + dot.y * 2) / 3 };
  return (
    shape('path', {
      d: `M${eyelet.x} ${eyelet.y}Q${bend.x} ${bend.y} ${dot.x} ${dot.y}`,
      'stroke-width': 1.2,
      class: 'ink-line',
    }) + shape('circle', { cx: dot.x, cy: dot.y, r: 3, class: 'ink-fill' })
  );
}

function hung(tag: EnergyTag, place: Place): string {
  return (
    string(place) +
    group({ transform: `translate(${place.x} ${place.y})` }, [energyTagPiece({ ...tag, side: place.side })])
  );
}

function lettered(tag: EnergyTag, { letter, dot }: Place): string {
  return group({}, [
    dot
      ? shape('path', {
          d: `M${letter.x} ${letter.y}L${dot.x} ${dot.y}`,
          'stroke-width': 1.2,
          class: 'ink-line',
        })
      : '',
    dot ? shape('circle', { cx: dot.x, cy: dot.y, r: 3, class: 'ink-fill' }) : '',
    shape('circle', {
      cx: letter.x,
      cy: letter.y,
      r: 14,
      'stroke-width': 1.5,
      class: 'ink-line sheet-ground',
    }),
    letters(
      { x: letter.x, y: letter.y + 6, 'text-anchor': 'middle', class: 't16 bold ink-fill' },
      tag.letter,
    ),
  ]);
}

/** Tags where there is room, letters in circles on a phone and in print; the style sheet shows one of the two. */
export function hangTags(valve: ValveSection): string {
  const known = places(valve);
  const placed = valve.tags.flatMap((tag) => {
    const place = known[tag.letter];
    return place ? [{ tag, place }] : [];
  });
  return (
    group(
      { class: 'valve-tags' },
      placed.map(({ tag, place }) => hung(tag, place)),
    ) +
    group(
      { class: 'valve-letters' },
      placed.map(({ tag, place }) => lettered(tag, place)),
    )
  );
}
