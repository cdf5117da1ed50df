import type { Step } from '../vocabulary.ts';
import { OPERATOR, yesNo } from './common.ts';

type Own = 'consent' | 'loopManual' | 'openBypass' | 'bypassUpset' | 'noBypass' | 'haltBypass' | 'undoBypass';

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
  return { ...agreed(), ...withBypass(ends), ...without(ends), ...back(ends) } as Readonly<
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
      ways: { yes: { to: 'loopManual', sets: { consent: 'given' } }, no: { to: 'haltBypass' } },
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
        no: { to: 'haltBypass' },
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
      caution: {
        word: 'warning',
        hazard: 'The flow changes as the bypass opens.',
        consequence: 'An upset process can hurt people elsewhere.',
        avoid: 'Stay on the radio with the operator all the while.',
      },
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
        no: { to: 'haltBypass' },
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
        no: { to: 'haltBypass' },
      },
      makeSafe,
    },
  };
}
