import type { Step } from '../vocabulary.ts';
import { BYPASS_OPENS, BYPASS_SHUTS, OPERATOR, yesNo } from './common.ts';
import { putRight } from './finding.ts';

type Finding = 'notGiven' | 'loopNotHeld' | 'plantNotAgreed' | 'notTakenBack';
type Own =
  | Finding
  | 'consent'
  | 'loopManual'
  | 'openBypass'
  | 'bypassUpset'
  | 'noBypass'
  | 'haltBypass'
  | 'undoBypass';

interface Ends<Next extends string> {
  readonly next: Next;
  readonly notStarted: Next;
}

const phase = 'bypass';
const makeSafe = 'haltBypass';

/**
 * Takes the valve out of control: the operator's consent, a named watcher, the loop in manual, and the flow onto the
 * bypass while the process is held; without a bypass, what the plant does meanwhile, agreed with operations.
 */
export function ontoBypass<const Next extends string>(
  ends: Ends<Next>,
): Readonly<Record<Own, Step<Own | Next>>> {
  return { ...agreed(), ...withBypass(ends), ...without(ends), ...back(ends), ...findings() } as Readonly<
    Record<Own, Step<Own | Next>>
  >;
}

function agreed(): Readonly<Partial<Record<Own, Step<Own>>>> {
  return {
    consent: {
      kind: 'reading',
      phase,
      title: 'Ask the operator for the valve',
      how: 'Say what will move and how long it takes. The site permit comes first.',
      why: 'The process is upset when a valve moves that nobody expects to move.',
      asks: [
        { name: 'operator', label: OPERATOR, type: 'text' },
        { name: 'watchedBy', label: 'Who watches the process value meanwhile, by role', type: 'text' },
        yesNo('consentGiven', 'The operator gives the valve, and the permit is in hand'),
      ],
      judge: { rule: 'allYes', with: { fields: 'consentGiven' } },
      ways: { yes: { to: 'loopManual', sets: { consent: 'given' } }, no: { to: 'notGiven' } },
      makeSafe,
    },
    loopManual: {
      kind: 'reading',
      phase,
      title: 'Have the loop put in manual',
      how: 'What can move the valve by surprise: air that returns, a controller that changes its output, a positioner that calibrates itself or runs a part-stroke test.',
      why: 'A loop in manual keeps still while the valve is taken over. It isolates nothing.',
      action: 'setProcessForMovement',
      do: ['Have the operator put the loop of {tag} in manual.', 'Have the controller tagged.'],
      asks: [
        { name: 'loopOutput', label: 'Output that it stands at, with its unit', type: 'text' },
        yesNo('loopTagged', 'In manual, and tagged'),
        yesNo('commandsBlocked', 'Remote writes, trips and self-tests blocked, or there are none'),
      ],
      judge: { rule: 'allYes', with: { fields: 'loopTagged commandsBlocked' } },
      ways: {
        yes: {
          to: { by: 'bypassLine', ways: { fitted: 'openBypass', none: 'noBypass' } },
          sets: { loop: 'manual', commands: 'isolated' },
        },
        no: { to: 'loopNotHeld' },
      },
      makeSafe,
    },
  };
}

function withBypass<const Next extends string>({
  next,
}: Ends<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    openBypass: {
      kind: 'reading',
      phase,
      title: 'Open the bypass {bypassPoint} slowly',
      how: 'The operator holds the process value by shutting {tag} as the bypass takes the flow.',
      why: 'The bypass keeps the process going. It isolates nothing.',
      action: 'setProcessForMovement',
      caution: BYPASS_OPENS,
      do: [
        'Read the tag of the bypass valve.',
        'Open it a little at a time.',
        'Wait for the operator after each.',
      ],
      asks: [
        { name: 'bypassTag', label: 'Tag on the bypass valve', type: 'text', mustBe: 'bypassPoint' },
        { name: 'processBefore', label: 'Process value before, with its unit', type: 'text' },
        { name: 'processNow', label: 'Process value now', type: 'text' },
        { name: 'bypassPosition', label: 'How far the bypass stands open', type: 'text' },
        yesNo('processHeld', 'The bypass carries the flow and the operator holds the process value'),
      ],
      judge: { rule: 'allYes', with: { fields: 'processHeld' } },
      ways: {
        yes: { to: next, sets: { bypass: 'open', processFlow: 'set up' } },
        no: { to: 'bypassUpset', sets: { bypass: 'open', processFlow: 'needs the valve' } },
      },
      makeSafe,
    },
    bypassUpset: {
      kind: 'question',
      phase,
      title: 'The process value is not held',
      how: 'Leave the bypass where the operator wants it until it is decided.',
      choices: {
        again: { label: 'Try again, slower', to: 'openBypass' },
        stop: { label: 'Give the valve back', to: 'undoBypass' },
      },
      makeSafe,
    },
  };
}

