import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { Refusal } from '../../../safety/refusal.ts';
import { type Fields, oneOf, optionalText, readFields, text } from '../../../server/http/fields.ts';

const schema = z.object({
  name: text({ called: 'the name', max: 10 }),
  note: optionalText({ called: 'the note', lines: true }).default(''),
  side: oneOf(['up', 'down']).optional(),
  points: z.array(z.string()).default([]),
});

function read(fields: Fields) {
  return readFields(schema, { fields, from: 'form' });
}

function refusalOf(fields: Fields): Refusal['text'] {
  try {
    read(fields);
  } catch (error) {
    if (error instanceof Refusal) return error.text;
  }
  throw new Error('It was not refused.');
}

describe('the fields of a form', () => {
  test('are trimmed, put into one Unicode form, and filled up', () => {
    expect(read({ name: '  Cafe\u0301 ' })).toEqual({ name: 'Café', note: '', points: [] });
  });

  test('are a list where one is wanted, be it of one', () => {
    expect(read({ name: 'a', points: 'x' }).points).toEqual(['x']);
    expect(read({ name: 'a', points: ['x', 'y'] }).points).toEqual(['x', 'y']);
  });

  test.each(['actor', 'role', 'ts', 'hash', '__proto__', 'constructor'])(
    'named %s are refused as unknown',
    (field) => {
      const fields = Object.assign(Object.create(null), { name: 'a', [field]: 'x' });
      Object.defineProperty(fields, field, { value: 'x', enumerable: true });
      expect(refusalOf(fields)).toMatchObject({ kind: 'malformed', code: 'FRM-001' });
    },
  );

  test('given twice are refused where one is wanted', () => {
    expect(refusalOf({ name: ['a', 'b'] })).toMatchObject({ kind: 'malformed', code: 'FRM-003' });
  });

  test('that are wrong are each named, with what to do', () => {
    const refused = refusalOf({ name: '', side: 'left' });
    expect(refused).toMatchObject({ kind: 'unreadable', code: 'FRM-002', what: '2 fields are not right.' });
    expect(refused.fields).toEqual({ name: 'Write the name.', side: 'Choose one of: up, down.' });
    expect(refusalOf({}).fields).toEqual({ name: 'Write the name.' });
  });

  test.each([
    ['too long', 'x'.repeat(11)],
    ['with a NUL', 'a\u0000b'],
    ['with a line break', 'a\nb'],
    ['with an escape', 'a\u001b[1m'],
    ['with turned writing', 'a\u202eb'],
    ['with half a pair', 'a\ud800'],
  ])('%s are refused', (_, name) => {
    expect(Object.keys(refusalOf({ name }).fields ?? {})).toEqual(['name']);
  });

  test('count characters as people do, and may have lines where said', () => {
    expect(read({ name: '😀'.repeat(10), note: 'a\r\nb\tc' })).toMatchObject({ note: 'a\nb\tc' });
  });

  test('of an address may be others than asked for', () => {
    const query = { name: 'a', utm: 'x' };
    expect(readFields(schema, { fields: query, from: 'address' }).name).toBe('a');
  });

  test('may be any where the form says so', () => {
    const open = z.object({ kind: z.string() }).catchall(z.string());
    expect(readFields(open, { fields: { kind: 'a', r1: '9 psi' }, from: 'form' })).toEqual({
      kind: 'a',
      r1: '9 psi',
    });
  });
});
