/** The air feeds of a valve that is whole again, each opened by whoever locked it. */
import type { Sets, Step, Target } from '../vocabulary.ts';
import { yesNo } from './common.ts';

type Feeds = 'supplyBack' | 'secondBack';

const AIR_RETURNS = {
  word: 'warning',
  hazard: 'The valve moves to where its signal asks as the air returns.',
  consequence: 'A finger in the yoke can be crushed.',
  avoid: 'Hands and tools out of the yoke; the operator told first.',
} as const;

/** Supply and second feed back, the joints soaped. */
export function feedsBack<const Next extends string>({
  phase,
  next,
  leaks,
  makeSafe,
}: {
  readonly phase: string;
  readonly next: Next;
  /** Where a joint that leaks leads. */
  readonly leaks: Next;
  readonly makeSafe: Next;
}): Readonly<Record<Feeds, Step<Feeds | Next>>> {
  const ways = (to: Target<Feeds | Next>, sets: Sets) => ({ yes: { to, sets }, no: { to: leaks, sets } });
  return {
    supplyBack: {
      kind: 'reading',
      phase,
      title: 'Take your lock off the supply cock {supplyPoint} and open it',
      how: 'Slowly, the gauge watched: at most {supplyWantedHigh}. Soap the joints that were apart.',
      action: 'restoreSupply',
      caution: AIR_RETURNS,
      asks: [
        {
          name: 'supplyBackPa',
          label: 'Supply gauge',
          type: 'quantity',
          dimension: 'pressure',
          gauge: 'supplyGauge',
        },
        { name: 'airToldWho', label: 'Told before the air came back, by role', type: 'text' },
        yesNo('jointsTight', 'Soaped joints are tight'),
      ],
      judge: { rule: 'allYes', with: { fields: 'jointsTight' } },
      ways: ways(
        { by: 'secondFeed', ways: { fitted: 'secondBack', none: next } },
        { supplyLock: 'off', supplyAir: 'live', signalAir: 'live' },
      ),
      makeSafe,
    },
    secondBack: {
      kind: 'reading',
      phase,
      title: 'Take your lock off the second feed {secondSupplyPoint} and open it',
      how: 'Slowly, as the first.',
      action: 'restoreSecondSupply',
      caution: AIR_RETURNS,
      asks: [
        {
          name: 'secondBackPa',
          label: 'Gauge of the second feed',
          type: 'quantity',
          dimension: 'pressure',
          gauge: 'supplyGauge',
        },
        yesNo('jointsTight', 'Soaped joints are tight'),
      ],
      judge: { rule: 'allYes', with: { fields: 'jointsTight' } },
      ways: ways(next, { secondSupplyLock: 'off', secondSupply: 'live', signalAir: 'live' }),
      makeSafe,
    },
  };
}
