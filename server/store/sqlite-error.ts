/** SQLite's primary result codes that we tell apart (https://sqlite.org/rescode.html). */
const BUSY = 5;
const FULL = 13;
const CONSTRAINT = 19;

function primaryCode(error: unknown): number | undefined {
  if (!(error instanceof Error) || !('errcode' in error) || typeof error.errcode !== 'number')
    return undefined;
  // The low byte is the primary code, the rest says which kind of it.
  return error.errcode & 0xff;
}

export function isBusy(error: unknown): boolean {
  return primaryCode(error) === BUSY;
}

/**
 * Whether writing may go on after this failure. Full, busy and refused by a constraint leave the database as it was
 * before the batch. After anything else, a failed sync above all, nobody knows what reached the disk: the system may
 * have dropped the pages and report the next sync as good.
 */
export function mayGoOn(error: unknown): boolean {
  const code = primaryCode(error);
  return code === BUSY || code === FULL || code === CONSTRAINT;
}

/** In a technician's words, for `StorageUnavailable`. */
export function reasonOf(error: unknown): string {
  const code = primaryCode(error);
  if (code === FULL) return 'the disk is full';
  if (code === BUSY) return 'another program holds the database';
  return error instanceof Error ? error.message : String(error);
}
