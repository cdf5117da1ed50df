import type { JobInputs } from '../../procedures/evolve.ts';
import type { Json } from '../../procedures/json.ts';
import { digestOfShown } from '../jobs/shown.ts';
import type { AuditProblem } from '../log/auditor.ts';
import type { LogEntry } from '../store/store.ts';

/** What a signed page says of itself, as far as its place in the log can be held against it. */
interface Shown {
  readonly job?: string;
  readonly step?: string;
  readonly definition?: string;
  readonly newestLine?: number;
}

/**
 * Holds each signed line against what it says that its signer was shown: the digest is of that, and it speaks of this
 * job, this step, this definition and the line before. A signature that was cut out and put elsewhere does not.
 */
export function auditSignatures(entries: readonly LogEntry[]): readonly AuditProblem[] {
  const opened = entries[0]?.inputs as { readonly id?: string; readonly definitionHash?: string } | undefined;
  return entries.flatMap((entry) => {
    const { shown, step, signature } = entry.inputs as unknown as JobInputs;
    const { shownDigest } = entry.effects as { readonly shownDigest?: string };
    if (shownDigest === undefined) return [];
    const problem = (what: string) => [{ place: entry.place, what: `line ${entry.place}: ${what}` }];
    if (shown === undefined || shown === null) return problem('it does not say what its signer was shown');
    if (digestOfShown(shown as Json) !== shownDigest)
      return problem('its digest is not of what its signer was shown');
    const said = shown as unknown as Shown;
    const fits =
      said.job === opened?.id &&
      said.step === step &&
      said.definition === opened?.definitionHash &&
      said.newestLine === entry.place - 1;
    if (!fits) return problem('what its signer was shown belongs to another place');
    return signature === undefined ? problem('it names no signer') : [];
  });
}
