import type { Compiled } from '../../procedures/compile.ts';
import { shownAtHold } from '../../procedures/hold.ts';
import type { Job } from '../../procedures/job.ts';
import type { Json } from '../../procedures/json.ts';
import { canonical } from '../log/canonical.ts';
import { sha256 } from '../log/chain.ts';

/** Digest of exactly what a signer is shown; the signed line keeps both. Blank where no hold is open. */
export function shownDigest(job: Job, { definition }: Compiled): string {
  const shown = shownAtHold(job, definition);
  return shown === null ? '' : digestOfShown(shown);
}

export function digestOfShown(shown: Json): string {
  return sha256(canonical(shown));
}
