/** Files in one download, as POSIX ustar: every system unpacks it, and it needs no package. */

/** A file whose length is known before its bytes come. */
export interface TarFile {
  readonly name: string;
  readonly bytes: number;
  content(): AsyncIterable<Uint8Array>;
}

const BLOCK = 512;

/**
 * @param at the time that the files carry
 * @throws TypeError for a name that does not fit, Error where a file gives another length than it said
 */
export async function* tarOf(files: readonly TarFile[], at: Date): AsyncIterable<Uint8Array> {
  for (const file of files) {
    yield header(file, at);
    let count = 0;
    for await (const piece of file.content()) {
      count += piece.length;
      yield piece;
    }
    if (count !== file.bytes) throw new Error(`${file.name} has ${count} bytes, not ${file.bytes}.`);
    yield new Uint8Array((BLOCK - (count % BLOCK)) % BLOCK);
  }
  yield new Uint8Array(2 * BLOCK);
}

function header({ name, bytes }: TarFile, at: Date): Uint8Array {
  if (!/^[\w.-]{1,90}$/.test(name)) throw new TypeError(`"${name}" is no name for a file of an export.`);
  const block = Buffer.alloc(BLOCK);
  const octal = (value: number, width: number): string => `${value.toString(8).padStart(width - 1, '0')}\0`;
  block.write(name, 0);
  block.write(octal(0o644, 8), 100);
  block.write(octal(0, 8), 108);
  block.write(octal(0, 8), 116);
  block.write(octal(bytes, 12), 124);
  block.write(octal(Math.floor(at.getTime() / 1000), 12), 136);
  // The sum is taken as if its own field held blanks.
  block.write('        ', 148);
  block.write('0', 156);
  block.write('ustar\0', 257);
  block.write('00', 263);
  const sum = block.reduce((total, byte) => total + byte, 0);
  block.write(`${sum.toString(8).padStart(6, '0')}\0 `, 148);
  return block;
}
