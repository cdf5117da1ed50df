import type { ConditionId } from '../../safety/conditions.ts';
import type { PointState } from '../../safety/isolation-points.ts';
import type { Signer, SignWay } from '../../safety/sign-off.ts';
import type { Compiled } from '../compile.ts';
import type { JobDraft } from '../evolve.ts';
import type { Late, Together } from '../job.ts';
import type { Photo } from '../notes/note.ts';
import type { Given } from '../readings/given.ts';

/** What a person asks of a job. `place` is the newest line that they had seen. */
export type Action =
  | {
      readonly kind: 'answer';
      readonly place: number;
      readonly step: string;
      readonly given: Given;
      readonly late?: Late;
      readonly together?: Together;
    }
  | {
      readonly kind: 'sign';
      readonly place: number;
      readonly step: string;
      readonly shownDigest: string;
      /** Signed on paper earlier: who signs here says when. */
      readonly late?: Late;
    }
  | {
      readonly kind: 'send-back';
      readonly place: number;
      readonly step: string;
      readonly reason: string;
      readonly disposition: string;
    }
  | { readonly kind: 'waive'; readonly place: number; readonly step: string; readonly reason: string }
  | { readonly kind: 'go-on'; readonly place: number; readonly step: string }
  | {
      readonly kind: 'override';
      readonly place: number;
      readonly step: string;
      readonly outcome: string;
      readonly reason: string;
    }
  | { readonly kind: 'review'; readonly place: number; readonly about: number }
  | {
      readonly kind: 'review-back';
      readonly place: number;
      readonly about: number;
      readonly reason: string;
      readonly disposition: string;
    }
  | {
      readonly kind: 'read-again';
      readonly place: number;
      readonly about: number;
      readonly mode: string;
      readonly given: Given;
    }
  | { readonly kind: 'confirm-radio'; readonly place: number; readonly about: number; readonly code: string }
  | { readonly kind: 'deny-radio'; readonly place: number; readonly about: number; readonly reason: string }
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
  | {
      readonly kind: 'hand-over';
      readonly place: number;
      readonly incoming: string;
      /** Numbers of the locks that the incoming person hangs, by the lock condition. */
      readonly locks: { readonly [C in ConditionId]?: string };
    }
  | {
      readonly kind: 'remove-locks';
      readonly place: number;
      /** Who is away. */
      readonly owner: string;
      /** Whoever is on the job with locks on all its points, and who goes on with it; null where nobody is. */
      readonly heir: string | null;
      readonly reason: string;
    }
  | { readonly kind: 'note-finding'; readonly place: number; readonly given: Given }
  | { readonly kind: 'note-part'; readonly place: number; readonly given: Given }
  | {
      readonly kind: 'note-photo';
      readonly place: number;
      /** As the server read and cleaned it. */
      readonly photo: Omit<Photo, 'kind' | 'words' | 'about'>;
      readonly given: Given;
    }
  | { readonly kind: 'strike-note'; readonly place: number; readonly about: number; readonly reason: string }
  | { readonly kind: 'prove-again'; readonly place: number; readonly given: Given };

export type ActionKind = Action['kind'];
export type ActionOf<K extends ActionKind> = Extract<Action, { readonly kind: K }>;

/** Who gives a signature and how, as the server has checked it. */
export interface Signatory {
  readonly signer: Signer;
  readonly name: string;
  readonly way: SignWay;
  /** Why no supervisor stands there. */
  readonly why: string;
  readonly nonce: string;
  readonly radio: { readonly code: string; readonly heardBy: string } | null;
}

/** The words of a card in another language: a signature covers them beside the facts. */
export interface ReadIn {
  readonly language: string;
  readonly lines: readonly string[];
}

/** What the world gives to a decision; nothing in `procedures/` asks for it. */
export interface Surroundings {
  readonly compiled: Compiled;
  readonly nowMs: number;
  /** Today on the site, as YYYY-MM-DD. */
  readonly today: string;
  readonly person: Signer;
  readonly points: { readonly [C in ConditionId]?: PointState };
  /** Digest of what a signer is shown now. */
  readonly shownDigest: string;
  /** What the card said to whoever signs, word for word, where it was not in English. */
  readonly readIn?: ReadIn;
  /** The job that goes on after this one, where the act opens it in the same line. */
  readonly goesOnAs?: string;
  /** Absent where the person at the screen signs for themselves. */
  readonly signatory?: Signatory;
}

/** The line to store, with what belongs to other streams worked out from it by the server. */
export type Decision = JobDraft;
