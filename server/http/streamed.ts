import { Readable } from 'node:stream';

/**
 * The body of an answer that is made while it is sent: whoever waits for it sees it grow, and whoever stops waiting stops
 * its making.
 *
 * @example streamed(['tag\r\n', 'FV-101\r\n'])
 */
export function streamed(
  pieces: Iterable<string | Uint8Array> | AsyncIterable<string | Uint8Array>,
): ReadableStream {
  // Node's own type of the same stream lacks what the browsers' has.
  return Readable.toWeb(Readable.from(pieces, { objectMode: false })) as ReadableStream;
}
