/**
 * The store could not make an act durable, so nobody was told that it was. A server answers 503 with this text.
 *
 * Whether the disk holds it after all is not always known (a sync that failed may have reached the disk);
 * that is why the advice is to send the same request again: its id keeps it from being recorded twice.
 *
 * @example
 * throw new StorageUnavailable('the disk is full', { cause: error })
 */
export class StorageUnavailable extends Error {
  override readonly name = 'StorageUnavailable';
  readonly status = 503;
  readonly code = 'STO-001';
  readonly what: string;
  readonly kept = 'Not confirmed as recorded. Nothing confirmed before is lost.';
  readonly next =
    'Stay at this step and send it again in a moment: it is never recorded twice. If it goes on, tell whoever looks after the server.';

  /** @param options with `reading`, it could not even be looked at */
  constructor(reason: string, options?: ErrorOptions & { readonly reading?: boolean }) {
    const what = `The log cannot be ${options?.reading ? 'read' : 'written'}: ${reason}.`;
    super(`STO-001: ${what}`, options);
    this.what = what;
  }
}
