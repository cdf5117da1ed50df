/** What V8 made of a program in the build, kept beside it, so that a start does not have to read all of its text again. */
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, resolve } from 'node:path';
import { Script } from 'node:vm';

/** Of SHA-256 over text and code: unless both are as the build left them, the code is not looked at. */
const DIGEST_BYTES = 32;

/** @param path a program as CommonJS, which loads by `require` alone; what is made of it goes into a file beside it */
export function keepCode(path: string): void {
  const text = readFileSync(path);
  const code = scriptOf(path, text).createCachedData();
  writeFileSync(codePath(path), Buffer.concat([digestOf(text, code), code]));
}

/** Runs a program with what was kept of it. */
export function runWithCode(path: string): void {
  const run = withCode(path).runInThisContext();
  run({}, createRequire(path), path, dirname(path));
}

/** A program with what was kept of it; V8 reads its text where that is missing, was changed, or is of another V8. */
export function withCode(path: string): Script {
  const text = readFileSync(path);
  const kept = readIfThere(codePath(path));
  const code = kept.subarray(DIGEST_BYTES);
  const isAsMade = digestOf(text, code).equals(kept.subarray(0, DIGEST_BYTES));
  return scriptOf(path, text, isAsMade ? code : undefined);
}

function scriptOf(path: string, text: Buffer, cachedData?: Buffer): Script {
  return new Script(`(function (exports, require, __filename, __dirname) {${text.toString('utf8')}\n})`, {
    filename: resolve(path),
    cachedData,
  });
}

function readIfThere(path: string): Buffer {
  try {
    return readFileSync(path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return Buffer.alloc(0);
    throw error;
  }
}

const codePath = (path: string): string => `${path}.v8`;

/** V8 itself compares no more of a text than its length. */
function digestOf(text: Uint8Array, code: Uint8Array): Buffer {
  return createHash('sha256').update(text).update(code).digest();
}
