import type { ConditionId } from '../../safety/conditions.ts';
import type { PointState } from '../../safety/isolation-points.ts';
import type { Compiled } from '../compile.ts';
import type { JobDraft } from '../evolve.ts';
import type { Given } from '../readings/given.ts';

/** What a person asks of a job. `place` is the newest line that they had seen. */
export type Action =
  | { readonly kind: 'answer'; readonly place: number; readonly step: string; readonly given: Given }
  | { readonly kind: 'sign'; readonly place: number; readonly step: string; readonly shownDigest: string }
  | { readonly kind: 'send-back'; readonly place: number; readonly step: string; readonly reason: string }
  | { readonly kind: 'make-safe'; readonly place: number; readonly reason: string }
  | { readonly kind: 'go-back'; readonly place: number; readonly to: string }
  | {
      readonly kind: 'correct';
      readonly place: number;
      readonly corrects: number;
      readonly given: Given;
      readonly reason: string;
    }
  | { readonly kind: 'park'; readonly place: number; readonly reason: string }
  | { readonly kind: 'take-up'; readonly place: number }
  | { readonly kind: 'prove-again'; readonly place: number; readonly given: Given };

export type ActionKind = Action['kind'];
export type ActionOf<K extends ActionKind> = Extract<Action, { readonly kind: K }>;

/** What the world gives to a decision; nothing in `procedures/` asks for it. */
export interface Surroundings {
  readonly compiled: Compiled;
  readonly nowMs: number;
  /** Today on the site, as YYYY-MM-DD. */
  readonly today: string;
  readonly person: { readonly id: string; readonly role: string };
  readonly points: { readonly [C in ConditionId]?: PointState };
  /** Digest of what a signer is shown now. */
  readonly shownDigest: string;
}

/** The line to store, with what belongs to other streams worked out from it by the server. */
export type Decision = JobDraft;
