import type { Term } from './term.ts';
import { LINE_TERMS } from './terms/line.ts';
import { SAFETY_TERMS } from './terms/safety.ts';
import { SETTING_TERMS } from './terms/setting.ts';
import { STROKE_TERMS } from './terms/stroke.ts';
import { VALVE_TERMS } from './terms/valve.ts';

/** All that the reply line can explain. */
export const TERMS: readonly Term[] = [
  ...SETTING_TERMS,
  ...STROKE_TERMS,
  ...VALVE_TERMS,
  ...LINE_TERMS,
  ...SAFETY_TERMS,
];
