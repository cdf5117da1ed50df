import { createHmac, randomUUID, timingSafeEqual } from 'node:crypto';
import { Refusal } from '../../safety/refusal.ts';

/** How long a page may be signed after it was shown (common practice, no source): long enough to read it. */
export const NONCE_MS = 15 * 60_000;

/**
 * What a signature page is about: where, and the digest of what it shows.
 * A number given for one page does not fit another, nor the same page with other readings on it.
 */
export interface SignaturePage {
  readonly job: string;
  /** The newest line that the page knows, or the line that it is about. */
  readonly line: number;
  readonly digest: string;
  readonly screen: string;
}

/**
 * One-time numbers of signature pages. The number proves itself: it carries its time and is sealed together with what
 * the page shows. That it is used once is kept by the job's own lines.
 */
export class Nonces {
  readonly #key: Buffer;
  readonly #now: () => Date;

  constructor({ pepper, now }: { readonly pepper: Uint8Array; readonly now: () => Date }) {
    this.#key = createHmac('sha256', pepper).update('signature pages').digest();
    this.#now = now;
  }

  issue(page: SignaturePage): string {
    const body = `${this.#now().getTime().toString(36)}.${randomUUID()}`;
    return `${body}.${this.#seal(body, page)}`;
  }

  /** @throws Refusal HLD-016 for a number that is too old, or was not given for this page */
  check(nonce: string, page: SignaturePage): void {
    const [time = '', random = '', seal = ''] = nonce.split('.');
    const ours = Buffer.from(this.#seal(`${time}.${random}`, page));
    const given = Buffer.from(seal);
    const fits = ours.length === given.length && timingSafeEqual(ours, given);
    if (!fits) throw stale('This page was not shown for what you are signing now.');
    const ageMs = this.#now().getTime() - Number.parseInt(time, 36);
    if (ageMs >= 0 && ageMs < NONCE_MS) return;
    throw stale(`This page was shown more than ${NONCE_MS / 60_000} minutes ago.`);
  }

  #seal(body: string, { job, line, digest, screen }: SignaturePage): string {
    const sealed = JSON.stringify([body, job, line, digest, screen]);
    return createHmac('sha256', this.#key).update(sealed).digest('base64url').slice(0, 22);
  }
}

function stale(what: string): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'HLD-016',
    what,
    kept: 'Nothing was signed.',
    next: 'Read it again as it stands now, then sign.',
  });
}

export function usedNonce(): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'HLD-007',
    what: 'This page was signed already.',
    kept: 'The first signature stands; nothing else was signed.',
    next: 'Look at the card as it stands now.',
  });
}
