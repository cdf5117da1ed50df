import { auditJob } from '../../procedures/audit.ts';
import { type Compiled, compile } from '../../procedures/compile.ts';
import type { Job } from '../../procedures/job.ts';
import { PROCEDURES } from '../../procedures/served.ts';
import type { Definition } from '../../procedures/vocabulary.ts';
import type { Auditor } from '../log/auditor.ts';
import { streamOf } from '../log/stream-kind.ts';
import { auditSignatures } from '../signing/audit-signatures.ts';
import type { LogEntry } from '../store/store.ts';
import { hashOf, procedureKind } from './catalogue.ts';

/** Compiled when a verifier first asks: a server that starts has no use for a second copy. */
const COMPILED = new Map<string, Compiled>();

/** The definition that a job was opened on: a served one, or an older one as the log itself has it. */
function compiledOf(hash: string, stored: Definition | undefined): Compiled | undefined {
  const known = COMPILED.get(hash);
  if (known !== undefined) return known;
  const served = PROCEDURES.find(({ definition }) => hashOf(definition) === hash)?.definition;
  const isStored = stored !== undefined && hashOf(stored) === hash;
  const definition = served ?? (isStored ? stored : undefined);
  if (definition === undefined) return undefined;
  const compiled = compile(definition);
  COMPILED.set(hash, compiled);
  return compiled;
}

const hashIn = ([first]: readonly LogEntry[]): string =>
  ((first?.inputs ?? {}) as Partial<Pick<Job, 'definitionHash'>>).definitionHash ?? '';

/**
 * Runs each job's lines through its machine again and holds its signatures to what was signed. A job of an earlier
 * revision is run on that one, which the log keeps under its hash.
 */
export const jobAuditor: Auditor = {
  kind: 'job',
  needs: (entries) => streamOf(procedureKind.kind, hashIn(entries)),
  audit: (_stream, entries, [stored]) => {
    const hash = hashIn(entries);
    const compiled = compiledOf(hash, stored?.inputs as unknown as Definition | undefined);
    if (compiled === undefined) {
      return [
        {
          place: 1,
          what: `the definition ${hash || 'that it was opened on'} is neither in this program nor in the log`,
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
