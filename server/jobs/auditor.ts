import { auditJob } from '../../procedures/audit.ts';
import { strokeCheck } from '../../procedures/commissioning/stroke-check.ts';
import { type Compiled, compile } from '../../procedures/compile.ts';
import type { Job } from '../../procedures/job.ts';
import type { Auditor } from '../log/auditor.ts';
import { auditSignatures } from '../signing/audit-signatures.ts';
import { hashOf } from './catalogue.ts';

/** Compiled when a verifier first asks: a server that starts has no use for a second copy. */
let compiled: Compiled | undefined;
const currentHash = hashOf(strokeCheck);

/** Runs each job's lines through its machine again and holds its signatures to what was signed. A job on another revision is told apart. */
export const jobAuditor: Auditor = {
  kind: 'job',
  audit: (_stream, entries) => {
    const opened = entries[0]?.inputs as unknown as Partial<Job> | undefined;
    if (opened?.definitionHash !== currentHash) {
      return [
        {
          place: 1,
          what: `the machine of definition ${opened?.definitionHash ?? 'unknown'} is not part of this program`,
        },
      ];
    }
    compiled ??= compile(strokeCheck);
    const led = auditJob(entries, compiled).map((what) => ({
      place: Number(/^line (\d+)/.exec(what)?.[1] ?? 1),
      what,
    }));
    return [...led, ...auditSignatures(entries)];
  },
};
