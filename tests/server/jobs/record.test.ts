import { describe, expect, test } from 'vitest';
import { runs } from '../../../server/jobs/record/parts.ts';
import { recordOf } from '../../../server/jobs/record.ts';
import { checkNumber } from '../../../server/log/check-number.ts';
import type { LogEntry } from '../../../server/store/store.ts';
import {
  act,
  COMPILED,
  type JobRun,
  type Opened,
  openJob,
  playTo,
  SUPERVISOR,
  scripted,
  TECHNICIAN,
} from '../../builders/jobs.ts';
import { atPoint } from '../../builders/points.ts';
import { aSheet } from '../../builders/sheets.ts';

const NAMES = new Map([
  [TECHNICIAN.id, 'Technician 1'],
  [SUPERVISOR.id, 'Supervisor 2'],
]);
const DIGEST = 'ab'.repeat(32);
const HASH = 'cd'.repeat(32);

/** What the log keeps beside what a job is folded from. */
function logged(run: JobRun): readonly LogEntry[] {
  const chain = { stream: 'job:1', codeVersion: 'test', requestId: null };
  return run.entries.map((entry) => ({
    ...entry,
    ...chain,
    seq: entry.seq + 100,
    screen: 'screen 3',
    previousHash: HASH,
    previousInStream: HASH,
    hash: HASH,
  }));
}

function sheetsOf(run: JobRun) {
  return recordOf({
    entries: logged(run),
    compiled: COMPILED,
    names: NAMES,
    plant: 'Test plant',
    nowMs: run.nowMs,
  });
}

function at(step: string, opened?: Opened): JobRun {
  const run = openJob(opened);
  run.shownDigest = DIGEST;
  return playTo(run, step);
}

const done = at('done');
const { record, pictures } = sheetsOf(done);
const result = (label: string) => record.results.find((row) => row.label.startsWith(label));

