import { wrongFields } from '../http/fields.ts';
import type { EntryDraft } from '../log/act.ts';
import { LogDamaged } from '../log/chain.ts';
import type { SiteLog } from '../log/site-log.ts';
import type { Settings } from '../settings.ts';
import { letInEntry, screenShown, siteKind, siteSetUp } from '../site-stream.ts';
import type { Store } from '../store/store.ts';
import { Accounts } from './accounts.ts';
import { Credentials } from './credentials.ts';
import type { By, Checked, Claim, NewCode, People, ScreenCookies, SignedIn } from './people.ts';
import type { Person, Role } from './person.ts';
import { type PersonEntry, personEntry } from './person-stream.ts';
import { PinHasher } from './pin-hash.ts';
import { alreadySetUp, nobodyOfThatId, notYourself, thatIsTheCode } from './refusals.ts';
import type { AccountReview } from './review.ts';
import { reviewAccounts } from './review-accounts.ts';
import { ADDERS, Roll } from './roll.ts';
import { RULE } from './rule.ts';
import { Screens, UNNUMBERED } from './screens.ts';
import { Sessions } from './sessions.ts';

export interface SitePeopleOptions {
  readonly log: SiteLog;
  readonly store: Store;
  readonly settings: Settings;
  /** The key from outside the database, see `pepper.ts`. */
  readonly pepper: Uint8Array;
  now(): Date;
}

/** The first person is an engineer, and nobody was there to take the id before. */
const FIRST_ID = 'e1';

interface Change {
  readonly id: string;
  readonly kind: PersonEntry;
  readonly inputs: Readonly<Record<string, string>>;
  check(): Promise<void>;
}

/** The people of the site, kept in its log and, for what is secret, beside it. */
export class SitePeople implements People {
  readonly #log: SiteLog;
  readonly #roll: Roll;
  readonly #accounts: Accounts;
  readonly #credentials: Credentials;
  readonly #sessions: Sessions;
  readonly #screens: Screens;

