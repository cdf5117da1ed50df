import type { Step } from '../vocabulary.ts';
import { OPERATOR, yesNo } from './common.ts';

type Own = 'consent' | 'loopManual' | 'openBypass' | 'bypassUpset' | 'noBypass' | 'haltBypass' | 'undoBypass';

/** Takes the valve out of control: operator's consent, loop in manual, flow onto the bypass while the process is held. */
export function ontoBypass<const Next extends string>({
  next,
  notStarted,
}: {
  readonly next: Next;
  readonly notStarted: Next;
}): Readonly<Record<Own, Step<Own | Next>>> {
  const phase = 'bypass';
  const makeSafe = 'haltBypass';
  return {
    consent: {
      kind: 'reading',
      phase,
      title: 'Ask the operator for the valve',
      how: 'Say what will move and how long it takes. The site permit comes first.',
      why: 'The process is upset when a valve moves that nobody expects to move.',
      asks: [
        { name: 'operator', label: OPERATOR, type: 'text' },
        yesNo('consentGiven', 'The operator gives the valve, and the permit is in hand'),
      ],
      judge: { rule: 'allYes', with: { fields: 'consentGiven' } },
      ways: { yes: { to: 'loopManual', sets: { consent: 'given' } }, no: { to: 'haltBypass' } },
      makeSafe,
    },
    loopManual: {
      kind: 'instruction',
      phase,
      title: 'Have the loop put in manual',
      action: 'setProcessForMovement',
      do: ['Have the operator put the loop of {tag} in manual.', 'Have the controller tagged.'],
      next: {
        to: { by: 'bypassLine', ways: { fitted: 'openBypass', none: 'noBypass' } },
        sets: { loop: 'manual' },
      },
      makeSafe,
    },
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
        yesNo('processHeld', 'The bypass carries the flow and the operator holds the process value'),
      ],
      judge: { rule: 'allYes', with: { fields: 'processHeld' } },
      ways: {
        yes: { to: next, sets: { bypass: 'open' } },
        no: { to: 'bypassUpset', sets: { bypass: 'open' } },
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
    noBypass: {
      kind: 'reading',
      phase,
      title: 'This line has no bypass',
      how: 'Without one the valve is only taken while the process can stand without its flow.',
      why: 'Blocking the valve in stops the flow.',
      action: 'setProcessForMovement',
      asks: [
        {
          name: 'plantState',
          label: 'What the process does meanwhile, as the operator says it',
          type: 'text',
        },
        yesNo('mayStop', 'The operator says that the flow may stop now'),
      ],
      judge: { rule: 'allYes', with: { fields: 'mayStop' } },
      ways: { yes: { to: next, sets: { bypass: 'absent' } }, no: { to: 'haltBypass' } },
      makeSafe,
    },
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
        yes: { to: notStarted, sets: { bypass: 'shut', loop: 'automatic', consent: 'none' } },
        no: { to: 'haltBypass' },
      },
      makeSafe,
    },
  };
}
