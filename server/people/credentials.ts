import { randomInt } from 'node:crypto';
import { wrongFields } from '../http/fields.ts';
import { fingerprintOf } from '../log/chain.ts';
import type { Settings } from '../settings.ts';
import type { Store } from '../store/store.ts';
import type { Accounts } from './accounts.ts';
import type { By, NewCode } from './people.ts';
import type { Person } from './person.ts';
import { personEntry } from './person-stream.ts';
import { pinFault } from './pin-rules.ts';
import { codeIsUsed } from './refusals.ts';
import type { Roll } from './roll.ts';
import { RULE } from './rule.ts';

export interface CredentialsOptions {
  readonly roll: Roll;
  readonly accounts: Accounts;
  readonly store: Store;
  readonly settings: Pick<Settings, 'pinDigitsMin'>;
  now(): Date;
}

/** Numbers of the own name are known to everybody. */
type Named = Pick<Person, 'id' | 'name'>;

const CODE_DIGITS = 8;
const CODE_HOURS = 24;

/** How people come to their PIN: a one-time code from somebody else, then a PIN that only they know. */
export class Credentials {
  readonly #options: CredentialsOptions;

  constructor(options: CredentialsOptions) {
    this.#options = options;
  }

  /**
   * A PIN whose entry is written already. Never over another one: who knows an old request's id from the log could
   * otherwise send it again with a PIN of their own.
   */
  async giveFirstPin({ id, pin }: { readonly id: string; readonly pin: string }, by: By): Promise<Person> {
    const before = await this.#options.accounts.secretOf(id);
    if (before === undefined) await this.#putPin(id, { text: pin, givenBy: by.requestId });
    return await this.#options.roll.known(id);
  }

  /**
   * The same request sent again gives another code in the place of the first.
   *
   * @throws Refusal PPL-007 if that was used meanwhile
   */
  async newCode(id: string, by: By): Promise<NewCode> {
    const { roll, accounts, now } = this.#options;
    const before = await accounts.secretOf(id);
    if (before?.kind === 'pin' && before.givenBy === by.requestId) throw codeIsUsed();
    const code = String(randomInt(10 ** CODE_DIGITS)).padStart(CODE_DIGITS, '0');
    const validUntil = new Date(now().getTime() + CODE_HOURS * 3_600_000).toISOString();
    await accounts.replace(id, { text: code, kind: 'code', validUntil, givenBy: by.requestId });
    return { person: await roll.known(id), code, validUntil };
  }

  /** @param of `ruleAccepted`: they were shown the rule of signing with it, and took it on */
  async setPin(
    of: { readonly person: Person; readonly newPin: string; readonly ruleAccepted: boolean },
    by: By,
  ): Promise<void> {
    const { person, newPin, ruleAccepted } = of;
    const { roll, accounts } = this.#options;
    await this.refuseGuessable({ newPin, who: person });
    const before = await accounts.secretOf(person.id);
    const accepted = ruleAccepted
      ? [personEntry(person.id, { kind: 'rule-accepted', inputs: { rule: RULE } })]
      : [];
    const entries = [...accepted, personEntry(person.id, { kind: 'pin-set' })];
    await roll.record({ id: person.id, asks: setPinAsk(person.id), entries }, by);
    await this.#putPin(person.id, { text: newPin, givenBy: before?.givenBy ?? by.requestId });
  }

  /** This very request set the PIN before, and what proved it then is worth nothing now. */
  async isPinSet(id: string, by: By): Promise<boolean> {
    const before = await this.#options.store.answered(by.requestId);
    return before?.fingerprint === fingerprintOf(setPinAsk(id)) && before.person === id;
  }

  /** @throws Refusal FRM-002 beside the field */
  async refuseGuessable({ newPin, who }: { readonly newPin: string; readonly who: Named }): Promise<void> {
    const { store, settings } = this.#options;
    const valves = await store.summaries('valve');
    const names = [who.id, who.name, ...valves.map((valve) => valve.id)];
    const known = names.flatMap((name) => name.match(/\d+/g) ?? []);
    const fault = pinFault(newPin, { digitsMin: settings.pinDigitsMin, known });
    if (fault !== null) throw wrongFields({ newPin: fault });
  }

  #putPin(id: string, secret: { readonly text: string; readonly givenBy: string }): Promise<void> {
    return this.#options.accounts.replace(id, { ...secret, kind: 'pin', validUntil: null });
  }
}

function setPinAsk(id: string): { readonly setPin: string } {
  return { setPin: id };
}