describe('a record', () => {
  test('sets as found and as left side by side, each against its limit with the uncertainty counted in', () => {
    // 0.3 psi of friction over a 12 psi span: 2.5 % off each way, 5 % apart, 30 lbf on 100 in2.
    expect(result('largest error')).toMatchObject({ asLeft: '+2.5', limit: '5' });
    expect(result('largest error')?.asFound).toMatch(/^[+−]2\.5$/);
    expect(result('hysteresis')).toMatchObject({ asFound: '5.0', asLeft: '5.0', limit: '10' });
    expect(result('friction each way, lbf')).toMatchObject({ asFound: '30', asLeft: '30' });
    expect(result('repeatability')).toMatchObject({ asFound: '0.0', asLeft: '0.0', limit: '2' });
    expect(result('spring against bench set, psi')).toMatchObject({ limit: '0.25' });
    expect(record.conclusion).toBe('As left: inside its limits.');
  });

  test('says what two turns of the plug stem did: contact, seat load and lift', () => {
    // 1600 lbf/in x 2 turns x 1/20 in = 160 lbf; over 100 in2 1.6 psi; 0.75 - 0.10 in of lift.
    expect(result('contact with the seat')).toMatchObject({ asFound: '3.00', asLeft: '4.60' });
    expect(result('seat load')).toMatchObject({
      asFound: '0',
      asLeft: '160',
      foundOutside: true,
      leftOutside: false,
      verdict: 'as found outside, as left inside',
    });
    expect(result('lift from seat')).toMatchObject({ asFound: '0.750', asLeft: '0.650' });
    expect(record.turns.map((row) => row.value)).toEqual([
      '2 turns of 1/2-20, screwed out, so that the stem gets longer',
      expect.stringMatching(/^4\.60 psi found, 4\.60 psi expected, 0\.\d\d psi allowed either way$/),
    ]);
  });

  test('judges what was read as found by the contact found then, not by the one after the turns', () => {
    const six = (table: typeof record.asFound) => table?.rows[1]?.cells.map((cell) => cell.text);
    expect(record.asFound?.rows[0]?.cells[2]?.text).toBe('seated');
    expect(six(record.asFound)).toEqual(['6.0', '22.5', '−2.5', '27.5', '+2.5', '5.0']);
    const low = at('done', { sheet: aSheet({ seatingTurns: 4 }) });
    const { asFound, asLeft } = sheetsOf(low).record;
    // Four turns move the contact to 6.2 psi: as left 6 psi stands on the seat, as found it did not.
    expect(six(asFound)?.[2]).toBe('−2.5');
    expect(six(asLeft)?.[2]).toBe('seated');
  });

  test('calls a value that the gauge cannot tell from its limit too close for this gauge', () => {
    const run = at('asLeftNotInside', { sheet: aSheet({ errorTolerancePercent: 2.6 }) });
    const close = sheetsOf(run).record.results[0];
    expect(close?.verdict).toContain('too close for this gauge');
    expect(close?.leftOutside).toBe(false);
  });

  test('shows each hold as it stood when it was signed, energy by energy, with what it allowed', () => {
    const [work, back] = record.holds;
    expect(work).toMatchObject({
      hold: 'Hold 1',
      state: 'signed',
      screen: 'screen 3',
      check: checkNumber(DIGEST),
    });
    expect(work?.by).toBe('Supervisor 2 (P-SUPERVISOR)');
    expect(work?.at).toMatch(/^2026-11-25 \d\d:\d\d UTC$/);
    expect(work?.meaning).toMatch(
      /^Allowed: .*turn the plug stem.* at most 20\.00 psi\. Locks 41, 42, 43\. Until 2026-11-25/,
    );
    // The air was bled off and on again afterwards: the evidence is that of the hold.
    expect(work?.evidence.map(({ letter, state, was, is }) => [letter, state, was, is]).slice(0, 5)).toEqual([
      ['A', 'LOCKED 43', '19', '0 psi'],
      ['B', 'CAPPED', '7.5', '0 psi'],
      ['C', 'CONTAINED', '', '1.2 in'],
      ['D', 'LOCKED 41', '88', '0 psi'],
      ['E', 'LOCKED 42', '41', '0 psi'],
    ]);
    expect(work?.evidence.slice(6).map(({ letter, state }) => `${letter} ${state}`)).toEqual([
      'H SAFE',
      'K CLEARED',
      'S ISOLATED',
      ' SHUT',
    ]);
    expect(work?.restsOn).toMatch(/^lines 1\d\d to 1\d\d of the log$/);
    expect(work?.absent).toMatch(/^Recorded absent by P-TECHNICIAN at \d\d:\d\d: second air feed\. /);
    expect(work?.absent).toMatch(/: weight, electrical, safety function\.$/);
    expect(back?.meaning).toContain('Allowed: ');
    expect(pictures.section).toContain('<svg');
  });

  test('keeps a corrected reading struck and readable, with its reason, and judges the corrected one (SA-05, HP-44)', () => {
    const run = at('chooseWork');
    const row = run.job.answers.find((one) => one.step === 'asFoundCycle' && one.row === 2);
    const given = { signalPa: '9 psi', travelM: '46.0 %' };
    act(run, { kind: 'correct', corrects: row?.place ?? 0, given, reason: 'misread' });
    const { record: corrected } = sheetsOf(run);
    expect(corrected.departures).toMatchObject([
      { struck: '9 psi, 47.5 %', now: '9 psi, 46.0 %', reason: 'misread', person: 'P-TECHNICIAN' },
    ]);
    expect(corrected.lines.find((line) => line.place === row?.place)).toMatchObject({
      struck: true,
      reading: '9 psi, 47.5 %',
    });
    expect(corrected.results[0]?.asFound).toBe('−4.0');
  });

  test('tells of stops, pauses, holds sent back and answers with a reason', () => {
    const run = at('holdWork');
    act(run, { kind: 'send-back', reason: 'drain dribbles', disposition: 'again' }, SUPERVISOR);
    act(run, { kind: 'park', reason: 'end of shift' });
    const { record: told } = sheetsOf(run);
    expect(told.departures.map(({ what, reason }) => [what.split(':')[0], reason])).toEqual([
      ['Sent back', 'drain dribbles'],
      ['Parked at', 'end of shift'],
    ]);
    expect(told.holds[0]).toMatchObject({
      state: 'sent back',
      meaning:
        'Sent back: drain dribbles. What is done about it: shown or done again, then asked for again; not signed since',
      check: '',
    });
    expect(told.status).toBe('parked');
    const stopped = at('asFoundCycle');
    act(stopped, { kind: 'make-safe', reason: 'alarm' });
    expect(sheetsOf(stopped).record.departures).toMatchObject([{ reason: 'alarm' }]);
  });

  test('calls a witness and a review what they are, and leaves nothing blank of one that was gone past (HP-46)', () => {
    const recordAt = (run: JobRun) =>
      recordOf({
        entries: logged(run),
        compiled: run.compiled,
        names: NAMES,
        plant: 'Test plant',
        nowMs: run.nowMs,
      }).record;
    const shows = ['benchSetLow'] as const;
    const witness = atPoint({ point: 'witness', waivedBy: 'engineer', shows });
    expect(recordAt(witness).open).toContain('Witness point 1 and Hold 2 and Hold 3 not signed.');
    act(witness, { kind: 'waive', reason: 'nobody on nights' }, { id: 'p-engineer', role: 'engineer' });
    const waived = recordAt(witness);
    expect(waived.open).toContain('“Read whether the dead end held”. Hold 2 and Hold 3 not signed.');
    expect(waived.holds[0]).toMatchObject({
      hold: 'Witness point 1',
      state: 'waived',
      meaning: 'Waived, not accepted: nobody on nights. Shown: bench set, low 3.00 psi',
    });
    expect(waived.points[0]?.more).toMatch(/^P-ENGINEER \d\d:\d\d UTC: nobody on nights$/);
    expect(waived.doneBy.map(({ name }) => name)).toEqual(['Technician 1 (P-TECHNICIAN)']);
    const review = atPoint({ point: 'review', shows });
    act(review, { kind: 'go-on' });
    expect(recordAt(review).open).toContain('A review is still open.');
    const about = review.job.signing.reviews[0]?.place ?? 0;
    act(review, { kind: 'review', about }, SUPERVISOR);
    expect(recordAt(review).holds.slice(0, 2)).toMatchObject([
      { hold: 'Review 1', state: 'review asked for' },
      {
        hold: 'Review 1',
        state: 'signed',
        meaning: expect.stringMatching(/^Looked at and accepted.*Shown: /),
      },
    ]);
    expect(recordAt(review).open).not.toContain('review');
  });

  test('says plainly what is missing while the job is open, and leaves it blank (HP-46)', () => {
    const { record: open } = sheetsOf(at('contactFound'));
    expect(open.open).toContain('Hold 2 not signed. The cycle as found and as left is not complete.');
    expect(open.asFound?.rows.flatMap((row) => row.cells.slice(1).map((cell) => cell.text)).join('')).toBe(
      'turn',
    );
    expect(open.results.map((row) => row.asFound).join('')).toBe('');
    expect([open.closedAt, open.closedAs, open.takenBack]).toEqual(['', '', null]);
    expect(record.open).toBe('');
  });

  test('says of a closed job that was not adjusted that it goes back as found', () => {
    const run = at('chooseWork', { place: 'bench' });
    act(run, { kind: 'answer', given: { choice: 'leave' } });
    while (run.job.status !== 'closed') scripted(run);
    const { record: left } = sheetsOf(run);
    expect(left.asLeft).toBeNull();
    expect(left.asLeftNote).toContain('as it was found');
    expect(left.conclusion).toBe('As found: inside its limits.');
  });

  test('names the gear with its uncertainty and due date, the next person’s notes and the limits of use', () => {
    expect(record.gear[0]).toMatchObject({
      number: 'G-101',
      range: '0 to 30 psi',
      uncertainty: '0.087 psi',
      due: '2099-01-15',
      late: false,
    });
    const late = at('done');
    const entries = logged(late).map((entry) =>
      entry.kind === 'job-opened'
        ? {
            ...entry,
            inputs: JSON.parse(JSON.stringify(entry.inputs).replaceAll('2099-01-15', '2026-11-24')),
          }
        : entry,
    );
    const again = recordOf({ entries, compiled: COMPILED, names: NAMES, plant: '', nowMs: late.nowMs });
    expect(again.record.gear.every((item) => item.late)).toBe(true);
    expect(record.next).toContainEqual({ label: 'exposed stem thread', value: '0.8 in' });
    expect(record.next).toContainEqual({ label: 'notes of this job', value: 'Stem two turns longer.' });
    expect(record.limits.join(' ')).toMatch(
      /Local codes.*permit and lockout.*manual come first.*not fitness/,
    );
  });

  test('keeps each signal word with the lines that it stood before', () => {
    const moves = record.cautions.find((one) => one.hazard.startsWith('Stem and plug move'));
    const first = done.job.answers.find((one) => one.step === 'connectAir')?.place;
    expect(moves?.stoodBefore.startsWith(`stood before lines ${first} to `)).toBe(true);
    expect(runs([3, 4, 5, 9])).toBe('3 to 5, 9');
  });

  test('is made from lines, never from nothing', () => {
    const input = { entries: [], compiled: COMPILED, names: NAMES, plant: '', nowMs: 0 };
    expect(() => recordOf(input)).toThrow(TypeError);
  });

  test('says a unit once', () => {
    expect(JSON.stringify(record)).not.toMatch(/psi psi|lbf lbf|in in\b|turns turns/);
  });
});
