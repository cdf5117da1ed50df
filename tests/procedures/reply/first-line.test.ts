import { describe, expect, test } from 'vitest';
import { readReply } from '../../../procedures/reply/read-reply.ts';
import { findTheFault } from '../../../procedures/troubleshooting/find-the-fault.ts';
import { jobOn, play } from '../../builders/answers.ts';
import { around } from '../../builders/jobs.ts';

const run = play(jobOn({ definition: findTheFault }, { place: 'line' }), { to: 'complaint' });

/** What the act would give to the card, or what stands in its way. */
function taken(text: string): object {
  const reply = readReply(text, { job: run.job, around: around(run) });
  if (reply.kind !== 'understood' || reply.act.act !== 'answer') return { kind: reply.kind };
  return reply.act.givens[0] ?? {};
}

const full = { outputPercent: '100 %', signalSeenPa: '12 psi' };

describe('The first line of a complaint, as people write it', () => {
  test.each([
    ['does not move, controller 100 %, 12 psi at the valve', { symptom: 'doesNotMove', ...full }],
    ['controller 100 %, 12 psi at the valve', full],
    ['controller full, 12 psi at the valve', full],
    ['12 psi at the valve for 15 psi from the controller', full],
    ['stuck, output 15 psi, 12 psi at the valve', { symptom: 'doesNotMove', ...full }],
    ["it won't move, controller is full, 12 psi at the valve", { symptom: 'doesNotMove', ...full }],
    ['controller 9 psi', { outputPercent: '50 %' }],
    ['hunting', { symptom: 'hunts' }],
    ['slow', { symptom: 'slow' }],
    ['it sticks and then jumps, stem 50 %', { symptom: 'sticksThenJumps', openedM: '50 %' }],
    ['leaks by', { symptom: 'passesWhenShut' }],
    ['gland leaks', { symptom: 'leaksAtPacking' }],
    ['flow wrong', { symptom: 'flowWrong' }],
    [
      'poor control, output 60 %, stem 40 %',
      { symptom: 'controlsPoorly', outputPercent: '60 %', openedM: '40 %' },
    ],
    ['output 60 %, 40 % open', { outputPercent: '60 %', openedM: '40 %' }],
  ])('%s', (text, given) => {
    expect(taken(text)).toEqual(given);
  });

  test.each(['controller 30 psi', 'about 12 psi at the valve', 'stuck and hunting', '12 psi 13 psi 14 psi'])(
    '%s is not counted as it stands',
    (text) => {
      expect(taken(text)).toMatchObject({ kind: expect.stringMatching(/unknown|ambiguous|partial|told/) });
    },
  );
});
