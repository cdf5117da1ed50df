import { describe, expect, test } from 'vitest';
import { demoSheet, furtherKinds, valveKinds } from './demo-sheets.ts';
import { looks, meanMinutes, simulatorWorld } from './measure-simulator.ts';

// The short form holds the size of things on one valve; with YOKESIDE_LONG=1 every cause, severity and kind is tried
// and the figures are told, apart from those of the table world and never mixed with them.
const LONG = process.env.YOKESIDE_LONG === '1';
const LIMIT_MS = LONG ? 7_200_000 : 120_000;

test(
  'plain faults of a simulated valve are found, in fewer minutes than by the order of a textbook',
  () => {
    const causes = [['supplyLost'], ['relayRestriction'], ['packingLeaks']] as const;
    const many = { sheet: demoSheet('LV-201'), causes, severities: [0.7], seed: 0 };
    const ours = looks({ ...many, order: 'engine' });
    const book = looks({ ...many, order: 'textbook' });
    expect(ours.map(({ first }) => first)).toEqual(causes.map(() => true));
    expect(meanMinutes(ours)).toBeLessThan(meanMinutes(book));
  },
  LIMIT_MS,
);

describe.each(LONG ? Object.entries({ ...valveKinds(), ...furtherKinds() }) : [])(
  'the simulator world, %s',
  (kind, sheet) => {
    test(
      'every cause in three severities against the order of a textbook, sound valves, and pairs that meet for a reason',
      () => {
        const figures = simulatorWorld({
          sheet,
          severities: [0.25, 0.5, 0.8],
          seed: 0,
          everyNth: 1,
          soundRuns: 20,
        });
        console.log(JSON.stringify({ world: 'simulator', kind, ...figures }));
        expect(figures.minutes).toBeLessThan(0.6 * figures.minutesByTextbook);
        expect(figures.pairs.oneFirst).toBeGreaterThan(0.5);
      },
      LIMIT_MS,
    );
  },
);
