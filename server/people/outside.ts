import { createHash, randomBytes } from 'node:crypto';
import type { z } from 'zod';
import type { Json } from '../../procedures/json.ts';
import type { Store } from '../store/store.ts';

/** Records of one kind outside the log, read with their schema. */
export class OutsideRecords<Schema extends z.ZodType<Json>> {
  readonly #store: Store;
  readonly #kind: string;
  readonly #schema: Schema;

  constructor(of: { readonly store: Store; readonly kind: string; readonly schema: Schema }) {
    this.#store = of.store;
    this.#kind = of.kind;
    this.#schema = of.schema;
  }

  async get(id: string): Promise<z.output<Schema> | undefined> {
    const body = await this.#store.outside(this.#kind, id);
    return body === undefined ? undefined : this.#schema.parse(body);
  }

  async all(): Promise<readonly { readonly id: string; readonly body: z.output<Schema> }[]> {
    const records = await this.#store.outsideAll(this.#kind);
    return records.map(({ id, body }) => ({ id, body: this.#schema.parse(body) }));
  }

  put(id: string, body: z.output<Schema>): Promise<void> {
    return this.#store.putOutside({ kind: this.#kind, id, body });
  }

  delete(id: string): Promise<void> {
    return this.#store.deleteOutside(this.#kind, id);
  }
}

/** 256 random bits for a cookie. */
export function newToken(): string {
  return randomBytes(32).toString('base64url');
}

/** What is kept of a token: a copy of the database opens no session. */
export function digestOf(token: string): string {
  return createHash('sha256').update(token, 'utf8').digest('hex');
}
