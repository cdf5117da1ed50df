/** What a record of the loop says of the valve, with the figures that it rests on. */
import { judgeLoop, LOOP_KINDS } from '../troubleshooting/loop-record/judge.ts';
import { readLoopCsv } from '../troubleshooting/loop-record/read-csv.ts';
import type { Judged } from './rule.ts';

/**
 * Judged as an answer to its check: a verdict is one, no verdict is "cannot tell". The table was read before.
 * @param of.kind  whether the process settles by itself; the usual one where it is not said
 */
export function judgeLoopTable(table: string, of: { readonly kind: string | undefined }): Judged {
  const { samples } = readLoopCsv(table);
  const kind = LOOP_KINDS.find((one) => one === of.kind) ?? 'settles';
  const { verdict, reason, periodS, swingPercent, regularity, halfPeriods, curveFit, relayFit, shape } =
    judgeLoop(samples, kind);
  const figures = {
    evidence: 'check',
    check: 'loopRecord',
    found: verdict === 'no verdict' ? 'cannot tell' : verdict,
    sound: verdict === 'sticks' ? 'no' : 'yes',
    value: null,
    readSigma: null,
    // Another record of the same loop is no second witness.
    gauge: 'loop record',
    gaugeAlive: null,
    loopReason: reason,
    loopKind: kind,
    loopRows: samples.length,
    loopS: samples.at(-1)?.timeS ?? 0,
    periodS,
    swingPercent,
    regularity,
    halfPeriods,
    curveFit,
    relayFit,
    shape,
  };
  return { outcome: verdict === 'no verdict' ? 'cannot tell' : 'answered', figures };
}
