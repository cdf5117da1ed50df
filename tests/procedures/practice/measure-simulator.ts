import { type CauseId, SOUND } from '../../../procedures/troubleshooting/causes.ts';
import type { Model } from '../../../procedures/troubleshooting/engine/model.ts';
import { modelOfValve } from '../../../procedures/troubleshooting/engine/model-of-valve.ts';
import { REASONS } from '../../../procedures/troubleshooting/pairs.ts';
import { valveFactsOf } from '../../../procedures/troubleshooting/valve-facts.ts';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import { type Look, type Order, searchSimulated } from './simulator-world.ts';

export interface Many {
  readonly sheet: ValveSheet;
  readonly causes: readonly (readonly CauseId[])[];
  readonly severities: readonly number[];
  readonly seed: number;
  readonly order: Order;
}

export type TruthAndLook = Look & { readonly truth: readonly CauseId[] };

/** One search for each truth and severity; each has a seed of its own, the same for both orders. */
export function looks(of: Many): readonly TruthAndLook[] {
  const model = modelOfValve(valveFactsOf(of.sheet));
  let seed = of.seed;
  return of.causes.flatMap((truth) =>
    of.severities.map((severity) => {
      const faults = truth.filter((cause) => cause !== SOUND).map((cause) => ({ cause, severity }));
      seed += 1;
      return { truth, ...searchSimulated(model, { sheet: of.sheet, faults, seed, order: of.order }) };
    }),
  );
}

function fractionOf(all: readonly Look[], of: (look: Look) => boolean): number {
  return all.filter(of).length / all.length;
}

export function meanMinutes(all: readonly Look[]): number {
  return all.reduce((sum, look) => sum + look.minutes, 0) / all.length;
}

export interface SimulatorWorld {
  readonly runs: number;
  readonly first: number;
  readonly firstByTextbook: number;
  readonly minutes: number;
  readonly minutesByTextbook: number;
  readonly sound: { readonly runs: number; readonly calledSound: number };
  readonly pairs: { readonly runs: number; readonly bothInFirstThree: number; readonly oneFirst: number };
  readonly missed: readonly string[];
}

interface Size {
  readonly sheet: ValveSheet;
  readonly severities: readonly number[];
  readonly seed: number;
  /** Every so many-th cause and pair; 1 for all. */
  readonly everyNth: number;
  readonly soundRuns: number;
}

/** The simulator world: what a fault shows comes from forces and air alone, which the table knows nothing of. */
export function simulatorWorld({ sheet, severities, seed, everyNth, soundRuns }: Size): SimulatorWorld {
  const model = modelOfValve(valveFactsOf(sheet));
  const some = <One>(all: readonly One[]) => all.filter((_, at) => at % everyNth === seed % everyNth);
  const causes = some(model.causes.filter((cause) => cause !== SOUND)).map((cause) => [cause]);
  const many = { sheet, causes, severities, seed };
  const ours = looks({ ...many, order: 'engine' });
  const book = looks({ ...many, order: 'textbook' });
  const soundOnes = Array.from({ length: soundRuns }, () => [SOUND]);
  const sound = looks({ ...many, causes: soundOnes, severities: [0.5], order: 'engine' });
  const pairs = looks({
    ...many,
    causes: some(pairsForAReason(model)),
    severities: [0.6],
    order: 'engine',
  });
  return {
    runs: ours.length,
    first: fractionOf(ours, ({ first }) => first),
    firstByTextbook: fractionOf(book, ({ first }) => first),
    minutes: meanMinutes(ours),
    minutesByTextbook: meanMinutes(book),
    sound: { runs: sound.length, calledSound: fractionOf(sound, ({ first }) => first) },
    pairs: {
      runs: pairs.length,
      bothInFirstThree: fractionOf(pairs, ({ threeHoldAll }) => threeHoldAll),
      oneFirst: fractionOf(pairs, ({ first }) => first),
    },
    missed: ours.filter(({ first }) => !first).map(({ truth, named }) => `${truth[0]} as ${named}`),
  };
}

function pairsForAReason(model: Model): readonly (readonly CauseId[])[] {
  return REASONS.flatMap((reason) =>
    reason.of.flatMap((one) => reason.with.map((other) => [one, other])),
  ).filter((pair) => pair.every((cause) => model.causes.includes(cause)));
}
