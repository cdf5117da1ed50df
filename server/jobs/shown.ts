import type { Compiled } from '../../procedures/compile.ts';
import { holdEvidence } from '../../procedures/hold.ts';
import type { Job } from '../../procedures/job.ts';
import type { Json } from '../../procedures/json.ts';
import { canonical } from '../log/canonical.ts';
import { sha256 } from '../log/chain.ts';

/**
 * Digest of exactly what a signer is shown: the evidence, energy by energy, with its readings, under this
 * definition and sheet. A changed reading gives another digest, and the signature prepared on the old one fails.
 */
export function shownDigest(job: Job, { definition }: Compiled): string {
  const step = definition.steps[job.step];
  if (step?.kind !== 'hold') return '';
  const shown = {
    job: job.id,
    step: job.step,
    definition: job.definitionHash,
    sheetRevision: job.sheetRevision,
    evidence: holdEvidence(step, job),
    allows: step.allows,
  };
  return sha256(canonical(shown as unknown as Json));
}
