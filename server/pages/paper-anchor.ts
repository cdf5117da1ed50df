import type { BareCall } from '../http/route.ts';
import { checkNumber } from '../log/check-number.ts';
import { shownTime } from '../shown-time.ts';
import { siteKind } from '../site-stream.ts';

/** What stands at the foot of every sheet, so that the paper is an anchor of the log. */
export interface PaperAnchor {
  readonly plant: string;
  readonly printedAt: string;
  readonly printedBy: string;
  /** The newest line of the log. */
  readonly line: number;
  readonly check: string;
}

export async function paperAnchor({
  services,
  now,
  person,
}: Pick<BareCall, 'services' | 'now' | 'person'>): Promise<PaperAnchor> {
  const { seq, hash } = await services.store.head();
  const site = await services.log.state(siteKind);
  return {
    plant: `${site.plant ?? ''}${site.demo ? ' (demo: nothing of it is true)' : ''}`,
    printedAt: shownTime(now.toISOString()),
    printedBy: person?.name ?? '',
    line: seq,
    check: checkNumber(hash),
  };
}
