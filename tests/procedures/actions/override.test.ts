import { describe, expect, test } from 'vitest';
import { auditJob } from '../../../procedures/audit.ts';
import {
  act,
  jobAt,
  OTHER_TECHNICIAN,
  playTo,
  SUPERVISOR,
  scripted,
  TECHNICIAN,
} from '../../builders/jobs.ts';
import { refusalOf } from '../../builders/refusals.ts';

const override = (outcome: string, reason: string) => ({ kind: 'override', outcome, reason }) as const;

describe('What the figures say of a stroke', () => {
  test('is judged otherwise by a supervisor, with a reason, and both judgements stand in the line (HP-41)', () => {
    const run = jobAt('asLeftVerdict');
    const draft = act(run, override('outside', 'the pointer was bent'), SUPERVISOR);
    expect(draft).toMatchObject({
      kind: 'overridden',
      inputs: { reason: 'the pointer was bent', signature: { person: SUPERVISOR.id, meaning: 'overridden' } },
      outcome: { name: 'outside', figures: { judged: 'inside' } },
    });
    expect(run.job.step).toBe('asLeftNotInside');
    expect(auditJob(run.entries, run.compiled)).toEqual([]);
  });

  test('is judged by nobody else, without a reason by nobody, and as nothing that the card does not know (HP-41)', () => {
    const run = jobAt('asLeftVerdict');
    expect(refusalOf(() => act(run, override('outside', 'mine'), TECHNICIAN)).code).toBe('HLD-002');
    expect(refusalOf(() => act(run, override('outside', 'mine'), OTHER_TECHNICIAN)).code).toBe('HLD-001');
    expect(refusalOf(() => act(run, override('outside', ' '), SUPERVISOR)).code).toBe('OVR-001');
    for (const none of ['inside', 'not enough readings', 'perfect'])
      expect(refusalOf(() => act(run, override(none, 'why not'), SUPERVISOR)).code).toBe('OVR-001');
  });

  test('is all that is judged so: that an energy is gone is shown, and nobody overrides it (HP-41)', () => {
    const run = jobAt('drainInlet');
    expect(refusalOf(() => act(run, override('shown', 'it is dry'), SUPERVISOR)).what).toBe(
      'Only the judgement of a stroke is overridden.',
    );
  });

  test('keeps the supervisor who judged it from signing the next hold', () => {
    const run = jobAt('asLeftVerdict');
    act(run, override('outside', 'the pointer was bent'), SUPERVISOR);
    act(run, { kind: 'answer', given: { choice: 'leave', reason: 'it will do' } });
    playTo(run, 'signReturn');
    expect(refusalOf(() => scripted(run)).code).toBe('HLD-002');
  });
});
