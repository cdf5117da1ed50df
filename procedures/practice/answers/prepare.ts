/** What takes a look of the simulated valve longest is worked out before it, in steps; the look itself then takes little. */
import type { Hub } from '../../troubleshooting/check.ts';
import type { CheckId } from '../../troubleshooting/checks.ts';
import { recordLoop } from '../loop-table.ts';
import { recording, type SimulatedValve } from '../simulated.ts';
import { recordingSound } from './control-room.ts';
import { processOf } from './look.ts';
import { stepping, strokingNow, strokingSound } from './stroke.ts';

type Prepares = (valve: SimulatedValve, hub: Hub) => Generator<void, unknown>;

/** Looks that are worked out of minutes of the valve's time. A look that is not here takes some hundredths of a second. */
const PREPARES: { readonly [C in CheckId]?: Prepares } = {
  controllerOutput: recording,
  holdInManual: recording,
  pressureDrop: recording,
  loopRecord: recordLoop,
  *trend(valve) {
    yield* recording(valve);
    yield* recordingSound(valve);
  },
  *smallStep(valve, hub) {
    const process = processOf(hub);
    yield* stepping(valve, { which: 'build', process });
    yield* stepping(valve, { which: 'sound', process });
  },
  *strokeByController(valve) {
    yield* strokingSound(valve);
    yield* strokingNow(valve);
  },
};

/**
 * Makes ready what a look is worked out of; what was made ready before takes no step.
 * @example for (const _ of preparing(valve, { check: 'trend', hub: 'in service' })) await turn()
 */
export function* preparing(
  valve: SimulatedValve,
  of: { readonly check: CheckId; readonly hub: Hub },
): Generator<void> {
  yield* PREPARES[of.check]?.(valve, of.hub) ?? [];
}
