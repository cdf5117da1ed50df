import { type EnergyState, stateWord, UNSAFE_STATES } from './marks.ts';
import { group, letters, round, shape } from './svg.ts';

export const TAG_WIDTH = 168;
export const TAG_HEIGHT = 68;

export interface EnergyTag {
  readonly letter: string;
  readonly name: string;
  readonly state: EnergyState;
  /** The state in the reader's language; blank: in English. */
  readonly word?: string;
  readonly value?: string;
  /** How it was shown, by whom and when; or what is still missing. */
  readonly proof?: string;
  /** The side with the eyelet and the cut corners. */
  readonly side?: 'left' | 'right';
}

const CUT = 12;
const ALARMING: readonly EnergyState[] = [...UNSAFE_STATES, 'held'];
const TO_PROVE: readonly EnergyState[] = ['to-prove', 'prove-again'];
const RECORDED: readonly EnergyState[] = ['absent', 'open', 'shut'];

function outline(side: 'left' | 'right'): string {
  return side === 'left'
    ? `M${CUT} 0H${TAG_WIDTH}V${TAG_HEIGHT}H${CUT}L0 ${TAG_HEIGHT - CUT}V${CUT}Z`
    : `M0 0H${TAG_WIDTH - CUT}L${TAG_WIDTH} ${CUT}V${TAG_HEIGHT - CUT}L${TAG_WIDTH - CUT} ${TAG_HEIGHT}H0Z`;
}

function border(state: EnergyState): { width: number; class: string; dashes?: string } {
  if (ALARMING.includes(state)) return { width: 3, class: 'live-line sheet-ground' };
  if (TO_PROVE.includes(state)) return { width: 1.8, class: 'ink-line sheet-ground', dashes: '6 4' };
  if (state === 'absent') return { width: 1.2, class: 'edge-line sheet-ground' };
  return { width: RECORDED.includes(state) ? 1.2 : 1.8, class: 'ink-line sheet-ground' };
}

/** Strokes at 45 degrees inside a box, cut at its edges, so that no pattern and no id is needed. */
function hatchedBox(box: { x: number; y: number; width: number; height: number; every: number }): string {
  const { x, y, width, height, every } = box;
  const strokes: string[] = [];
  for (let reach = every / 2; reach < width + height; reach += every) {
    const from = { x: Math.max(0, reach - height), y: Math.min(height, reach) };
    const to = { x: Math.min(width, reach), y: Math.max(0, reach - width) };
    strokes.push(`M${round(x + from.x)} ${round(y + from.y)}L${round(x + to.x)} ${round(y + to.y)}`);
  }
  return strokes.join('');
}

/** Widths of a letter in the line of the state, in the drawing's own measure: judged by the widest letters. */
const WORD_LETTER = 10;
const VALUE_LETTER = 10.5;

/** Whether the reading has room beside the word; else it stands in the line below, before what was shown. */
function fitsBeside(word: string, value: string): boolean {
  return word.length * WORD_LETTER + value.length * VALUE_LETTER <= 136;
}

function stateLine(tag: EnergyTag, edges: { textX: number; valueX: number; bandX: number }): string[] {
  const word = tag.word ?? stateWord(tag.state);
  const solid = UNSAFE_STATES.includes(tag.state);
  const held = tag.state === 'held';
  const ink = solid ? 'onlive-fill' : tag.state === 'absent' ? 'ink2-fill' : 'ink-fill';
  // In the line of the name: beside the word it would push into a long reading.
  const swatch = { x: edges.valueX - 19, y: 5, width: 19, height: 16 };
  const value = fitsBeside(word, tag.value ?? '') ? (tag.value ?? '') : '';
  return [
    solid ? shape('rect', { x: edges.bandX, y: 23, width: 146, height: 23, class: 'live-fill' }) : '',
    held
      ? shape('path', { d: hatchedBox({ ...swatch, every: 7 }), 'stroke-width': 3, class: 'live-line' })
      : '',
    held ? shape('rect', { ...swatch, 'stroke-width': 1.5, class: 'live-line' }) : '',
    letters({ x: edges.textX, y: 40, class: `t16 bold ${ink}` }, word),
    letters(
      {
        x: edges.valueX,
        y: 40,
        'text-anchor': 'end',
        class: `${value.length > 8 ? 't16' : 't18'} bold ${ink}`,
      },
      value,
    ),
  ];
}

const BELOW_LETTER = 7;
const BELOW_ROOM = 142;

/** What is longer than the tag, in another language, is set closer. */
function squeezed(text: string): { textLength?: number; lengthAdjust?: string } {
  const isLong = text.length * BELOW_LETTER > BELOW_ROOM;
  return isLong ? { textLength: BELOW_ROOM, lengthAdjust: 'spacingAndGlyphs' } : {};
}

/** The tag as a piece of a drawing, its upper left corner at 0,0. */
export function energyTagPiece(tag: EnergyTag): string {
  const left = (tag.side ?? 'left') === 'left';
  const { width, dashes, class: className } = border(tag.state);
  const isBelow = !fitsBeside(tag.word ?? stateWord(tag.state), tag.value ?? '');
  const below = [isBelow ? tag.value : '', tag.proof].filter(Boolean).join(', ');
  const edges = left ? { textX: 24, valueX: 160, bandX: 20 } : { textX: 10, valueX: 144, bandX: 2 };
  return group({}, [
    shape('path', {
      d: outline(left ? 'left' : 'right'),
      'stroke-width': width,
      'stroke-dasharray': dashes,
      class: className,
    }),
    tag.state === 'absent'
      ? shape('path', { d: 'M110 68L168 0', 'stroke-width': 1.2, class: 'edge-line' })
      : '',
    letters({ x: edges.textX, y: 18, class: 't14 bold ink-fill' }, tag.letter),
    letters({ x: edges.textX + 13, y: 18, class: 't14 ink-fill' }, tag.name),
    ...stateLine(tag, edges),
    letters({ x: edges.textX, y: 61, class: 't14 ink2-fill', ...squeezed(below) }, below),
    shape('circle', {
      cx: left ? 11 : TAG_WIDTH - 11,
      cy: 34,
      r: 5,
      'stroke-width': 1.5,
      class: ALARMING.includes(tag.state) ? 'live-line livetint-ground' : 'ink-line tint-ground',
    }),
  ]);
}

/** The tag alone, as a picture with a sentence. */
export function energyTag(tag: EnergyTag): string {
  const word = tag.word ?? stateWord(tag.state);
  const sentence = [`${tag.letter} ${tag.name}: ${word}`, tag.value, tag.proof].filter(Boolean).join(', ');
  return group(
    {
      is: 'svg',
      width: TAG_WIDTH + 4,
      height: TAG_HEIGHT + 4,
      viewBox: `-2 -2 ${TAG_WIDTH + 4} ${TAG_HEIGHT + 4}`,
      role: 'img',
      'aria-label': sentence,
    },
    [energyTagPiece(tag)],
  );
}
