import { describe, expect, test } from 'vitest';
import { backTargets } from '../../../procedures/actions/leave.ts';
import { readReply } from '../../../procedures/reply/read-reply.ts';
import { around, openJob, playTo } from '../../builders/jobs.ts';
import { atCard, inStrokeCheck } from './at-card.ts';

describe('Back', () => {
  test('means the nearest card that it is safe to go back to', () => {
    const card = inStrokeCheck('rigBleed');
    const reply = card.read('back');
    expect(reply.kind).toBe('understood');
    if (reply.kind !== 'understood') return;
    expect(reply.act).toEqual({ act: 'go-back', to: backTargets(card.job, card.around).at(-1) });
    const again = card.read(reply.said);
    expect(again).toEqual(reply);
  });

  test('names a card by the beginning of its title, and asks which where several begin so', () => {
    const card = inStrokeCheck('rigBleed');
    expect(card.read('back to get ready')).toMatchObject({ act: { act: 'go-back', to: 'needs' } });
    expect(card.read('back to read')).toMatchObject({ kind: 'ambiguous' });
    expect(card.read('back to nowhere')).toMatchObject({ kind: 'unknown' });
  });

  test('leads never where going back is not safe', () => {
    const run = playTo(openJob(), 'turnStem');
    const safe = backTargets(run.job, around(run));
    const reply = inStrokeCheck('turnStem').read('back');
    if (reply.kind === 'understood') expect(safe).toContain(reply.act.act === 'go-back' ? reply.act.to : '');
    else expect(safe).toEqual([]);
  });
});

describe('Spanish', () => {
  test('has its own words for yes, no, back, stop and not sure', () => {
    const card = inStrokeCheck('rigBleed');
    for (const [said, same] of [
      ['sí', 'yes'],
      ['Sí.', 'yes'],
      ['no', 'no'],
      ['atrás', 'back'],
      ['parar', 'stop'],
      ['dejar seguro y parar', 'stop'],
      ['no sé', 'not sure'],
    ] as const)
      expect(card.read(said), said).toEqual(card.read(same));
  });

  test('never signs a hold either', () => {
    expect(inStrokeCheck('holdWork').read('sí').kind).toBe('told');
  });
});

describe('A hold', () => {
  test.each(['yes', 'agree', 'done', 'sign', 'signed 1234', 'Yes, I sign', '0 psi', 'go on', 'ok'])(
    'is never signed by the reply "%s"',
    (text) => {
      const reply = inStrokeCheck('holdWork').read(text);
      expect(reply.kind).toBe('told');
      expect(reply).toMatchObject({ heading: expect.stringContaining('no reply can sign it') });
    },
  );

  test('keeps no way to safe shut', () => {
    const card = inStrokeCheck('holdWork');
    expect(card.read('stop')).toMatchObject({ kind: 'understood', act: { act: 'make-safe' } });
    expect(card.read('park')).toMatchObject({ kind: 'understood', act: { act: 'park' } });
    expect(card.read('back')).toMatchObject({ act: { act: 'go-back' } });
  });
});

test('a word that stops the work and begins an answer of the card is asked back', () => {
  expect(atCard('stops').read('stop')).toMatchObject({
    kind: 'ambiguous',
    choices: [
      { reply: 'Answer: Stop, and open the job again with other gauges' },
      { reply: 'Make safe and stop' },
    ],
  });
});

test('what has lapsed is proved again by reply, on the fields of the walk round', () => {
  const run = playTo(openJob(), 'contactFound');
  run.nowMs += 5 * 3_600_000;
  const card = { job: run.job, around: around(run) };
  const reply = readReply('yes', card);
  expect(['understood', 'partial']).toContain(reply.kind);
  if (reply.kind === 'understood') expect(reply.act.act).toBe('prove-again');
});

test('a reading above the limit of the case is understood and says so before it is counted', () => {
  const reply = atCard('cycle').read('25 psi 50 %');
  expect(reply).toMatchObject({ kind: 'understood' });
  expect(reply.kind === 'understood' && reply.notes.join()).toMatch(/more than the case may have/);
});

test('a wrong label is told by name and by what it is', () => {
  expect(atCard('bypass').read('HV-214A')).toMatchObject({
    kind: 'unknown',
    wrongTag: { field: 'bypassTag', typed: 'HV-214A' },
  });
  expect(atCard('bypass').read('HV-999')).toMatchObject({
    wrongTag: { field: 'bypassTag', typed: 'HV-999' },
  });
  expect(atCard('bypass').read('nonsense')).not.toHaveProperty('wrongTag');
  expect(atCard('plain').read('HV-214A')).not.toHaveProperty('wrongTag');
});

test('a job that comes back from the log, its facts in the order of their names, may still go back', () => {
  const run = playTo(openJob(), 'rigBleed');
  const sorted = Object.entries(run.job.facts).toSorted(([one], [other]) => one.localeCompare(other));
  const job = { ...run.job, facts: Object.fromEntries(sorted) as typeof run.job.facts };
  expect(backTargets(job, around(run))).toEqual(backTargets(run.job, around(run)));
  expect(backTargets(job, around(run)).length).toBeGreaterThan(0);
});
