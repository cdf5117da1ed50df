import type { Auditor } from './log/auditor.ts';
import type { StreamKind } from './log/stream-kind.ts';

/** Every kind of stream that the log knows. A part adds its own here, and nowhere else. */
export const streamKinds: readonly StreamKind<unknown>[] = [];

/** What more than the chain must hold of a stream, checked by `npm run verify`. */
export const auditors: readonly Auditor[] = [];
