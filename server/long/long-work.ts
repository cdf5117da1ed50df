/** Work that takes longer than a page may: it goes on in steps, says how far it is, and stops where it is told to. */
import { Refusal } from '../../safety/refusal.ts';
import { turns } from './turns.ts';

export interface LongStep {
  /** `reading row` */
  readonly doing: string;
  readonly done: number;
  readonly of: number;
}

/**
 * Says how far a work is. Others are let in between when it has been at it for a while.
 * @throws Stopped where somebody stopped it; what throws it on has written nothing
 */
export type Tell = (step: LongStep) => Promise<void>;

/** For work that nobody looks at. */
export const TELL_NOBODY: Tell = async () => {};

export class Stopped extends Error {
  constructor() {
    super('somebody stopped it');
  }
}

export type Outcome =
  | { readonly state: 'going' }
  | { readonly state: 'done'; readonly result: unknown }
  | { readonly state: 'stopped' }
  | { readonly state: 'failed'; readonly error: unknown };

export interface LongWork {
  readonly id: string;
  /** `Looking at a table of valves` */
  readonly title: string;
  /** Who began it, and alone may look at it. */
  readonly person: string;
  readonly beganAtMs: number;
  readonly step: LongStep;
  readonly outcome: Outcome;
  /** From here on it is written at once, and no longer stopped. */
  readonly isWriting: boolean;
  /** Where it was begun. */
  readonly back: string;
  /** Where its result is shown. */
  readonly shows: string;
}

interface Begun extends Pick<LongWork, 'title' | 'person' | 'back'> {
  /** @param id  of the work */
  shows(id: string): string;
}

type Kept = { -readonly [Key in keyof LongWork]: LongWork[Key] } & {
  isStopped: boolean;
  ended: Promise<void>;
};

/** So many stay in memory; the oldest that has ended goes first. */
const KEPT_MAX = 40;
/** So many go on at once. */
const GOING_MAX = 4;

export class LongWorks {
  readonly #works = new Map<string, Kept>();
  readonly #of: { newId(): string; report(error: unknown): void };

  /** @param of  `report` is told of what failed and is no refusal */
  constructor(of: { newId(): string; report(error: unknown): void }) {
    this.#of = of;
  }

  /** Begins a work. @throws Refusal LNG-001 where too many go on already */
  start(begun: Begun, run: (tell: Tell, writing: () => void) => Promise<unknown>): string {
    this.#forgetOld();
    const id = this.#of.newId();
    const { shows, ...rest } = begun;
    const work: Kept = {
      ...rest,
      id,
      shows: shows(id),
      beganAtMs: performance.now(),
      step: { doing: 'beginning', done: 0, of: 1 },
      outcome: { state: 'going' },
      isWriting: false,
      isStopped: false,
      ended: Promise.resolve(),
    };
    this.#works.set(id, work);
    const writing = () => {
      if (work.isStopped) throw new Stopped();
      work.isWriting = true;
    };
    work.ended = run(tellFor(work), writing).then(
      (result) => {
        work.outcome = { state: 'done', result };
      },
      (error: unknown) => {
        work.outcome = error instanceof Stopped ? { state: 'stopped' } : { state: 'failed', error };
        if (!(error instanceof Stopped || error instanceof Refusal)) this.#of.report(error);
      },
    );
    return id;
  }

  /** Begins a work whose address is known before, or joins the one to it that this person began already. @throws as `start` */
  startOrJoin(
    begun: Omit<Begun, 'shows'> & { readonly shows: string },
    run: (tell: Tell) => Promise<unknown>,
  ): string {
    const { shows, person } = begun;
    const going = [...this.#works.values()].find(
      (work) => work.outcome.state === 'going' && work.shows === shows && work.person === person,
    );
    return going?.id ?? this.start({ ...begun, shows: () => shows }, run);
  }

  /** @throws Refusal LNG-002 for one that is not kept any more, or is somebody else’s */
  at(id: string, person: string): LongWork {
    const work = this.#works.get(id);
    if (work === undefined || work.person !== person) throw noSuchWork();
    return work;
  }

  /** Waits for its end, but no longer than so many milliseconds. */
  async wait(id: string, forMs: number): Promise<LongWork | undefined> {
    const work = this.#works.get(id);
    if (work === undefined) return undefined;
    let timer: NodeJS.Timeout | undefined;
    const late = new Promise<void>((resolve) => {
      if (Number.isFinite(forMs)) timer = setTimeout(resolve, forMs);
    });
    await Promise.race([work.ended, late]);
    clearTimeout(timer);
    return work;
  }

  /** Stops it at its next step. One that is being written, or has ended, is left as it is. */
  stop(id: string, person: string): LongWork {
    const work = this.at(id, person) as Kept;
    if (!work.isWriting) work.isStopped = true;
    return work;
  }

  #forgetOld(): void {
    const all = [...this.#works.values()];
    if (all.filter(({ outcome }) => outcome.state === 'going').length >= GOING_MAX) throw tooMany();
    const ended = all.filter(({ outcome }) => outcome.state !== 'going');
    for (const { id } of ended.slice(0, Math.max(0, all.length - KEPT_MAX + 1))) this.#works.delete(id);
  }
}

function tellFor(work: Kept): Tell {
  const turn = turns();
  return async (step) => {
    work.step = step;
    if (work.isStopped) throw new Stopped();
    const letIn = await turn();
    if (letIn && work.isStopped) throw new Stopped();
  };
}

function tooMany(): Refusal {
  return new Refusal({
    kind: 'throttled',
    code: 'LNG-001',
    what: 'The server is busy with other long work.',
    kept: 'Nothing was begun.',
    next: 'Wait until it is done, and try again.',
  });
}

/** For a program that waited for it. */
export function wasStopped(): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'LNG-003',
    what: 'Somebody stopped this work.',
    kept: 'Nothing was changed.',
    next: 'Send it again to begin anew.',
  });
}

function noSuchWork(): Refusal {
  return new Refusal({
    kind: 'not-found',
    code: 'LNG-002',
    what: 'This work is no longer here.',
    kept: 'Either it was done whole, or nothing of it was.',
    next: 'Look where it would show, and begin it again if it is not there.',
  });
}
