import { afterEach, beforeEach, expect, test } from 'vitest';
import { auditSignatures } from '../../../server/signing/audit-signatures.ts';
import type { LogEntry } from '../../../server/store/store.ts';
import { type AtCard, atCard } from '../jobs/at-card.ts';
import { signing } from './at-hold.ts';

let at: AtCard;
let entries: readonly LogEntry[];
beforeEach(async () => {
  at = await atCard('holdWork');
  await at.sendJson(await signing(at));
  entries = await at.app.services.log.entriesOf(`job:${at.job.id}`);
});
afterEach(() => at.close());

/** The signed line, changed by hand where it stands. */
function withSigned(change: (entry: LogEntry) => LogEntry): readonly string[] {
  const changed = entries.map((entry) => (entry.kind === 'hold-signed' ? change(entry) : entry));
  return auditSignatures(changed).map(({ what }) => what.replace(/^line \d+: /, ''));
}

const inputsOf = (entry: LogEntry) => entry.inputs as { shown: Record<string, unknown> };

test('A signature stands over what it says that its signer was shown (SA-12)', () => {
  expect(auditSignatures(entries)).toEqual([]);
  const other = { evidence: [] };
  expect(
    withSigned((entry) => ({
      ...entry,
      inputs: { ...inputsOf(entry), shown: { ...inputsOf(entry).shown, ...other } } as never,
    })),
  ).toEqual(['its digest is not of what its signer was shown']);
});

test('A signature that was put on another line, or in another job, is found (SA-12)', () => {
  expect(withSigned((entry) => ({ ...entry, place: entry.place + 1 }))).toEqual([
    'what its signer was shown belongs to another place',
  ]);
  expect(
    withSigned((entry) => ({ ...entry, inputs: { ...inputsOf(entry), step: 'signReturn' } as never })),
  ).toEqual(['what its signer was shown belongs to another place']);
  const elsewhere = entries.map((entry) =>
    entry.kind === 'job-opened'
      ? { ...entry, inputs: { ...(entry.inputs as object), id: '99' } as never }
      : entry,
  );
  expect(auditSignatures(elsewhere)).toHaveLength(1);
});

test('A signature without its page, or without its name, is found', () => {
  expect(withSigned((entry) => ({ ...entry, inputs: { step: 'holdWork' } }))).toEqual([
    'it does not say what its signer was shown',
  ]);
  const [last] = entries.slice(-1);
  if (last === undefined) throw new Error('nothing was written');
  const { signature: _, ...unnamed } = last.inputs as { signature: unknown };
  expect(withSigned((entry) => ({ ...entry, inputs: unnamed as never }))).toEqual(['it names no signer']);
});
