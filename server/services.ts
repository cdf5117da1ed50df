import type { Renderer } from '../views/render.ts';
import type { Lists } from './lists.ts';
import type { Checkpoints } from './log/checkpoints.ts';
import type { SiteLog } from './log/site-log.ts';
import type { LongWorks } from './long/long-work.ts';
import type { OperationsLog } from './operations-log.ts';
import type { Drafts } from './people/drafts.ts';
import type { People } from './people/people.ts';
import type { BenchSide, PracticeDoor } from './practice/bench-side.ts';
import type { Settings } from './settings.ts';
import type { LiveChannel } from './signing/live.ts';
import type { Nonces } from './signing/nonces.ts';
import type { Machine } from './status/machine.ts';
import type { Store } from './store/store.ts';

/** What a request handler may use. Clock and randomness come in here, so that tests can hold them still. */
export interface Services {
  readonly log: SiteLog;
  /** What is looked for among all lines of a list, in memory. */
  readonly lists: Lists;
  readonly store: Store;
  /** How far the log had come, signed, outside the database; null where nobody keeps them. */
  readonly checkpoints: Checkpoints | null;
  readonly people: People;
  readonly drafts: Drafts;
  /** One-time numbers of pages that are signed. */
  readonly nonces: Nonces;
  /** What takes longer than a page may. */
  readonly long: LongWorks;
  /** Tells open screens that something was committed. */
  readonly live: LiveChannel;
  readonly views: Renderer;
  readonly operations: OperationsLog;
  readonly settings: Settings;
  /** What it runs on, for whoever looks after it. */
  readonly machine: Machine;
  /** What only the practice bench has; null on the real site. */
  readonly bench: BenchSide | null;
  /** The way to the practice bench. */
  readonly practice: PracticeDoor;
  now(): Date;
  /** A new id unlike any other, for requests and entries. */
  newId(): string;
  /** A whole number that nobody can foresee, for what the practice bench draws. */
  drawSeed(): number;
}