  constructor(options: SitePeopleOptions) {
    const { settings, pepper, log, store } = options;
    const { hashCost: cost, hashesAtOnceMax: atOnceMax, hashesWaitingMax: waitingMax } = settings;
    this.#log = log;
    this.#roll = new Roll(log);
    this.#accounts = new Accounts({
      ...options,
      hasher: new PinHasher({ cost, pepper, atOnceMax, waitingMax }),
    });
    this.#credentials = new Credentials({ ...options, roll: this.#roll, accounts: this.#accounts });
    this.#sessions = new Sessions(options);
    this.#screens = new Screens(store);
  }

  async isEmpty(): Promise<boolean> {
    return (await this.#roll.list()).length === 0;
  }

  list(): Promise<readonly Person[]> {
    return this.#roll.list();
  }

  find(id: string): Promise<Person | undefined> {
    return this.#roll.find(id);
  }

  async verify({ who, pin, screen }: Claim & Pick<By, 'screen'>): Promise<Person> {
    const person = await this.#roll.whoIs(who);
    const kind = await this.#accounts.prove({ person, who, secret: pin, screen });
    if (kind === 'code' || person === undefined) throw thatIsTheCode();
    return person;
  }

  async signIn(claim: Claim & ScreenCookies, by: By): Promise<SignedIn> {
    const person = await this.verify({ ...claim, screen: by.screen });
    const screen = await this.#screens.recognise(claim.screen);
    const shown = await this.#shown(screen.name);
    const { id } = person;
    await this.#roll.record(
      { id, asks: { signIn: id }, entries: [personEntry(id, { kind: 'signed-in' })] },
      { ...by, person: id, screen: shown },
    );
    await this.#accounts.provedAt(id, shown);
    if (claim.session !== undefined) await this.#sessions.end(claim.session);
    const session = await this.#sessions.start({ person: id, screen: screen.name });
    return { person, session, screenToken: screen.token, screen: shown };
  }

  async signOut(session: string, by: By): Promise<void> {
    const ended = await this.#sessions.end(session);
    if (ended === undefined) return;
    const id = ended.person;
    await this.#roll.record(
      { id, asks: { signOut: id }, entries: [personEntry(id, { kind: 'signed-out' })] },
      by,
    );
  }

  async atScreen(cookies: ScreenCookies & { readonly background: boolean }) {
    const { session: token, screen, background } = cookies;
    const session = token === undefined ? undefined : await this.#sessions.find(token, { background });
    const person = session && (await this.#roll.find(session.person));
    if (session !== undefined && person !== undefined && !person.retired) {
      return { person, screen: await this.#shown(session.screen) };
    }
    const name = screen === undefined ? undefined : await this.#screens.nameOf(screen);
    return { person: null, screen: await this.#shown(name ?? UNNUMBERED) };
  }

  endsOf(session: string) {
    return this.#sessions.endsOf(session);
  }

  /** As entries and pages call it. Where the site's own stream was changed, the number alone: nobody is kept out. */
  async #shown(screen: string): Promise<string> {
    try {
      return screenShown(await this.#log.state(siteKind), screen);
    } catch (error) {
      if (error instanceof LogDamaged) return screen;
      throw error;
    }
  }

  setUp(
    first: { readonly plant: string; readonly name: string; readonly newPin: string },
    by: By,
  ): Promise<Person> {
    const { plant, name, newPin: pin } = first;
    return this.#roll.inTurn(async () => {
      const id = FIRST_ID;
      await this.#credentials.refuseGuessable({ newPin: pin, who: { id, name } });
      const site = siteSetUp({ plant, demo: false });
      const added = addedWithPin({ id, name, role: 'engineer', how: 'set up this site' });
      const entries = [site, ...added, personEntry(id, { kind: 'rule-accepted', inputs: { rule: RULE } })];
      const asks = { setUp: plant, name };
      await this.#roll.record(
        { id, asks, entries, check: () => this.#refuseNotEmpty() },
        { ...by, person: id },
      );
      return await this.#credentials.giveFirstPin({ id, pin }, by);
    });
  }

  async setUpDemo(plant: string, by: By): Promise<void> {
    const entries = [siteSetUp({ plant, demo: true })];
    await this.#roll.record(
      { id: '', asks: { setUpDemo: plant }, entries, check: () => this.#refuseNotEmpty() },
      by,
    );
  }

  async add(who: Checked & { readonly name: string; readonly role: Role }, by: By): Promise<NewCode> {
    const { name, role, identityCheckedHow } = who;
    return await this.#roll.inTurn(async () => {
      const next = await this.#roll.nextId(role);
      const { id } = await this.#roll.record(
        {
          id: next,
          asks: { add: name, role },
          entries: [personEntry(next, { kind: 'person-added', inputs: { name, role, identityCheckedHow } })],
          check: () => this.#roll.refuseUsedName(name),
        },
        by,
      );
      return await this.#credentials.newCode(id, by);
    });
  }

  async addWithPin(
    who: { readonly name: string; readonly role: Role; readonly pin: string },
    by: By,
  ): Promise<Person> {
    const { name, role, pin } = who;
    const done = await this.#roll.inTurn(async () => {
      const id = await this.#roll.nextId(role);
      await this.#credentials.refuseGuessable({ newPin: pin, who: { id, name } });
      const entries = addedWithPin({ id, name, role, how: 'demo plant' });
      const check = () => this.#roll.refuseUsedName(name);
      return await this.#roll.record({ id, asks: { addWithPin: name, role }, entries, check }, by);
    });
    // After its turn, so that as many are hashed at once as may be.
    return await this.#credentials.giveFirstPin({ id: done.id, pin }, by);
  }

  async giveCode(who: Checked & { readonly id: string }, by: By): Promise<NewCode> {
    const { id, identityCheckedHow } = who;
    return await this.#roll.inTurn(async () => {
      const entries = [personEntry(id, { kind: 'code-given', inputs: { identityCheckedHow } })];
      const check = async () => {
        await this.#roll.present(id);
        refuseYourself(id, by);
      };
      await this.#roll.record({ id, asks: { giveCode: id }, entries, check }, by);
      const code = await this.#credentials.newCode(id, by);
      await this.#sessions.endAllOf(id);
      return code;
    });
  }

  async letIn(who: { readonly name: string; readonly newKey: boolean }, by: By): Promise<NewCode> {
    const { name, newKey } = who;
    const person = await this.#roll.whoIs(name);
    if (person === undefined) throw nobodyOfThatId(name);
    const { id } = person;
    const inputs = { identityCheckedHow: 'server console' };
    const entries = [letInEntry({ person: id, newKey }), personEntry(id, { kind: 'code-given', inputs })];
    await this.#roll.record({ id, asks: { letIn: id, newKey }, entries }, by);
    if (newKey) await this.#accounts.voidAll();
    await this.#sessions.endAllOf(id);
    return await this.#credentials.newCode(id, by);
  }

  async setFirstPin(
    claim: { readonly who: string; readonly code: string; readonly newPin: string },
    by: By,
  ): Promise<Person> {
    const person = await this.#roll.whoIs(claim.who);
    const { who, code: secret, newPin } = claim;
    if (person !== undefined && (await this.#credentials.isPinSet(person.id, by))) return person;
    const kind = await this.#accounts.prove({ person, who, secret, screen: by.screen });
    if (person === undefined) throw new TypeError('Nobody was proved.');
    if (kind === 'pin') throw wrongFields({ code: 'You have a PIN already. Sign in with it.' });
    await this.#credentials.setPin({ person, newPin, ruleAccepted: true }, { ...by, person: person.id });
    await this.#sessions.endAllOf(person.id);
    return person;
  }

  async changePin(
    change: { readonly id: string; readonly pin: string; readonly newPin: string },
    by: By,
  ): Promise<void> {
    const person = await this.#roll.present(change.id);
    if (await this.#credentials.isPinSet(person.id, by)) return;
    await this.verify({ who: person.id, pin: change.pin, screen: by.screen });
    if (change.pin === change.newPin) throw wrongFields({ newPin: 'This is the PIN that you have.' });
    await this.#credentials.setPin({ person, newPin: change.newPin, ruleAccepted: false }, by);
    await this.#sessions.endAllOf(person.id);
  }

  async rename(change: { readonly id: string; readonly name: string }, by: By): Promise<Person> {
    const { id, name } = change;
    const check = () => this.#roll.refuseUsedName(name, id);
    return await this.#change({ id, kind: 'person-renamed', inputs: { name }, check }, by);
  }

  async changeRole(change: { readonly id: string; readonly role: Role }, by: By): Promise<Person> {
    const { id, role } = change;
    const check = async () => {
      refuseYourself(id, by);
      if (!ADDERS.some((adder) => adder === role)) await this.#roll.refuseLastWhoAdds(id);
    };
    const person = await this.#change({ id, kind: 'role-changed', inputs: { role }, check }, by);
    await this.#sessions.endAllOf(id);
    return person;
  }

  async retire(id: string, by: By): Promise<Person> {
    const check = async () => {
      refuseYourself(id, by);
      await this.#roll.refuseLastWhoAdds(id);
    };
    const person = await this.#change({ id, kind: 'person-retired', inputs: {}, check }, by);
    await this.#accounts.remove(id);
    await this.#sessions.endAllOf(id);
    return person;
  }

  async endSessions(id: string, by: By): Promise<void> {
    await this.#roll.present(id);
    await this.#sessions.endAllOf(id);
    const entries = [personEntry(id, { kind: 'signed-out' })];
    await this.#roll.record({ id, asks: { endSessions: id }, entries }, by);
  }

  review(): Promise<readonly AccountReview[]> {
    return reviewAccounts({
      log: this.#log,
      roll: this.#roll,
      accounts: this.#accounts,
      sessions: this.#sessions,
      shown: (screen) => this.#shown(screen),
    });
  }

  screens(): Promise<readonly string[]> {
    return this.#screens.list();
  }

  async endedOwner(session: string): Promise<Person | undefined> {
    const id = await this.#sessions.endedOwner(session);
    const person = id === undefined ? undefined : await this.#roll.find(id);
    return person?.retired ? undefined : person;
  }

  /** An act on one person of the list. */
  async #change(change: Change, by: By): Promise<Person> {
    const { id, kind, inputs, check } = change;
    return await this.#roll.inTurn(async () => {
      const entries = [personEntry(id, { kind, inputs })];
      const asks = { [kind]: id, ...inputs };
      const checkAll = async () => {
        await this.#roll.present(id);
        await check();
      };
      await this.#roll.record({ id, asks, entries, check: checkAll }, by);
      return await this.#roll.known(id);
    });
  }

  async #refuseNotEmpty(): Promise<void> {
    if (!(await this.isEmpty())) throw alreadySetUp();
  }
}

function addedWithPin(of: {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly how: string;
}): readonly EntryDraft[] {
  const { id, name, role, how } = of;
  return [
    personEntry(id, { kind: 'person-added', inputs: { name, role, identityCheckedHow: how } }),
    personEntry(id, { kind: 'pin-set' }),
  ];
}

function refuseYourself(id: string, by: By): void {
  if (by.person === id) throw notYourself();
}
