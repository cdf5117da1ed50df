/** The rod of a cylinder without spring renewed, its cap and piston off: stems parted, rod and bushing changed, joined to their mark. */
import type { Step } from '../vocabulary.ts';
import { yesNo } from './common.ts';
import { CONNECTOR_OFF, THREAD_FREE, THREAD_HOLDS } from './connector.ts';
import { finding, putRight } from './finding.ts';

export type RodRenewed =
  | 'rodFree'
  | 'rodHeld'
  | 'rodParted'
  | 'rodNew'
  | 'rodWrong'
  | 'rodIn'
  | 'rodBinds'
  | 'rodJoined'
  | 'rodThreadShort';

interface Ways<Next extends string> {
  /** The new seals. */
  readonly next: Next;
  readonly makeSafe: Next;
}

const phase = 'cylinder';

export function renewRod<const Next extends string>(
  ways: Ways<Next>,
): Readonly<Record<RodRenewed, Step<RodRenewed | Next>>> {
  return { ...parted(ways), ...changed(ways), ...joined(ways) } as Readonly<
    Record<RodRenewed, Step<RodRenewed | Next>>
  >;
}

function parted<const Next extends string>({
  next,
  makeSafe,
}: Ways<Next>): Readonly<Partial<Record<RodRenewed, Step<RodRenewed | Next>>>> {
  return {
    rodFree: {
      kind: 'reading',
      phase,
      title: 'Make sure that nothing but air ever held this rod',
      how: 'Cap and piston are off: no spring stands in the cylinder, and the rod moves by hand with the plug.',
      why: 'What is absent is recorded by a person, not assumed. A spring would drive the rod as the stems part.',
      asks: [yesNo('noSpringSeen', 'No spring, seen with a light; the rod moves by hand both ways')],
      judge: { rule: 'allYes', with: { fields: 'noSpringSeen' } },
      ways: { yes: { to: 'rodParted', sets: { spring: 'absent' } }, no: { to: 'rodHeld' } },
      makeSafe,
    },
    rodHeld: finding<RodRenewed | Next>({
      phase,
      title: 'A spring stands in it, or the rod does not move',
      how: 'A cylinder with a spring is another actuator than the sheet has: its rod stays joined here. A rod that does not move is held by its bushing, by the packing or by the plug.',
      choices: {
        again: { label: 'It moves now, no spring: look again', to: 'rodFree' },
        leave: {
          label: 'Its rod stays: new seals for now, and the sheet is put right',
          to: next,
          reason: true,
        },
      },
      makeSafe,
    }),
    rodParted: {
      kind: 'reading',
      phase,
      title: 'Release the stem connector, the plug on its seat',
      how: 'Write down what thread stands free between stem and connector: it goes back to that.',
      action: 'releaseStemConnector',
      caution: {
        word: 'warning',
        hazard: 'Plug and rod drop as the connector lets go.',
        consequence: 'A finger between the stems is crushed.',
        avoid: 'Both blocked first; tools only, no hand between the stems.',
      },
      do: [
        'Mark connector, rod and stem across their joint.',
        'Block the plug stem so that it cannot drop.',
        'Hold the rod.',
        ...CONNECTOR_OFF,
      ],
      asks: [THREAD_FREE],
      judge: { rule: 'record' },
      ways: { kept: { to: 'rodNew' } },
      makeSafe,
    },
  };
}

function changed<const Next extends string>({
  makeSafe,
}: Ways<Next>): Readonly<Partial<Record<RodRenewed, Step<RodRenewed | Next>>>> {
  return {
    rodNew: {
      kind: 'reading',
      phase,
      title: 'Take the rod out, and lay the new one beside it',
      how: 'Out through the bushing, its thread taped so that it does not cut. Rod seal, scraper and bushing are renewed with it where the manual has them.',
      action: 'workInCylinder',
      do: [
        'Put tape over the thread.',
        'Take the rod out.',
        'Lay old and new side by side.',
        'Look at the bushing, worn to one side or not.',
      ],
      asks: [
        { name: 'rodPart', label: 'Rod and bushing, by their part numbers', type: 'text' },
        yesNo('rodSame', 'Same length, thread and shoulder; straight and without a mark'),
      ],
      judge: { rule: 'allYes', with: { fields: 'rodSame' } },
      ways: { yes: { to: 'rodIn' }, no: { to: 'rodWrong' } },
      makeSafe,
    },
    rodWrong: putRight<RodRenewed | Next>({
      phase,
      title: 'It is not the right rod',
      how: 'Another length moves the stroke, another shoulder lets the piston work loose.',
      again: ['The right one is here: lay it beside the old one', 'rodNew'],
      also: { old: { label: 'The old one goes back until it is here', to: 'rodIn', reason: true } },
      stop: ['Neither goes back: stop with the cylinder open', makeSafe],
      makeSafe,
    }),
    rodIn: {
      kind: 'reading',
      phase,
      title: 'Fit the rod through its new seal and bushing',
      how: 'Its thread taped or in a sleeve, the grease of the manual on the seal. Straight in, turning a little, never hammered.',
      action: 'workInCylinder',
      do: [
        'Fit bushing, seal and scraper, lips to their air.',
        'Put the rod straight in.',
        'Take the tape off.',
      ],
      asks: [
        yesNo('rodRuns', 'It runs by hand over its whole way, no spring behind it, the seal not turned over'),
      ],
      judge: { rule: 'allYes', with: { fields: 'rodRuns' } },
      ways: { yes: { to: 'rodJoined', sets: { spring: 'absent' } }, no: { to: 'rodBinds' } },
      makeSafe,
    },
    rodBinds: putRight<RodRenewed | Next>({
      phase,
      title: 'The rod does not run freely',
      how: 'A lip turned over, a bushing that stands askew, tape left on. A seal that was cut on the thread is not used.',
      again: ['Found and put right: fit it again', 'rodIn'],
      stop: ['Not found: stop with the cylinder open', makeSafe],
      makeSafe,
    }),
  };
}

function joined<const Next extends string>({
  next,
  makeSafe,
}: Ways<Next>): Readonly<Partial<Record<RodRenewed, Step<RodRenewed | Next>>>> {
  return {
    rodJoined: {
      kind: 'reading',
      phase,
      title: 'Join the stems to their mark, by hand',
      how: 'Plug on its seat, rod brought to it. Thread as it stood free before; lock nuts against the connector. The travel scale is set anew with the valve on its seat.',
      action: 'joinFreeStems',
      do: ['Fit the connector over both threads.', 'Tighten its screws in turn.', 'Fit the travel pointer.'],
      asks: [
        {
          name: 'exposedThreadJoinedM',
          label: 'Thread of the plug stem that stands free now',
          type: 'quantity',
          dimension: 'length',
        },
        THREAD_HOLDS,
      ],
      judge: { rule: 'allYes', with: { fields: 'threadHolds' } },
      ways: { yes: { to: next }, no: { to: 'rodThreadShort' } },
      makeSafe,
    },
    rodThreadShort: putRight<RodRenewed | Next>({
      phase,
      title: 'A stem is held by too little thread',
      how: 'The connector shears off it under the first full stroke. It goes back to its mark; where the mark is right, the rod is another one than before.',
      again: ['Set to its mark: join them again', 'rodJoined'],
      also: { rod: { label: 'It is another rod: lay it beside the old one', to: 'rodNew' } },
      stop: ['Neither holds: stop with the cylinder open', makeSafe],
      makeSafe,
    }),
  };
}
