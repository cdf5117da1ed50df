import type { Renderer } from '../views/render.ts';
import type { SiteLog } from './log/site-log.ts';
import type { OperationsLog } from './operations-log.ts';
import type { Drafts } from './people/drafts.ts';
import type { People } from './people/people.ts';
import type { Settings } from './settings.ts';
import type { Store } from './store/store.ts';

/** What a request handler may use. Clock and randomness come in here, so that tests can hold them still. */
export interface Services {
  readonly log: SiteLog;
  readonly store: Store;
  readonly people: People;
  readonly drafts: Drafts;
  readonly views: Renderer;
  readonly operations: OperationsLog;
  readonly settings: Settings;
  now(): Date;
  /** A new id unlike any other, for requests and entries. */
  newId(): string;
}
