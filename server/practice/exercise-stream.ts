import { z } from 'zod';
import type { Json } from '../../procedures/json.ts';
import type { Given } from '../../procedures/practice/faults.ts';
import { CAUSES, type CauseId } from '../../procedures/troubleshooting/causes.ts';
import type { StreamKind } from '../log/stream-kind.ts';

/** One exercise: a simulated valve under a tag of its own, with what is hidden in it. */
export interface Exercise {
  /** Blank for one that is not there. */
  readonly tag: string;
  /** The valve of the plant that it was made after. */
  readonly after: string;
  readonly faults: readonly Given[];
  readonly seed: number;
  readonly how: 'drawn' | 'drawn, two' | 'chosen';
  readonly setBy: string;
  readonly setAt: string;
  /** Somebody looked at the truth before anything was named. */
  readonly givenUp: boolean;
}

/** The line of an exercise in the list; what is hidden is no part of it. */
export type ExerciseLine = Omit<Exercise, 'faults' | 'seed'>;

const isCause = (text: string): text is CauseId => Object.hasOwn(CAUSES, text);

const exerciseSet = z.object({
  tag: z.string(),
  after: z.string(),
  faults: z.array(z.object({ cause: z.string().refine(isCause), severity: z.number().min(0).max(1) })),
  seed: z.number().int(),
  how: z.enum(['drawn', 'drawn, two', 'chosen']),
});

/** Exercises of the practice bench; no log of real work knows this kind. */
export const exerciseKind: StreamKind<Exercise> = {
  kind: 'exercise',
  initial: {
    tag: '',
    after: '',
    faults: [],
    seed: 0,
    how: 'drawn',
    setBy: '',
    setAt: '',
    givenUp: false,
  },
  evolve: (exercise, entry) => {
    if (entry.kind === 'exercise-given-up') return { ...exercise, givenUp: true };
    if (entry.kind !== 'exercise-set') return exercise;
    const set = exerciseSet.parse(entry.inputs);
    return { ...exercise, ...set, setBy: entry.person ?? '', setAt: entry.at };
  },
  summarise: ({ faults: _, seed: __, ...line }) =>
    line.tag === '' ? null : { sort: line.setAt, body: line as unknown as Json },
};
