import { Refusal } from '../../safety/refusal.ts';
import { mayBeCompetent } from '../../safety/sign-off.ts';
import { fingerprintOf } from '../log/chain.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { By } from '../people/people.ts';
import { personKind } from '../people/person-stream.ts';
import type { Services } from '../services.ts';
import { SIGNING_STREAM, signingKind } from './signing-stream.ts';

/**
 * Names somebody as competent to sign a hold where no supervisor can come, or takes that back. Nobody does so for
 * themselves; how their competence was seen is written down.
 *
 * @throws Refusal CMP-001 for somebody whose role cannot have it, CMP-002 for oneself or a change that is none
 */
export async function changeCompetence(
  { services, by }: { readonly services: Pick<Services, 'log'>; readonly by: By },
  change: { readonly person: string; readonly how: string | null },
): Promise<void> {
  const { person, how } = change;
  await services.log.act({
    ...by,
    fingerprint: fingerprintOf({ competence: person, how }),
    streams: [SIGNING_STREAM, streamOf('person', person)],
    decide: (read) => {
      const { role, retired } = read.state(personKind, person);
      const isNamed = read.state(signingKind).competent.some((one) => one.person === person);
      if (how !== null && (retired || !mayBeCompetent(role ?? ''))) throw cannotBe();
      if (person === by.person || (how === null && !isNamed)) throw noChange();
      const kind = how === null ? 'competence-withdrawn' : 'competence-named';
      const inputs = how === null ? { person } : { person, how };
      return {
        entries: [{ stream: SIGNING_STREAM, kind, inputs, outcome: {}, effects: {} }],
        answer: {},
      };
    },
  });
}

function cannotBe(): Refusal {
  return new Refusal({
    kind: 'not-allowed',
    code: 'CMP-001',
    what: 'Only an engineer or a technician of this site is named as competent to sign.',
    kept: 'Nothing was recorded.',
    next: 'A supervisor signs by role; the safety officer audits signatures and gives none.',
  });
}

function noChange(): Refusal {
  return new Refusal({
    kind: 'not-allowed',
    code: 'CMP-002',
    what: 'Nobody names themselves, and who is not named cannot be taken off.',
    kept: 'Nothing was recorded.',
    next: 'Ask another supervisor.',
  });
}
