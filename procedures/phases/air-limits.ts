import type { Step } from '../vocabulary.ts';
import { AIR_TO_ZERO } from './common.ts';

type Own = 'ventFirst' | 'ventNow' | 'haltAir';

const ways = (otherwise: Own) =>
  ({
    shown: { to: 'haltAir', sets: { signalAir: 'isolated', plug: 'seat unknown' } },
    'not shown': { to: otherwise },
    'gauge not seen alive': { to: otherwise },
    'gauge too coarse': { to: otherwise },
  }) as const;

/** What happens when test air passes its limit or the work stops under it: vent, read zero, then decide. */
export function airLimits<const Next extends string>({
  connect,
  signAgain,
  giveBack,
}: {
  readonly connect: Next;
  readonly signAgain: Next;
  readonly giveBack: Next;
}): Readonly<Record<Own, Step<Own | Next>>> {
  const phase = 'asFound';
  const makeSafe = 'ventNow';
  return {
    ventFirst: {
      ...AIR_TO_ZERO,
      kind: 'reading',
      phase,
      title: 'Vent the case now, and read zero',
      how: 'At most {testAirLimit} may stand on this case: {testAirBecause}.',
      caution: {
        word: 'danger',
        hazard: 'More air is on the case than it may have.',
        consequence: 'A case that bursts kills.',
        avoid: 'Shut the regulator and vent; stay away from the case until the gauge reads zero.',
      },
      ways: ways('ventFirst'),
      makeSafe,
    },
    ventNow: {
      ...AIR_TO_ZERO,
      kind: 'reading',
      phase,
      title: 'Bleed the regulator to zero, hands out of the yoke',
      how: 'Shown by the gauge, or by the joint at the case cracked and watched twice.',
      ways: ways('ventNow'),
      makeSafe,
    },
    haltAir: {
      kind: 'question',
      phase,
      title: 'Stopped: no air on the case, locks stay on',
      choices: {
        goOn: { label: 'Go on with test air', to: connect },
        signAgain: { label: 'Have the hold signed again', to: signAgain, sets: { workSignOff: 'none' } },
        giveBack: { label: 'Give the valve back as it is', to: giveBack },
      },
      makeSafe,
    },
  };
}
