/** The connector of a case that holds its spring: its load taken off it by held air before a screw is loosened (EI-44). */
import type { Step } from '../vocabulary.ts';
import { yesNo } from './common.ts';
import { THREAD_FREE } from './connector.ts';
import { holdAir } from './test-air.ts';

type Own = 'unloadConnector' | 'connectorLoaded' | 'connectorHeld' | 'connectorBinds' | 'partedYet';

interface Ways<Next extends string> {
  readonly phase: string;
  /** Where the air is bled off, the stems parted. */
  readonly next: Next;
  /** Where a stem goes that no air moves off its end, its connector left on. */
  readonly cannot: Next;
  readonly danger: Next;
  readonly makeSafe: Next;
}

/** Where a job goes with its stroke as found done: the spring is freed by its adjuster, or its connector on held air. */
export const TAKE_APART = {
  by: 'springHeldBy',
  ways: { adjuster: 'bleedForWork', case: 'unloadConnector' },
} as const;

/** The same after a stop under air, where the connector may be off by then. */
export const TAKE_APART_AFTER_STOP = {
  by: 'springHeldBy',
  ways: { adjuster: 'bleedForWork', case: 'partedYet' },
} as const;

/** Spring in its case: unloaded on held air, released, and what to do where it does not come free. */
export function heldConnector<const Next extends string>(
  ways: Ways<Next>,
): Readonly<Record<Own, Step<Own | Next>>> {
  return { ...unloaded(ways), ...released(ways) } as Readonly<Record<Own, Step<Own | Next>>>;
}

function unloaded<const Next extends string>({
  phase,
  next,
  cannot,
  danger,
  makeSafe,
}: Ways<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    partedYet: {
      kind: 'question',
      phase,
      title: 'Is the connector off already?',
      how: 'This case holds its spring: without air the connector carries it.',
      choices: {
        on: { label: 'It is on: its load is taken off by air first', to: 'unloadConnector' },
        off: { label: 'It is off, the plug stem is down, nothing joins the stems', to: next },
      },
      makeSafe,
    },
    unloadConnector: holdAir<Own | Next>({
      phase,
      title: 'Take the spring’s load off the connector: hold {benchSetMid}',
      how: 'This case holds its spring: without air the connector carries it. At most {testAirLimit}. Air that has moved the stem off its end carries the spring instead; then leave the regulator alone.',
      why: 'Undone under load, the connector lets the stem shoot to its stop.',
      held: 'connectorHeld',
      notHeld: 'connectorLoaded',
      danger,
      makeSafe,
    }),
    connectorLoaded: {
      kind: 'question',
      phase,
      title: 'The connector still carries the spring, or the air is not held',
      how: 'Look for the leak with soap: hose, joint, diaphragm. Stem locked: handwheel, stop or block in the yoke. No screw of the connector is loosened.',
      choices: {
        again: { label: 'Put right: hold it again', to: 'unloadConnector' },
        cannot: {
          label: 'It cannot be moved off its end: the case is let off first, as the job of its spring',
          to: cannot,
          reason: true,
          comesNext: 'spring-change',
        },
      },
      makeSafe,
    },
  };
}

function released<const Next extends string>({
  phase,
  next,
  cannot,
  makeSafe,
}: Ways<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  const moved = { signalAir: 'live', plug: 'seat unknown' } as const;
  return {
    connectorHeld: {
      kind: 'reading',
      phase,
      title: 'Release the stem connector on the held air',
      how: 'Write down the thread that stands free, for the way back. A stem that moves at the first turn still carries load: screws snug again at once. Once the connector is off the plug goes down, so that the actuator stem finds its way free when the air is bled.',
      why: 'Without air the spring drives the actuator stem to its stop: onto a plug stem that was left up, or out of a connector that is half off.',
      action: 'releaseHeldConnector',
      caution: {
        word: 'warning',
        hazard:
          'Should the air fail, the spring drives the actuator stem to its stop; the plug drops as the connector lets go.',
        consequence: 'A hand between the stems is crushed, a loose half of the connector is thrown.',
        avoid:
          'Stand beside the yoke, face out of line with stem and connector. Tools only between the stems. Nobody touches the regulator; the gauge stays in sight, let go at its first change.',
      },
      do: [
        'Block the plug stem so that it cannot drop.',
        'Loosen the screws of the connector a little, in turn.',
        'Watch whether a stem moves.',
        'Take travel pointer and connector off.',
        'Take the block away.',
        'Lower the plug stem to its end.',
      ],
      asks: [
        THREAD_FREE,
        yesNo(
          'connectorFree',
          'The connector came off by hand; the plug stem is down, nothing joins the stems',
        ),
      ],
      judge: { rule: 'allYes', with: { fields: 'connectorFree' } },
      ways: { yes: { to: next, sets: moved }, no: { to: 'connectorBinds', sets: moved } },
      makeSafe,
    },
    connectorBinds: {
      kind: 'question',
      phase,
      title: 'The connector does not come free',
      how: 'It may still carry load, or its thread has seized. No lever and no hammer while air is on. Penetrating oil, and time.',
      choices: {
        again: { label: 'Screws snug again: hold the air anew', to: 'unloadConnector' },
        cannot: {
          label: 'Screws tight again: the case is let off first, as the job of its spring',
          to: cannot,
          reason: true,
          comesNext: 'spring-change',
        },
      },
      makeSafe,
    },
  };
}
