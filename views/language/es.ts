import { frame } from './es/frame.ts';
import { guide } from './es/guide.ts';
import { help } from './es/help.ts';
import { jobScreen } from './es/job-screen.ts';
import { longWork } from './es/long-work.ts';
import { loopRecord } from './es/loop-record.ts';
import { newestAct } from './es/newest-act.ts';
import { peoplePages } from './es/people-pages.ts';
import { photos } from './es/photos.ts';
import { pictures } from './es/pictures.ts';
import { practiceAndCalculations } from './es/practice-and-calculations.ts';
import { recordAndAudit } from './es/record-and-audit.ts';
import { recordForces } from './es/record-forces.ts';
import { serverState } from './es/server-state.ts';
import { shiftAndPoints } from './es/shift-and-points.ts';
import { valvesAndGear } from './es/valves-and-gear.ts';
import { rest } from './es-rest.ts';
import { work } from './es-work.ts';
import type { Catalogue } from './patterns.ts';

/**
 * Everything that is said in Spanish, one file a reason, by its English text. Words of the trade as Spanish instrument
 * shops use them; not yet read by a native of the trade.
 */
export const es = {
  ...rest,
  ...work,
  ...frame,
  ...newestAct,
  ...guide,
  ...help,
  ...jobScreen,
  ...longWork,
  ...loopRecord,
  ...peoplePages,
  ...photos,
  ...pictures,
  ...practiceAndCalculations,
  ...recordAndAudit,
  ...recordForces,
  ...serverState,
  ...shiftAndPoints,
  ...valvesAndGear,
} as const satisfies Catalogue;
