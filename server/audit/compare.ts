import { checkNumber, isCheckNumberOf } from '../log/check-number.ts';
import type { Store } from '../store/store.ts';

/** What a number from paper says of this log. */
export interface Compared {
  readonly result: 'fits' | 'another entry' | 'newer than this log';
  readonly text: string;
}

/**
 * Holds a check number, and the line of the log that stands beside it on paper, against the log as it is now.
 *
 * @example await compareWithPaper(store, { line: 41, check: '7Q2M-…' }) // { result: 'fits', … }
 */
export async function compareWithPaper(
  store: Store,
  { line, check }: { readonly line: number; readonly check: string },
): Promise<Compared> {
  const { seq } = await store.head();
  if (line > seq) {
    return {
      result: 'newer than this log',
      text: `The paper speaks of line ${line}; this log ends at ${seq}. Its end was cut off, or an older backup is served.`,
    };
  }
  for await (const stored of store.lines(line)) {
    if (stored.seq !== line) break;
    if (isCheckNumberOf(check, stored.hash)) {
      return {
        result: 'fits',
        text: `It fits. ${seq - line} lines were written since; everything up to line ${line} is as it was then.`,
      };
    }
    return {
      result: 'another entry',
      text: `It does not fit: line ${line} has the check number ${checkNumber(stored.hash)} here. This is another log, or it was written anew.`,
    };
  }
  return { result: 'another entry', text: `There is no line ${line} in this log.` };
}
