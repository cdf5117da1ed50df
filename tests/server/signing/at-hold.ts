/** What a person signs with, off the page that they were shown: as JSON clients and forms send it. */
import { type AnApp, type Browser, PINS } from '../an-app.ts';
import type { AtCard, Texts } from '../jobs/at-card.ts';

interface Shown {
  readonly card: { readonly shownDigest: string; readonly nonce: string };
}

export async function jsonOf<Answer>(
  app: AnApp,
  { path, as }: { readonly path: string; readonly as: Browser },
) {
  const answer = await app.get(path, { as, headers: { accept: 'application/json' } });
  return (await answer.json()) as Answer;
}

/** The fields of a signature on the page as it stands at the technician's screen. */
export async function signing(at: AtCard, of: Texts = {}): Promise<Texts> {
  const { card } = await jsonOf<Shown>(at.app, { path: `/jobs/${at.job.id}`, as: at.technician.browser });
  return {
    ...(await at.cardFields('sign')),
    signer: at.supervisor.person.id,
    pin: PINS.supervisor,
    shownDigest: card.shownDigest,
    nonce: card.nonce,
    ...of,
  };
}
