import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { keepCode, runWithCode, withCode } from '../../server/compiled-code.ts';
import { compiled } from '../compiled.ts';
import { aFolder } from '../folders.ts';

/** A program that writes one word beside itself. */
const saying = (word: string) => `require('node:fs').writeFileSync(__dirname + '/said', '${word}');\n`;

function aProgram(): { readonly path: string; readonly code: string; said(): string } {
  const folder = aFolder();
  const path = join(folder, 'program.cjs');
  writeFileSync(path, saying('one'));
  keepCode(path);
  const said = () => {
    runWithCode(path);
    return readFileSync(join(folder, 'said'), 'utf8');
  };
  return { path, code: `${path}.v8`, said };
}

describe('a program with what V8 made of it in the build', () => {
  test('is not read anew', () => {
    const { path, said } = aProgram();
    expect(withCode(path).cachedDataRejected).toBe(false);
    expect(said()).toBe('one');
  });

  test('is what its text says now, also where that is as long as before', () => {
    const { path, said } = aProgram();
    writeFileSync(path, saying('two'));
    expect(withCode(path).cachedDataRejected).toBeUndefined();
    expect(said()).toBe('two');
  });

  test.each([
    ['is missing', (code: string) => rmSync(code)],
    ['is blank', (code: string) => writeFileSync(code, '')],
    [
      'has one byte that is another',
      (code: string) => {
        const bytes = readFileSync(code);
        bytes.writeUInt8(bytes.readUInt8(bytes.length - 9) ^ 1, bytes.length - 9);
        writeFileSync(code, bytes);
      },
    ],
  ])('is read from its text where what was kept %s', (_, change) => {
    const { path, code, said } = aProgram();
    change(code);
    expect(withCode(path).cachedDataRejected).toBeUndefined();
    expect(said()).toBe('one');
  });

  test('is what the server is built as', async () => {
    const program = join(await compiled('server/main.ts'), '../program.cjs');
    expect(withCode(program).cachedDataRejected).toBe(false);
    // V8 would not know where to look for it from kept code.
    expect(readFileSync(program, 'utf8')).not.toMatch(/\bimport\(/);
  });
});
