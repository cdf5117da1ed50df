/** Who is on the site's list, and how the list is changed. Proving who one is happens elsewhere. */
import type { Json } from '../../procedures/json.ts';
import { Refusal } from '../../safety/refusal.ts';
import { derived } from '../derived.ts';
import type { EntryDraft } from '../log/act.ts';
import { fingerprintOf } from '../log/chain.ts';
import { KeptList } from '../log/kept-list.ts';
import type { SiteLog } from '../log/site-log.ts';
import type { By } from './people.ts';
import type { Person, Role } from './person.ts';
import { personKind, personSchema } from './person-stream.ts';
import { lastWhoAdds, nameInUse, nobodyOfThatId } from './refusals.ts';

/** Ids begin with the role that a person was added in; they keep it whatever becomes of them. */
const LETTERS: Readonly<Record<Role, string>> = {
  technician: 't',
  supervisor: 's',
  'safety-officer': 'o',
  engineer: 'e',
};

/** Who may add people and give codes; one of them must always be left. */
export const ADDERS = ['supervisor', 'engineer'] as const satisfies readonly Role[];

interface RollLine {
  readonly sort: string;
  readonly person: Person;
}

/** Each page of a job names people, so that they are not read again for each. */
const byName = derived((lines: readonly RollLine[]) =>
  // Of one name, in the order of their ids, as they come.
  lines.toSorted((one, other) => compared(one.sort, other.sort)).map(({ person }) => person),
);

function compared(one: string, other: string): number {
  if (one === other) return 0;
  return one < other ? -1 : 1;
}

export class Roll {
  readonly #log: SiteLog;
  readonly #lines: KeptList<RollLine>;

  constructor(log: SiteLog) {
    this.#log = log;
    this.#lines = new KeptList({
      log,
      kind: personKind.kind,
      slim: ({ sort, body }) => ({ sort, person: personSchema.parse(body) }),
    });
  }

  /** In the order of their names. */
  async list(): Promise<readonly Person[]> {
    return byName(await this.#lines.inOrder());
  }

  async find(id: string): Promise<Person | undefined> {
    const { role, name, retired } = await this.#log.state(personKind, id);
    return role === null ? undefined : { id, name, role, retired };
  }

  /** Somebody of whom an entry was just written. */
  async known(id: string): Promise<Person> {
    const person = await this.find(id);
    if (person === undefined) throw new TypeError(`${id} was recorded and is not there.`);
    return person;
  }

  /** Somebody who still works here, by name or id as people type them. */
  async whoIs(who: string): Promise<Person | undefined> {
    const wanted = who.normalize('NFC').trim().toLowerCase();
    const present = (await this.list()).filter(({ retired }) => !retired);
    return present.find(({ id, name }) => id === wanted || name.toLowerCase() === wanted);
  }

  /** @throws Refusal PPL-006 */
  async present(id: string): Promise<Person> {
    const person = await this.find(id);
    if (person === undefined || person.retired) throw nobodyOfThatId(id);
    return person;
  }

  /** Changes of the list happen one after the other, so that no name or id is given twice. */
  inTurn<T>(work: () => Promise<T>): Promise<T> {
    return this.#log.inTurn('roll of people', work);
  }

  /** @throws Refusal PPL-005 */
  async refuseUsedName(name: string, except?: string): Promise<void> {
    const other = await this.whoIs(name);
    if (other !== undefined && other.id !== except) throw nameInUse(name);
  }

  /** @throws Refusal PPL-012 if without this person nobody could add people */
  async refuseLastWhoAdds(id: string): Promise<void> {
    const others = (await this.list()).filter((person) => person.id !== id && !person.retired);
    if (!others.some(({ role }) => ADDERS.some((adder) => adder === role))) throw lastWhoAdds();
  }

  async nextId(role: Role): Promise<string> {
    const letter = LETTERS[role];
    const numbers = (await this.list())
      .filter(({ id }) => id.startsWith(letter))
      .map(({ id }) => Number(id.slice(letter.length)));
    return `${letter}${Math.max(0, ...numbers) + 1}`;
  }

  /**
   * Records an act on the list. `check` refuses it; a request that was done already is answered again without it,
   * since what it did is the reason why it would now be refused.
   */
  async record(act: RollAct, by: By): Promise<{ readonly id: string }> {
    const { asks, entries, check } = act;
    const refusal = await thrownBy(check);
    return await this.#log.act({
      ...by,
      fingerprint: fingerprintOf(asks),
      streams: [...new Set(entries.map(({ stream }) => stream))],
      decide: () => {
        if (refusal !== undefined) throw refusal;
        return { entries, answer: { id: act.id } };
      },
    });
  }
}

export interface RollAct {
  /** Whom it is about. */
  readonly id: string;
  /** What was asked for, without anything secret. */
  readonly asks: Json;
  readonly entries: readonly EntryDraft[];
  check?(): Promise<void>;
}

async function thrownBy(check: (() => Promise<void>) | undefined): Promise<Refusal | undefined> {
  try {
    await check?.();
    return undefined;
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
}
