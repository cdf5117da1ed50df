import { energies } from './es/energies.ts';
import { handOver } from './es/hand-over.ts';
import { jobRefusals } from './es/job-refusals.ts';
import { jobWords } from './es/job-words.ts';
import { lineWorking } from './es/line-working.ts';
import { outcomes } from './es/outcomes.ts';
import { readingsAndFigures } from './es/readings-and-figures.ts';
import { recordWords } from './es/record-words.ts';
import { serverWords } from './es/server-words.ts';
import { sheetFields } from './es/sheet-fields.ts';
import { strokeCheckIsolate } from './es/stroke-check-isolate.ts';
import { strokeCheckOtherwise } from './es/stroke-check-otherwise.ts';
import { strokeCheckReady } from './es/stroke-check-ready.ts';
import { strokeCheckReturn } from './es/stroke-check-return.ts';
import { strokeCheckWork } from './es/stroke-check-work.ts';
import type { Catalogue } from './patterns.ts';

/** What is said in Spanish of the work: the stroke check card by card, readings, energies, refusals, records, sheets. */
export const work = {
  ...energies,
  ...handOver,
  ...jobRefusals,
  ...jobWords,
  ...lineWorking,
  ...outcomes,
  ...readingsAndFigures,
  ...recordWords,
  ...serverWords,
  ...sheetFields,
  ...strokeCheckIsolate,
  ...strokeCheckOtherwise,
  ...strokeCheckReady,
  ...strokeCheckReturn,
  ...strokeCheckWork,
} as const satisfies Catalogue;
