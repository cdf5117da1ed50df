import { createHash } from 'node:crypto';
import { z } from 'zod';
import type { Store } from '../store/store.ts';
import { OutsideRecords } from './outside.ts';

/** What somebody typed into a form that came after their session had ended. */
const draftSchema = z.object({
  person: z.string(),
  /** Where the form would have gone. */
  action: z.string(),
  /** The id that the form carried: sent again, it is recorded once. */
  requestId: z.string(),
  fields: z.record(z.string(), z.union([z.string(), z.array(z.string())])),
  at: z.iso.datetime(),
});

export type Draft = z.output<typeof draftSchema>;

const OF_ONE_PERSON_MAX = 10;
const KEPT_MS = 3 * 24 * 3600 * 1000;
/** More than any card takes; a table of valves is not typed in by hand. */
const LETTERS_MAX = 20_000;

/** Never kept, whatever form they stand in. */
const SECRETS = ['pin', 'newPin', 'newPinAgain', 'code', 'token'];

export interface DraftsOptions {
  readonly store: Store;
  now(): Date;
}

/** Kept for the one who typed it, beside the log, until it is sent, thrown away or old. */
export class Drafts {
  readonly #options: DraftsOptions;
  readonly #records: OutsideRecords<typeof draftSchema>;

  constructor(options: DraftsOptions) {
    this.#options = options;
    this.#records = new OutsideRecords({ store: options.store, kind: 'draft', schema: draftSchema });
  }

  /** @returns whether it was kept: nothing typed, a secret in it, or too long, and it is not */
  async keep(typed: Omit<Draft, 'at'>): Promise<boolean> {
    const names = Object.keys(typed.fields);
    const isSecret = names.some((name) => SECRETS.includes(name));
    if (names.length === 0 || isSecret || JSON.stringify(typed.fields).length > LETTERS_MAX) return false;
    await this.#makeRoom(typed.person);
    await this.#records.put(idOf(typed), { ...typed, at: this.#options.now().toISOString() });
    return true;
  }

  /** Theirs alone, oldest first; what was recorded meanwhile is gone. */
  async of(person: string): Promise<readonly (Draft & { readonly id: string })[]> {
    const { store, now } = this.#options;
    const left: (Draft & { readonly id: string })[] = [];
    for (const { id, body } of await this.#records.all()) {
      if (body.person !== person) continue;
      const isOld = now().getTime() - Date.parse(body.at) > KEPT_MS;
      if (isOld || (await store.answered(body.requestId)) !== undefined) await this.#records.delete(id);
      else left.push({ ...body, id });
    }
    return left.sort((one, other) => one.at.localeCompare(other.at));
  }

  /** @returns whether there was one of theirs by that id */
  async discard({ id, person }: { readonly id: string; readonly person: string }): Promise<boolean> {
    const draft = await this.#records.get(id);
    if (draft?.person !== person) return false;
    await this.#records.delete(id);
    return true;
  }

  async #makeRoom(person: string): Promise<void> {
    const mine = await this.of(person);
    for (const { id } of mine.slice(0, Math.max(0, mine.length - OF_ONE_PERSON_MAX + 1))) {
      await this.#records.delete(id);
    }
  }
}

function idOf({ person, requestId }: Pick<Draft, 'person' | 'requestId'>): string {
  return createHash('sha256').update(`${person} ${requestId}`, 'utf8').digest('hex').slice(0, 24);
}
