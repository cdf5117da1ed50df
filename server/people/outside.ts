import { randomBytes } from 'node:crypto';
import type { z } from 'zod';
import type { Json } from '../../procedures/json.ts';
import { sha256 } from '../log/chain.ts';
import type { Store } from '../store/store.ts';

/** Records of one kind outside the log, read with their schema. */
export class OutsideRecords<Schema extends z.ZodType<Json>> {
  readonly #store: Store;
  readonly #kind: string;
  readonly #schema: Schema;
  /** What was read; null where the store is asked each time. */
  readonly #kept: Map<string, z.output<Schema>> | null;
  #writes = 0;

  constructor(of: {
    readonly store: Store;
    readonly kind: string;
    readonly schema: Schema;
    /** Kept in memory once it was read, where no other server writes it. */
    readonly isKept?: boolean;
  }) {
    this.#store = of.store;
    this.#kind = of.kind;
    this.#schema = of.schema;
    this.#kept = of.isKept && !of.store.isShared ? new Map() : null;
  }

  async get(id: string): Promise<z.output<Schema> | undefined> {
    const kept = this.#kept?.get(id);
    if (kept !== undefined) return kept;
    const writes = this.#writes;
    const body = await this.#store.outside(this.#kind, id);
    if (body === undefined) return undefined;
    const record = this.#schema.parse(body);
    // What was written while it was read may be newer, or gone.
    if (writes === this.#writes) this.#kept?.set(id, record);
    return record;
  }

  async all(): Promise<readonly { readonly id: string; readonly body: z.output<Schema> }[]> {
    const records = await this.#store.outsideAll(this.#kind);
    return records.map(({ id, body }) => ({ id, body: this.#schema.parse(body) }));
  }

  put(id: string, body: z.output<Schema>): Promise<void> {
    return this.#written(id, () => this.#store.putOutside({ kind: this.#kind, id, body }));
  }

  delete(id: string): Promise<void> {
    return this.#written(id, () => this.#store.deleteOutside(this.#kind, id));
  }

  /** Whether it went well or not: the store is asked next time. */
  async #written(id: string, write: () => Promise<void>): Promise<void> {
    this.#forget(id);
    try {
      await write();
    } finally {
      this.#forget(id);
    }
  }

  #forget(id: string): void {
    this.#writes += 1;
    this.#kept?.delete(id);
  }
}

/** 256 random bits for a cookie. */
export function newToken(): string {
  return randomBytes(32).toString('base64url');
}

/** What is kept of a token: a copy of the database opens no session. */
export function digestOf(token: string): string {
  return sha256(token);
}
