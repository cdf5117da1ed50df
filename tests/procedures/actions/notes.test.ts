import { describe, expect, test } from 'vitest';
import { auditJob } from '../../../procedures/audit.ts';
import { openFindings, shownAtHold } from '../../../procedures/hold.ts';
import { standing, workedPlace } from '../../../procedures/notes/note.ts';
import { FOUND, WHERE } from '../../../procedures/notes/words.ts';
import { act, type JobRun, jobAt, OTHER_TECHNICIAN, SUPERVISOR } from '../../builders/jobs.ts';
import { refusalOf } from '../../builders/refusals.ts';

const WORN = { found: 'worn', where: 'seat', words: '  0.3 mm deep,\n half round ' };
const RINGS = { description: 'Packing rings', number: 'P-17', quantity: '5', batch: 'B 2206' };

function note(run: JobRun, given: Readonly<Record<string, string>> = WORN): void {
  act(run, { kind: given.found === undefined ? 'note-part' : 'note-finding', given });
}

describe('A finding or a part', () => {
  test('is noted at any card and changes nothing of the work', () => {
    const run = jobAt('rigGauges');
    const before = run.job;
    note(run);
    note(run, RINGS);
    const { notes, place, seq, performers: _, ...after } = run.job;
    expect({ ...before, ...after }).toEqual(before);
    expect(notes.map((one) => one.note)).toEqual([
      { kind: 'finding', found: 'worn', where: 'seat', words: '0.3 mm deep, half round' },
      { kind: 'part', description: 'Packing rings', number: 'P-17', quantity: 5, batch: 'B 2206' },
    ]);
    expect([place, seq]).toEqual([before.place + 2, before.seq + 2]);
    expect(auditJob(run.entries, run.compiled)).toEqual([]);
  });

  test('leaves the card of another screen as it is: its answer counts, an answer to an older card does not', () => {
    const run = jobAt('rigGauges');
    const seen = run.job.place;
    note(run);
    expect(workedPlace(run.job)).toBe(seen);
    const older = { kind: 'answer', given: {}, place: seen - 1 } as Parameters<typeof act>[1];
    expect(refusalOf(() => act(run, older)).code).toBe('JOB-002');
    const given = { rigGaugePa: '9.00 psi', rigCheckPa: '62 kPa' };
    act(run, { kind: 'answer', given, place: seen } as Parameters<typeof act>[1]);
    expect(run.job.readings.rigGaugePa?.typed).toBe('9.00 psi');
    const newer = { kind: 'answer', given: {}, place: run.job.place + 1 } as Parameters<typeof act>[1];
    expect(refusalOf(() => act(run, newer)).code).toBe('JOB-002');
  });

  test('is noted while the job is parked, and takes no proof with it that was lowered by the pause', () => {
    const run = jobAt('rigGauges');
    act(run, { kind: 'park', reason: 'shift end' });
    act(run, { kind: 'note-finding', given: WORN }, OTHER_TECHNICIAN);
    act(run, { kind: 'take-up' }, OTHER_TECHNICIAN);
    expect(run.entries.at(-1)?.effects).toMatchObject({ lapses: { reason: 'handover' } });
  });

  test('bars whoever noted it from signing the next hold, like every other hand in the work', () => {
    const run = jobAt('rigGauges');
    act(run, { kind: 'note-finding', given: WORN }, SUPERVISOR);
    expect(run.job.performers).toContain(SUPERVISOR.id);
  });

  test('is refused with a message for each field that is not right, and nothing is written', () => {
    const run = jobAt('rigGauges');
    const refused = (given: Readonly<Record<string, string>>, kind: 'note-part' | 'note-finding') =>
      refusalOf(() => act(run, { kind, given }));
    expect(refused({ found: 'tired', where: '' }, 'note-finding')).toMatchObject({
      code: 'NOT-001',
      fields: { found: expect.any(String), where: expect.any(String) },
    });
    expect(refused({ found: 'other', where: 'seat' }, 'note-finding').fields).toEqual({
      words: 'Say it in words.',
    });
    expect(refused({ ...WORN, words: 'x'.repeat(401) }, 'note-finding').fields?.words).toContain('400');
    for (const quantity of ['', '0', '1.5', '-1', '1000', '2e1', 'two'])
      expect(refused({ ...RINGS, quantity }, 'note-part').fields).toHaveProperty('quantity');
    expect(refused({ quantity: '1', description: '  ' }, 'note-part').fields).toHaveProperty('description');
    expect(run.job.notes).toEqual([]);
  });

  test('is named by one of a list without doubles, and everything on it can be noted', () => {
    for (const list of [FOUND, WHERE]) expect(new Set(list.map(({ value }) => value)).size).toBe(list.length);
    const run = jobAt('rigGauges');
    for (const { value: found } of FOUND) note(run, { found, where: 'plug', words: 'seen' });
    for (const { value: where } of WHERE) note(run, { found: 'loose', where, words: 'seen' });
    expect(standing(run.job.notes, 'finding')).toHaveLength(FOUND.length + WHERE.length);
  });

  test('is shown to whoever signs the next hold, unless it is struck or was in good order', () => {
    const run = jobAt('rigGauges');
    note(run);
    note(run, { found: 'sound', where: 'plug' });
    expect(openFindings(run.job).map((one) => one.note.where)).toEqual(['seat']);
    const step = Object.entries(run.compiled.definition.steps).find(([, one]) => one.kind === 'hold');
    const shown = () => shownAtHold({ ...run.job, step: step?.[0] ?? '' }, run.compiled.definition);
    expect(shown()).toMatchObject({ findings: [{ where: 'seat', words: '0.3 mm deep, half round' }] });
    act(run, { kind: 'strike-note', about: run.job.notes[0]?.place ?? 0, reason: 'it was dirt' });
    expect(shown()).not.toHaveProperty('findings');
  });
});

describe('Striking a note', () => {
  test('keeps it readable with the reason, and it counts no more', () => {
    const run = jobAt('rigGauges');
    note(run);
    const about = run.job.place;
    expect(refusalOf(() => act(run, { kind: 'strike-note', about, reason: ' ' })).code).toBe('NOT-001');
    act(run, { kind: 'strike-note', about, reason: 'it was dirt' });
    expect(run.job.notes).toMatchObject([{ note: { where: 'seat' }, struck: { reason: 'it was dirt' } }]);
    expect(standing(run.job.notes, 'finding')).toEqual([]);
    expect(refusalOf(() => act(run, { kind: 'strike-note', about, reason: 'again' })).code).toBe('JOB-004');
    expect(auditJob(run.entries, run.compiled)).toEqual([]);
  });

  test('once the job is closed is for a supervisor or an engineer, and nothing more is noted then', () => {
    const run = jobAt('rigGauges');
    note(run);
    const about = run.job.place;
    const { job, entries } = jobAt('done', { place: 'bench' });
    const closed = { ...run, job: { ...job, notes: run.job.notes }, entries };
    expect(refusalOf(() => note(closed)).code).toBe('JOB-001');
    const strike = { kind: 'strike-note', about, reason: 'another valve' } as const;
    expect(refusalOf(() => act(closed, strike)).code).toBe('NOT-002');
    act(closed, strike, SUPERVISOR);
    expect(closed.job.notes[0]?.struck?.person).toBe(SUPERVISOR.id);
    expect(closed.job.status).toBe('closed');
  });
});
