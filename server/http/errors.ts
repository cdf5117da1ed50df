import { CalcError } from '../../procedures/calculations/calc-error.ts';
import { Refusal, type RefusalText } from '../../safety/refusal.ts';
import { LogDamaged } from '../log/chain.ts';
import { StorageUnavailable } from '../store/storage-unavailable.ts';

/** Why an act was not done, as people and programs are told. */
export interface Problem extends Omit<RefusalText, 'kind'> {
  readonly status: number;
  /** Something of ours is broken: written to the operations log. */
  readonly fault: boolean;
}

/**
 * Anything thrown, as an answer. What is not a refusal says nothing about itself to the person; it gets a number
 * under which the operations log has it.
 *
 * @param requestId the number
 */
export function problemOf(error: unknown, requestId: string): Problem {
  if (error instanceof Refusal) {
    const { kind: _, ...text } = error.text;
    return { ...text, status: error.status, fault: false };
  }
  if (error instanceof StorageUnavailable) {
    const { status, code, what, kept, next } = error;
    return { status, code, what, kept, next, fault: true };
  }
  if (error instanceof CalcError) return ofCalculation(error);
  if (error instanceof LogDamaged) return ofDamage(requestId);
  return {
    status: 500,
    code: 'SRV-001',
    what: 'Something is wrong in the server.',
    kept: 'Not confirmed as recorded. Nothing confirmed before is lost.',
    next: `Stay at this step. Tell whoever looks after the server: fault ${requestId}.`,
    fault: true,
  };
}

function ofCalculation(error: CalcError): Problem {
  const { name, range, unit } = error.detail;
  return {
    status: 422,
    code: error.code,
    what: error.message.replace(/^CALC-\d+: /, ''),
    kept: 'What you typed is kept; nothing was recorded.',
    next: 'Put the value right and send it again.',
    fields: { [name]: `Allowed: ${range}${unit === '' ? '' : ` ${unit}`}.` },
    fault: false,
  };
}

function ofDamage(requestId: string): Problem {
  return {
    status: 500,
    code: 'LOG-002',
    what: 'The log was changed outside this program, and this part of it can no longer be believed.',
    kept: 'Nothing was recorded.',
    next: `Make the work safe and stop. Tell the safety officer and whoever looks after the server: fault ${requestId}.`,
    fault: true,
  };
}

/** Nothing is served at this address. */
export function notFound(): Refusal {
  return new Refusal({
    kind: 'not-found',
    code: 'REQ-005',
    what: 'There is no page at this address.',
    kept: 'Nothing was changed.',
    next: 'Check the address, or start again from the first page.',
  });
}
