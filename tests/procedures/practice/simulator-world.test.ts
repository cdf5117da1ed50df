import { describe, expect, test } from 'vitest';
import { type CauseId, SOUND } from '../../../procedures/troubleshooting/causes.ts';
import { type Model, modelOf } from '../../../procedures/troubleshooting/engine/model.ts';
import { REASONS } from '../../../procedures/troubleshooting/pairs.ts';
import { valveFactsOf } from '../../../procedures/troubleshooting/valve-facts.ts';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import { demoSheet, furtherKinds, valveKinds } from './demo-sheets.ts';
import { type Look, type Order, searchSimulated } from './simulator-world.ts';

// The short form holds the size of things on one valve; with YOKESIDE_LONG=1 every cause, severity and kind is tried
// and the figures are told, apart from those of the table world and never mixed with them.
const LONG = process.env.YOKESIDE_LONG === '1';
const SEVERITIES = [0.25, 0.5, 0.8];
const LIMIT_MS = LONG ? 7_200_000 : 120_000;

interface Many {
  readonly sheet: ValveSheet;
  readonly causes: readonly (readonly CauseId[])[];
  readonly severities: readonly number[];
  readonly order: Order;
}

function looks(model: Model, of: Many): readonly (Look & { readonly truth: readonly CauseId[] })[] {
  let seed = 0;
  return of.causes.flatMap((truth) =>
    of.severities.map((severity) => {
      const faults = truth.filter((cause) => cause !== SOUND).map((cause) => ({ cause, severity }));
      seed += 1;
      return { truth, ...searchSimulated(model, { sheet: of.sheet, faults, seed, order: of.order }) };
    }),
  );
}

function share(all: readonly Look[], of: (look: Look) => boolean): number {
  return all.filter(of).length / all.length;
}

function minutes(all: readonly Look[]): number {
  return all.reduce((sum, look) => sum + look.minutes, 0) / all.length;
}

test(
  'plain faults of a simulated valve are found, in fewer minutes than by the order of a textbook',
  () => {
    const sheet = demoSheet('LV-201');
    const model = modelOf(valveFactsOf(sheet));
    const causes = [['supplyLost'], ['relayRestriction'], ['packingLeaks']] as const;
    const many = { sheet, causes, severities: [0.7] };
    const ours = looks(model, { ...many, order: 'engine' });
    const book = looks(model, { ...many, order: 'textbook' });
    expect(ours.map(({ first }) => first)).toEqual(causes.map(() => true));
    expect(minutes(ours)).toBeLessThan(minutes(book));
  },
  LIMIT_MS,
);

describe.each(LONG ? Object.entries({ ...valveKinds(), ...furtherKinds() }) : [])(
  'the simulator world, %s',
  (kind, sheet) => {
    const model = modelOf(valveFactsOf(sheet));

    test(
      'every cause in three severities, against the order of a textbook',
      () => {
        const causes = model.causes.filter((cause) => cause !== SOUND).map((cause) => [cause]);
        const many = { sheet, causes, severities: SEVERITIES };
        const ours = looks(model, { ...many, order: 'engine' });
        const book = looks(model, { ...many, order: 'textbook' });
        const missed = ours
          .filter(({ first }) => !first)
          .map(({ truth, named }) => `${truth[0]} as ${named}`);
        console.log(
          JSON.stringify({
            world: 'simulator',
            kind,
            runs: ours.length,
            first: { ours: share(ours, ({ first }) => first), textbook: share(book, ({ first }) => first) },
            minutes: { ours: minutes(ours), textbook: minutes(book), ratio: minutes(ours) / minutes(book) },
            missed,
          }),
        );
        expect(minutes(ours)).toBeLessThan(minutes(book));
      },
      LIMIT_MS,
    );

    test(
      'sound valves, and pairs that meet for a reason',
      () => {
        const sound = looks(model, {
          sheet,
          causes: Array.from({ length: 20 }, () => [SOUND]),
          severities: [0.5],
          order: 'engine',
        });
        const pairs = REASONS.flatMap((reason) =>
          reason.of.flatMap((one) => reason.with.map((other) => [one, other])),
        ).filter((pair) => pair.every((cause) => model.causes.includes(cause)));
        const both = looks(model, { sheet, causes: pairs, severities: [0.6], order: 'engine' });
        console.log(
          JSON.stringify({
            world: 'simulator',
            kind,
            soundCalledSound: share(sound, ({ first }) => first),
            pairs: both.length,
            bothInFirstThree: share(both, ({ threeHoldAll }) => threeHoldAll),
            oneNamedFirst: share(both, ({ first }) => first),
          }),
        );
        expect(share(both, ({ first }) => first)).toBeGreaterThan(0.5);
      },
      LIMIT_MS,
    );
  },
);