function without<const Next extends string>({
  next,
}: Ends<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    noBypass: {
      kind: 'reading',
      phase,
      title: 'This line has no bypass',
      how: 'Without one the valve is only taken in a state of the plant that operations have agreed.',
      why: 'Blocking the valve in stops the flow.',
      action: 'setProcessForMovement',
      asks: [
        {
          name: 'plantState',
          label: 'What is agreed',
          type: 'choice',
          choices: [
            { value: 'line out', label: 'The line is out of service' },
            { value: 'set up', label: 'The process is set up for the valve to move and the flow to stop' },
            { value: 'neither', label: 'Neither' },
          ],
        },
        { name: 'plantSaid', label: 'What the process does meanwhile, as operations say it', type: 'text' },
        { name: 'plantAgreedWith', label: 'Agreed with, by role', type: 'text' },
      ],
      judge: { rule: 'oneOf', with: { field: 'plantState', good: 'line out,set up' } },
      ways: {
        yes: { to: next, sets: { bypass: 'absent', processFlow: 'set up' } },
        no: { to: 'plantNotAgreed' },
      },
      makeSafe,
    },
  };
}

function back<const Next extends string>({
  notStarted,
}: Ends<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    haltBypass: {
      kind: 'question',
      phase,
      title: 'Stopped before anything was isolated',
      how: 'The valve is still in the line and live. Leave it alone.',
      choices: {
        goOn: { label: 'Go on: ask the operator again', to: 'consent' },
        giveBack: { label: 'Give the valve back', to: 'undoBypass' },
      },
      makeSafe,
    },
    undoBypass: {
      kind: 'reading',
      phase,
      title: 'Give the valve back to the operator',
      how: 'Shut the bypass if it was opened, slowly, while the operator takes the flow on {tag}.',
      action: 'shutBypass',
      caution: BYPASS_SHUTS,
      asks: [
        { name: 'operator', label: OPERATOR, type: 'text', carried: true },
        yesNo('takenBack', 'Bypass shut, loop as the operator wants it'),
      ],
      judge: { rule: 'allYes', with: { fields: 'takenBack' } },
      ways: {
        yes: {
          to: notStarted,
          sets: {
            bypass: 'shut',
            processFlow: 'needs the valve',
            loop: 'automatic',
            commands: 'live',
            consent: 'none',
          },
        },
        no: { to: 'notTakenBack' },
      },
      makeSafe,
    },
  };
}

/** Why the valve is not had, or not taken back, and what is done about it. */
function findings(): Readonly<Record<Finding, Step<Own>>> {
  return {
    notGiven: putRight<Own>({
      phase,
      title: 'The operator does not give the valve, or the permit is not in hand',
      how: 'Ask when it may be had and what the plant needs for it: another hour, another state, somebody to watch.',
      again: ['Agreed now, permit in hand: ask again', 'consent'],
      stop: ['Not now: give the valve back as it stands', 'undoBypass'],
      makeSafe,
    }),
    loopNotHeld: putRight<Own>({
      phase,
      title: 'The loop is not in manual, or something else can still move the valve',
      how: 'A trip, a self-test or a remote write moves it under your hands. Whoever keeps the control system blocks it.',
      again: ['In manual, tagged and blocked now: look again', 'loopManual'],
      stop: ['It cannot be blocked: give the valve back', 'undoBypass'],
      makeSafe,
    }),
    plantNotAgreed: putRight<Own>({
      phase,
      title: 'The plant is not set up for the flow to stop',
      how: 'Operations say in which state of the plant it may stop, and when that is. A valve without a bypass waits for it.',
      again: ['Agreed now: write it down', 'noBypass'],
      stop: ['Not now: give the valve back', 'undoBypass'],
      makeSafe,
    }),
    notTakenBack: putRight<Own>({
      phase,
      title: 'The operator does not have the process on {tag} yet',
      how: 'Have the bypass open again as far as the operator wants it, the loop in manual. Shut it once more, slower.',
      again: ['Held again: once more, slower', 'undoBypass'],
      stop: ['It stays on the bypass for now', 'haltBypass'],
      also: { goOn: { label: 'It stays on the bypass: go on with the work', to: 'consent' } },
      makeSafe,
    }),
  };
}
