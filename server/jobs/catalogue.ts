import { faultsOf } from '../../procedures/check.ts';
import { type Compiled, compile } from '../../procedures/compile.ts';
import { compiledForValve, forValve } from '../../procedures/for-valve.ts';
import { handingFaults } from '../../procedures/handing-on.ts';
import type { Job } from '../../procedures/job.ts';
import type { Json } from '../../procedures/json.ts';
import { PROCEDURES } from '../../procedures/served.ts';
import type { Place, ServedProcedure } from '../../procedures/served-procedure.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import { asJson, type Definition, revisionOf } from '../../procedures/vocabulary.ts';
import { canonical } from '../log/canonical.ts';
import { sha256 } from '../log/chain.ts';
import type { SiteLog } from '../log/site-log.ts';
import type { StreamKind } from '../log/stream-kind.ts';
import type { LogEntry } from '../store/store.ts';
import { inOrder, type KeyOrder } from './key-order.ts';

/** A definition as it was when a job opened on it, kept in the log under its hash. */
export const procedureKind: StreamKind<{ readonly definition: Definition | null }> = {
  kind: 'procedure',
  initial: { definition: null },
  evolve: (state, entry) => (entry.kind === 'procedure-stored' ? { definition: definitionIn(entry) } : state),
  summarise: () => null,
};

function definitionIn({ inputs, outcome }: LogEntry): Definition {
  const { order } = outcome as { readonly order?: KeyOrder };
  return inOrder(inputs, order) as unknown as Definition;
}

export interface Served {
  readonly hash: string;
  readonly procedure: ServedProcedure;
  /** Proved when it is first asked for. Reading it throws where the definition fails its proof or its lint. */
  readonly compiled: Compiled;
}

/** What a job was opened on: which definition, for a valve that is built how. */
export type OpenedOn = Pick<Job, 'definitionHash' | 'facts'>;

export interface Offer {
  readonly id: string;
  readonly title: string;
  readonly revision: string;
  readonly place: Place;
  readonly folder: ServedProcedure['folder'];
  /** Null where the valve may have it, else why not. */
  readonly because: string | null;
}

export class Catalogue {
  readonly #byId = new Map<string, Served>();
  /** Of definitions that are served no more. */
  readonly #earlier = new Map<string, Compiled>();

  constructor(procedures: readonly ServedProcedure[] = PROCEDURES) {
    for (const procedure of procedures) this.#byId.set(procedure.definition.id, servedOf(procedure));
  }

  current(id: string): Served | undefined {
    return this.#byId.get(id);
  }

  all(): readonly Served[] {
    return [...this.#byId.values()];
  }

  /** What a job was opened on, in the words of its valve and without its proof; null where the log does not have it. */
  async definition({ definitionHash, facts }: OpenedOn, log: SiteLog): Promise<Definition | null> {
    const definition =
      this.#served(definitionHash)?.procedure.definition ??
      (await log.state(procedureKind, definitionHash)).definition;
    return definition === null ? null : forValve(definition, facts);
  }

  /**
   * The machine of an open job and its cards in the words of its valve, also of a definition that is served no more.
   * @throws Error if the log does not have it
   */
  async of({ definitionHash, facts }: OpenedOn, log: SiteLog): Promise<Compiled> {
    return compiledForValve(await this.#compiled(definitionHash, log), facts);
  }

  async #compiled(hash: string, log: SiteLog): Promise<Compiled> {
    const known = this.#served(hash)?.compiled ?? this.#earlier.get(hash);
    if (known !== undefined) return known;
    const { definition } = await log.state(procedureKind, hash);
    if (definition === null) throw new Error(`the log has no definition ${hash}`);
    const compiled = compile(definition);
    this.#earlier.set(hash, compiled);
    return compiled;
  }

  #served(hash: string): Served | undefined {
    return this.all().find((one) => one.hash === hash);
  }

  /** What this valve may have done to it, on the bench and in the line, and why not the rest. */
  offers(sheet: ValveSheet): readonly Offer[] {
    return [...this.#byId.values()].flatMap(({ procedure: { definition, folder, whyNot } }) =>
      (['bench', 'line'] as const).map((place) => ({
        id: definition.id,
        title: definition.title,
        revision: revisionOf(definition),
        place,
        folder,
        because: whyNot(sheet, place),
      })),
    );
  }
}

/**
 * Proves every procedure, one after the other with requests between, and holds each end that hands on against what the
 * other takes over. A server that has just started answers before all of it is proved; what is not proved yet is proved
 * when a job first asks for it, so that nothing unproved is ever served.
 *
 * @throws Error naming every fault of the first definition that fails
 */
export async function proveAll(procedures: readonly ServedProcedure[] = PROCEDURES): Promise<void> {
  const compiled: Compiled[] = [];
  for (const { definition } of procedures) {
    await new Promise(setImmediate);
    compiled.push(provedOnce(definition));
  }
  const faults = handingFaults(compiled);
  if (faults.length > 0) throw new Error(faults.join('; '));
}

function servedOf(procedure: ServedProcedure): Served {
  const { definition } = procedure;
  return {
    procedure,
    get hash() {
      return hashOnce(definition);
    },
    get compiled() {
      return provedOnce(definition);
    },
  };
}

const PROVED = new WeakMap<Definition, Compiled>();

/** Of the same data a proof gives the same: it is made once in a process. */
function provedOnce(definition: Definition): Compiled {
  const known = PROVED.get(definition);
  if (known !== undefined) return known;
  const compiled = compile(definition);
  const faults = faultsOf(compiled);
  if (faults.length > 0) throw new Error(`${definition.id} is not served: ${faults.join('; ')}`);
  PROVED.set(definition, compiled);
  return compiled;
}

const HASHES = new WeakMap<Definition, string>();

function hashOnce(definition: Definition): string {
  const hash = HASHES.get(definition) ?? hashOf(definition);
  HASHES.set(definition, hash);
  return hash;
}

export function hashOf(definition: Definition): string {
  return sha256(canonical(asJson(definition) as Json));
}
