import { join } from 'node:path';
import { createRenderer } from '../views/render.ts';
import { makeLists } from './lists.ts';
import type { Checkpoints } from './log/checkpoints.ts';
import { followOthers } from './log/follow-others.ts';
import { refuseWhileDistrusted } from './log/read-only.ts';
import { SiteLog } from './log/site-log.ts';
import { LongWorks } from './long/long-work.ts';
import { faultDetails, operationsLog } from './operations-log.ts';
import { Drafts } from './people/drafts.ts';
import { SitePeople } from './people/site-people.ts';
import { practiceSite } from './practice/practice-site.ts';
import type { Services } from './services.ts';
import type { Settings } from './settings.ts';
import { LiveChannel } from './signing/live.ts';
import { Nonces } from './signing/nonces.ts';
import type { Machine } from './status/machine.ts';
import type { Store } from './store/store.ts';
import { streamKinds } from './streams.ts';

export interface ServicesOptions {
  readonly store: Store;
  /** Opens the database of the practice bench, when somebody first practises. */
  practiceStore(): Store;
  readonly settings: Settings;
  /** Compared with the log already; without them nothing is. */
  readonly checkpoints?: Checkpoints | null;
  /** The data folder and the copies made of it; where nothing is given, the log lies in no folder and none are made. */
  readonly machine?: Pick<Machine, 'folder' | 'backups'>;
  /** The key from beside the database. */
  readonly pepper: Uint8Array;
  /** The folder that holds `views/`. */
  readonly project: string;
  readonly codeVersion: string;
  /** The address of a file that pages load. */
  asset(name: string): string;
  now(): Date;
  newId(): string;
  drawSeed(): number;
  /** Takes a line of the operations log. */
  out(line: string): void;
}

/** Everything that a request handler needs, joined up. */
export function makeServices(options: ServicesOptions): Services {
  const {
    store,
    settings,
    pepper,
    codeVersion,
    now,
    newId,
    drawSeed,
    out,
    asset,
    checkpoints = null,
  } = options;
  const operations = operationsLog({ now, out });
  const log = new SiteLog({
    store,
    kinds: streamKinds,
    now,
    codeVersion,
    gate: (entries) => refuseWhileDistrusted(checkpoints, entries),
    report: (error) => operations.write('fault', faultDetails(error)),
  });
  if (store.isShared) followOthers(log, (error) => operations.write('fault', faultDetails(error)));
  const live = new LiveChannel();
  log.onCommit((committed) => live.tell(committed));
  const real: Omit<Services, 'practice'> = {
    log,
    lists: makeLists(log),
    store,
    checkpoints,
    people: new SitePeople({ log, store, settings, pepper, now }),
    drafts: new Drafts({ store, now }),
    nonces: new Nonces({ pepper, now }),
    long: new LongWorks({ newId, report: (error) => operations.write('fault', faultDetails(error)) }),
    live,
    views: createRenderer({ folder: join(options.project, 'views'), asset }),
    operations,
    settings,
    machine: { folder: null, backups: null, ...options.machine, version: codeVersion, startedAt: now() },
    bench: null,
    now,
    newId,
    drawSeed,
  };
  return { ...real, practice: practiceDoor(real, options) };
}

function practiceDoor(
  real: Omit<Services, 'practice'>,
  { practiceStore, pepper, codeVersion }: ServicesOptions,
): Services['practice'] {
  let site: Services | undefined;
  return {
    site: () => {
      site ??= practiceSite({ real, store: practiceStore(), pepper, codeVersion });
      return site;
    },
    close: async () => {
      await site?.live.close();
      await site?.log.close();
    },
  };
}
