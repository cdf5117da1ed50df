/** What every job frames its own cards with that takes the air off a bypassed valve, and strokes it by its own air as proof. */
import { OWN_AIR_FRONT, OWN_AIR_SAFE_AT } from './own-air.ts';
import { OWN_AIR_RETURN } from './stroked-back.ts';

interface Phase {
  readonly id: string;
  readonly title: string;
}

/** Its phases in their order, where it starts, and where nothing more has to be done to be safe. */
export function airOffFrame({
  airOn,
  airOff,
  proof,
}: {
  /** What is done while the air is still on. */
  readonly airOn: readonly Phase[];
  readonly airOff: Phase;
  readonly proof: string;
}) {
  return {
    phases: [
      ...OWN_AIR_FRONT,
      ...airOn,
      { id: 'isolate', title: 'Air off' },
      airOff,
      { id: 'airBack', title: 'Air back' },
      { id: 'proof', title: proof },
      OWN_AIR_RETURN,
    ],
    start: 'needs',
    safe: [...OWN_AIR_SAFE_AT, 'haltIsolating'],
  } as const;
}
