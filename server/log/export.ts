/**
 * The log as lines of JSON, one entry a line, for people, spreadsheets and verifiers elsewhere.
 *
 * Each line is the stored text with the hash put in as its last member. So a line is checked without this program:
 * take the last member out again and the SHA-256 of what is left, as UTF-8, is the hash.
 */
import type { StoredLine } from '../store/store.ts';

const HASH = /,"hash":"([0-9a-f]{64})"\}$/;

/** @example exportLine({ bytes: '{"at":"…"}', hash: '6e34…', … }) // '{"at":"…","hash":"6e34…"}' */
export function exportLine({ bytes, hash }: StoredLine): string {
  return `${bytes.replace(/\}$/, '')},"hash":"${hash}"}`;
}

/**
 * The lines of an export, as the verifier takes them, from its text in pieces of any length. A line that was spoilt comes out as one that cannot be
 * verified, so that the verifier names it.
 */
export async function* readExport(chunks: AsyncIterable<string>): AsyncIterable<StoredLine> {
  let lineNumber = 0;
  for await (const text of splitLines(chunks)) {
    lineNumber += 1;
    if (text !== '')
      yield readExportLine(text) ?? { seq: lineNumber, stream: '', place: 0, hash: '', bytes: text };
  }
}

/** Only a line feed ends a line: Node's own line reader also ends it at U+2028, which JSON has inside texts. */
async function* splitLines(chunks: AsyncIterable<string>): AsyncIterable<string> {
  let rest = '';
  for await (const chunk of chunks) {
    const lines = (rest + chunk).split('\n');
    rest = lines.pop() ?? '';
    yield* lines;
  }
  yield rest;
}

function readExportLine(text: string): StoredLine | undefined {
  const hash = HASH.exec(text)?.[1];
  if (hash === undefined) return undefined;
  const bytes = text.replace(HASH, '}');
  try {
    const { seq, stream, place } = JSON.parse(bytes);
    if (typeof seq !== 'number' || typeof stream !== 'string' || typeof place !== 'number') return undefined;
    return { seq, stream, place, hash, bytes };
  } catch {
    // Not JSON: handed on as it is, for the verifier to name.
    return undefined;
  }
}
