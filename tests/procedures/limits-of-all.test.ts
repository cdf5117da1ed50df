/** No card of any served procedure asks for more pressure than its valve may have. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isUnitId, toSi } from '../../procedures/calculations/units.ts';
import { fill } from '../../procedures/say.ts';
import { PROCEDURES } from '../../procedures/served.ts';
import type { Place } from '../../procedures/served-procedure.ts';
import { readSheet } from '../../procedures/valve-sheet/read-sheet.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import type { Step } from '../../procedures/vocabulary.ts';
import { testAirLimit } from '../../safety/limits.ts';
import { DEMO_VALVES } from '../../server/demo/demo-valves.ts';
import { openJob } from '../builders/jobs.ts';
import { validSheets } from '../builders/valid-sheets.ts';

/** Acts that put a pressure somewhere, by the first word of their line. */
const PUTS = /^(?:Set|Raise|Hold|Put|Bring|Give|Load|Step)\b/;
const PRESSURE = /(\d+(?:\.\d+)?) (psi|kPa|bar|MPa)\b/g;
/** What is printed is rounded to its last place. */
const ROUNDING_PA = 700;

/** The lines of a step that tell an act: its title, what to do under it, and sentences of how it is done. */
function actsOf(step: Step): readonly string[] {
  const title = 'title' in step ? [step.title] : [];
  const lines = 'do' in step ? (step.do ?? []) : [];
  const how = 'how' in step ? (step.how ?? '').split(/(?<=\.) /) : [];
  return [...title, ...lines, ...how].filter((line) => PUTS.test(line));
}

function pressuresIn(text: string): readonly number[] {
  return [...text.matchAll(PRESSURE)].flatMap(([, number, unit = '']) =>
    isUnitId(unit) ? [toSi({ value: Number(number), unit })] : [],
  );
}

/** The most that may stand anywhere on this valve by these acts: on its case, at its signal, on its supply, on its seat. */
function mostPa(sheet: ValveSheet, text: string): number {
  if (/inlet side|relief that opens/.test(text)) return sheet.shutOffDropPa;
  const air = testAirLimit(sheet).limitPa;
  if (/supply/i.test(text)) return sheet.supplyHighPa ?? Math.max(air, toSi({ value: 100, unit: 'psi' }));
  return sheet.positioner === 'none' ? air : Math.max(air, sheet.signalHighPa);
}

interface Asked {
  readonly asked: readonly string[];
  readonly tooMuch: readonly string[];
}

function askedOf(sheet: ValveSheet, most: typeof mostPa = mostPa): Asked {
  const all = PROCEDURES.flatMap((procedure) =>
    (['line', 'bench'] as const).flatMap((place: Place) => {
      if (procedure.whyNot(sheet, place) !== null) return [];
      const { job } = openJob({ sheet, place });
      return Object.entries(procedure.definition.steps).flatMap(([name, step]) =>
        actsOf(step).flatMap((line) => {
          // A rig that is tried in the hand is connected to nothing.
          if (name === 'rigGauges') return [];
          const text = fill(line, job);
          return pressuresIn(text).map((pa) => ({
            where: `${procedure.definition.id}, ${name}: ${text}`,
            isTooMuch: pa > most(sheet, text) + ROUNDING_PA,
          }));
        }),
      );
    }),
  );
  return {
    asked: all.map(({ where }) => where),
    tooMuch: all.filter(({ isTooMuch }) => isTooMuch).map(({ where }) => where),
  };
}

describe('No card of a served procedure asks for more than the valve may have', () => {
  test.each(DEMO_VALVES.map((texts) => [texts.tag, texts] as const))('%s of the demo plant', (_, texts) => {
    const read = readSheet({ texts });
    if (!read.ok) throw new Error('The demo sheet is not valid.');
    const { asked, tooMuch } = askedOf(read.sheet);
    expect(tooMuch).toEqual([]);
    expect(asked.length).toBeGreaterThan(2);
  });

  test('any valid sheet', () => {
    fc.assert(
      fc.property(validSheets, (sheet) => {
        const { asked, tooMuch } = askedOf(sheet);
        expect(tooMuch).toEqual([]);
        expect(asked.length).toBeGreaterThan(2);
      }),
      { numRuns: process.env.YOKESIDE_LONG === undefined ? 30 : 3000 },
    );
  });

  test('and one that did would be found', () => {
    const read = readSheet({ texts: DEMO_VALVES[0] ?? {} });
    if (!read.ok) throw new Error('The demo sheet is not valid.');
    expect(askedOf(read.sheet, () => toSi({ value: 14, unit: 'psi' })).tooMuch.length).toBeGreaterThan(0);
  });
});
