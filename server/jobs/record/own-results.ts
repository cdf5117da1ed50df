import type { Guarded } from '../../../procedures/cycle-verdict.ts';
import type { Figures, Job } from '../../../procedures/job.ts';
import { OVERSHOOT_LIMIT_PERCENT } from '../../../procedures/positioner-figures.ts';
import { signedPercent } from '../view/words.ts';
import type { JobRecord } from './schema.ts';

type Result = JobRecord['results'][number];

/** Steps on which a positioner is stroked, stepped and turned back. */
const FOUND = 'strokeFound';
const LEFT = 'strokeLeft';

/**
 * What was measured of a positioner beside error and hysteresis. A row stands only where it was worked out: an older
 * revision knew none of it.
 */
export function ownResults(job: Job): readonly Result[] {
  const rows: readonly (Result | null)[] = [
    both(job, { label: 'zero, % of travel', name: 'zeroErrorPercent' }),
    both(job, { label: 'stroke too long, % of travel', name: 'spanErrorPercent' }),
    both(job, { label: 'off the straight line, % of travel', name: 'linearityPercent' }),
    deadBand(job),
    overshoot(job),
    time(job, { label: 'T63 of a tenth, s', name: 't63S' }),
    time(job, { label: 'T86 of a tenth, s', name: 't86S' }),
  ];
  return rows.filter((row) => row !== null);
}

function standing(job: Job, step: string): Figures {
  return job.answers.findLast((one) => one.step === step && !one.superseded)?.figures ?? {};
}

interface Named {
  readonly label: string;
  readonly name: string;
}

function both(job: Job, { label, name }: Named): Result | null {
  const [found, left] = [FOUND, LEFT].map((step) => standing(job, step)[name]);
  if (typeof found !== 'number' && typeof left !== 'number') return null;
  const say = (value: unknown) => (typeof value === 'number' ? signedPercent(value) : '');
  return row({ label, asFound: say(found), asLeft: say(left) });
}

function deadBand(job: Job): Result | null {
  const { deadBandPercent, limitPercent } = standing(job, 'deadBand');
  if (typeof deadBandPercent !== 'number' || typeof limitPercent !== 'number') return null;
  const verdict: Guarded = deadBandPercent <= limitPercent * (1 + 1e-9) ? 'inside' : 'outside';
  return {
    ...row({ label: 'dead band, % of the signal', asLeft: deadBandPercent.toFixed(2) }),
    leftOutside: verdict === 'outside',
    limit: String(limitPercent),
    verdict: `as left ${verdict}; limit from memory, or the sheet where that is narrower`,
  };
}

function overshoot(job: Job): Result | null {
  const { overshootPercent } = standing(job, 'stepIt');
  if (typeof overshootPercent !== 'number') return null;
  return {
    ...row({ label: 'overshoot, % of a step of a tenth', asLeft: overshootPercent.toFixed(1) }),
    leftOutside: overshootPercent > OVERSHOOT_LIMIT_PERCENT,
    limit: String(OVERSHOOT_LIMIT_PERCENT),
    verdict: 'limit by common practice, no source',
  };
}

function time(job: Job, { label, name }: Named): Result | null {
  const value = standing(job, 'stepIt')[name];
  if (typeof value !== 'number') return null;
  return { ...row({ label, asLeft: value.toFixed(2) }), verdict: 'from the step on, dead time included' };
}

function row(of: { readonly label: string; readonly asFound?: string; readonly asLeft: string }): Result {
  return { asFound: '', foundOutside: false, leftOutside: false, limit: '', verdict: '', ...of };
}
