import type { Person, Role } from './person.ts';
import type { AccountReview } from './review.ts';
import type { SessionEnds } from './sessions.ts';

/** Who asks for it, and under which request: goes into the entry. */
export interface By {
  readonly requestId: string;
  readonly person: string | null;
  readonly screen: string;
}

/** A name or an id, as typed, and the PIN that proves it. */
export interface Claim {
  readonly who: string;
  readonly pin: string;
}

/** What a browser remembers of the screen that it is. */
export interface ScreenCookies {
  /** The token of the session. */
  readonly session: string | undefined;
  /** The token of the screen. */
  readonly screen: string | undefined;
}

/** A session's token, told once: it goes into the cookie and is kept nowhere. */
export interface SignedIn {
  readonly person: Person;
  readonly session: string;
  /** The screen's own token and name; a new screen gets both here. */
  readonly screenToken: string;
  readonly screen: string;
}

/** Whoever gives somebody a code has made sure who it is, and says how. */
export interface Checked {
  readonly identityCheckedHow: string;
}

/** A one-time code, told once. */
export interface NewCode {
  readonly person: Person;
  readonly code: string;
  readonly validUntil: string;
}

/**
 * The people of the site: who they are, and how they prove it. All wrong tries are counted in one place, whichever
 * door they come through, and an unknown name looks like a wrong PIN.
 */
export interface People {
  /** Nobody has been added yet. */
  isEmpty(): Promise<boolean>;
  /** All, in order of their names; retired people too, for lists of the past. */
  list(): Promise<readonly Person[]>;
  find(id: string): Promise<Person | undefined>;

  /**
   * Who a PIN belongs to, for a signature at somebody else's screen: makes no session.
   *
   * @throws Refusal PPL-001 if name and PIN do not match, PPL-002 while tries are held back, PPL-003 while too many wait
   */
  verify(claim: Claim & Pick<By, 'screen'>): Promise<Person>;
  /** @throws Refusal as `verify` does, PPL-004 if it was a one-time code */
  signIn(claim: Claim & ScreenCookies, by: By): Promise<SignedIn>;
  signOut(session: string, by: By): Promise<void>;
  /** Who is signed in at a screen, by its cookies. `background`: nobody touched it, so it does not count as somebody there. */
  atScreen(
    cookies: ScreenCookies & { readonly background: boolean },
  ): Promise<{ readonly person: Person | null; readonly screen: string }>;
  /** When a session ends by itself; nothing where it has. Asking is no touch of the screen. */
  endsOf(session: string): Promise<SessionEnds | undefined>;

  /** The first person, an engineer, and what the plant is called. @throws Refusal PPL-008 if there is somebody already */
  setUp(
    first: { readonly plant: string; readonly name: string; readonly newPin: string },
    by: By,
  ): Promise<Person>;
  /** Marks an empty site as the demo plant. @throws Refusal PPL-008 if there is somebody already */
  setUpDemo(plant: string, by: By): Promise<void>;
  /** Adds somebody and gives them a one-time code for their first sign-in. @throws Refusal PPL-005 for a name in use */
  add(who: Checked & { readonly name: string; readonly role: Role }, by: By): Promise<NewCode>;
  /** As `add`, with a PIN at once: only for the demo plant, whose PINs are told on the page that loads it. */
  addWithPin(
    who: { readonly name: string; readonly role: Role; readonly pin: string },
    by: By,
  ): Promise<Person>;
  /** A new code in the place of a forgotten PIN; also ends sessions and waits. */
  giveCode(who: Checked & { readonly id: string }, by: By): Promise<NewCode>;
  /**
   * A code from the server's own console, for whoever nobody is left to give one to. Everybody is told.
   *
   * @param who `newKey`: the key of the PINs is lost; all of them are void
   * @throws Refusal PPL-006 for a name that nobody has
   */
  letIn(who: { readonly name: string; readonly newKey: boolean }, by: By): Promise<NewCode>;
  /** The own PIN in the place of the one-time code; with it they take on the rule of signing. @throws Refusal FRM-002 for a PIN that is soon guessed */
  setFirstPin(
    claim: { readonly who: string; readonly code: string; readonly newPin: string },
    by: By,
  ): Promise<Person>;
  /** @param change `pin` is the one that holds now */
  changePin(
    change: { readonly id: string; readonly pin: string; readonly newPin: string },
    by: By,
  ): Promise<void>;
  rename(change: { readonly id: string; readonly name: string }, by: By): Promise<Person>;
  changeRole(change: { readonly id: string; readonly role: Role }, by: By): Promise<Person>;
  retire(id: string, by: By): Promise<Person>;
  /** Ends every session of a person. */
  endSessions(id: string, by: By): Promise<void>;
  /** Every account that may be used, as somebody looks it over. */
  review(): Promise<readonly AccountReview[]>;
  /** The names by number of all screens where somebody has signed in. */
  screens(): Promise<readonly string[]>;
  /** Whose session it was that ended by itself at a screen, by its cookie. */
  endedOwner(session: string): Promise<Person | undefined>;
}
