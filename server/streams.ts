import type { Auditor } from './log/auditor.ts';
import type { StreamKind } from './log/stream-kind.ts';
import { personKind } from './people/person-stream.ts';
import { siteKind } from './site-stream.ts';

/** Every kind of stream that the log knows. A part adds its own here, and nowhere else. */
export const streamKinds: readonly StreamKind<unknown>[] = [siteKind, personKind];

/** What more than the chain must hold of a stream, checked by `npm run verify`. */
export const auditors: readonly Auditor[] = [];
