import { beforeAll, describe, expect, test } from 'vitest';
import { canonical } from '../../../server/log/canonical.ts';
import { LogDamaged, sha256 } from '../../../server/log/chain.ts';
import { fold } from '../../../server/log/fold.ts';
import { openSqliteStore } from '../../../server/store/sqlite-store.ts';
import type { StoredLine } from '../../../server/store/store.ts';
import { aFolder } from '../../folders.ts';
import { adding, aLog, register } from './register.ts';

describe('a state from stored lines', () => {
  let lines: readonly StoredLine[];

  beforeAll(async () => {
    const store = openSqliteStore({ folder: aFolder() });
    const log = aLog(store);
    for (let added = 1; added <= 4; added += 1) await log.act(adding({ id: 'a', added }));
    lines = await store.stream('register:a');
    await log.close();
  });

  /** The line sealed anew with other fields, so that it is whole in itself. */
  function forged(index: number, fields: object): readonly StoredLine[] {
    const line = lines[index];
    if (line === undefined) throw new Error('no such line');
    const bytes = canonical({ ...JSON.parse(line.bytes), ...fields });
    return lines.with(index, { ...line, ...fields, bytes, hash: sha256(bytes) });
  }

  test('is made of all of them, and says where the last one stands', () => {
    expect(fold(register, lines)).toEqual({
      head: { place: 4, hash: lines[3]?.hash },
      state: { total: 10, numbers: [1, 2, 3, 4] },
    });
  });

  test('is not made if one is missing, or the first', () => {
    expect(() => fold(register, lines.toSpliced(1, 1))).toThrow(LogDamaged);
    expect(() => fold(register, lines.slice(1))).toThrow('the entry before it in its stream has place 0');
  });

  test('is not made if one follows another entry than the one before it', () => {
    expect(() => fold(register, forged(3, { previousInStream: 'a'.repeat(64) }))).toThrow(
      'entry 4 (register:a, place 4): it does not follow the entry before it in its stream',
    );
  });

  test('is not made if one has the place of another', () => {
    expect(() => fold(register, forged(3, { place: 3 }))).toThrow(
      'the entry before it in its stream has place 3',
    );
  });

  test('is not made if one was edited and sealed anew', () => {
    expect(() => fold(register, forged(1, { person: 't2' }))).toThrow('entry 3 (register:a, place 3)');
  });
});
