import type { SiteLog } from '../log/site-log.ts';
import type { Accounts } from './accounts.ts';
import { personKind } from './person-stream.ts';
import type { AccountReview } from './review.ts';
import type { Roll } from './roll.ts';
import type { Sessions } from './sessions.ts';

interface Reviewed {
  readonly log: SiteLog;
  readonly roll: Roll;
  readonly accounts: Accounts;
  readonly sessions: Sessions;
  /** What a screen is called now. */
  shown(screen: string): Promise<string>;
}

/** Every account that may be used: when it was last used, where it is open, how old its PIN is. */
export async function reviewAccounts(of: Reviewed): Promise<readonly AccountReview[]> {
  const open = await of.sessions.open();
  const present = (await of.roll.list()).filter(({ retired }) => !retired);
  return await Promise.all(
    present.map(async ({ id, name, role }) => {
      const { lastSignedInAt, pinSetAt } = await of.log.state(personKind, id);
      const codeUntil = (await of.accounts.secretOf(id))?.validUntil ?? null;
      const screens = open.filter(({ person }) => person === id).map(({ screen }) => of.shown(screen));
      const signedInAt = await Promise.all(screens);
      return { id, name, role, lastSignedInAt, pinSetAt, codeUntil, signedInAt };
    }),
  );
}
