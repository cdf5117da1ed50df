import { auditJob } from '../../procedures/audit.ts';
import { type Compiled, compile } from '../../procedures/compile.ts';
import type { Job } from '../../procedures/job.ts';
import { PROCEDURES } from '../../procedures/served.ts';
import type { Auditor } from '../log/auditor.ts';
import { auditSignatures } from '../signing/audit-signatures.ts';
import { hashOf } from './catalogue.ts';

/** Compiled when a verifier first asks: a server that starts has no use for a second copy. */
const COMPILED = new Map<string, Compiled>();

function compiledOf(hash: string | undefined): Compiled | undefined {
  const known = COMPILED.get(hash ?? '');
  if (known !== undefined) return known;
  const found = PROCEDURES.find(({ definition }) => hashOf(definition) === hash);
  if (found === undefined) return undefined;
  const compiled = compile(found.definition);
  COMPILED.set(hashOf(found.definition), compiled);
  return compiled;
}

/** Runs each job's lines through its machine again and holds its signatures to what was signed. A job on another revision is told apart. */
export const jobAuditor: Auditor = {
  kind: 'job',
  audit: (_stream, entries) => {
    const opened = entries[0]?.inputs as unknown as Partial<Job> | undefined;
    const compiled = compiledOf(opened?.definitionHash);
    if (compiled === undefined) {
      return [
        {
          place: 1,
          what: `the machine of definition ${opened?.definitionHash ?? 'unknown'} is not part of this program`,
        },
      ];
    }
    const led = auditJob(entries, compiled).map((what) => ({
      place: Number(/^line (\d+)/.exec(what)?.[1] ?? 1),
      what,
    }));
    return [...led, ...auditSignatures(entries)];
  },
};
