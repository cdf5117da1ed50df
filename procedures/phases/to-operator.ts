/** The last two acts at any valve that was taken out of control: the bypass shut, and the loop handed back. */
import type { Caution, Sets, Step } from '../vocabulary.ts';
import { BYPASS_SHUTS, OPERATOR, yesNo } from './common.ts';

interface Ends<Id extends string> {
  readonly phase: string;
  readonly next: Id;
  /** Where it goes on while the operator does not have the process. */
  readonly otherwise: Id;
  readonly makeSafe: Id;
}

/** The bypass shut while the operator takes the flow on the valve. */
export function bypassToValve<const Id extends string>({
  phase,
  next,
  otherwise,
  makeSafe,
}: Ends<Id>): Step<Id> {
  return {
    kind: 'reading',
    phase,
    title: 'Shut the bypass {bypassPoint} slowly',
    how: 'The operator takes the flow on {tag} and holds the process value.',
    action: 'shutBypass',
    caution: BYPASS_SHUTS,
    asks: [yesNo('bypassShut', 'Bypass shut, process value held')],
    judge: { rule: 'allYes', with: { fields: 'bypassShut' } },
    ways: {
      yes: { to: next, sets: { bypass: 'shut', processFlow: 'needs the valve' } },
      no: { to: otherwise },
    },
    makeSafe,
  };
}

/** Said wherever a valve is given back to its loop. */
export const LOOP_TAKES_IT = {
  word: 'warning',
  hazard: 'The valve moves as the loop takes it.',
  consequence: 'A finger in the yoke can be crushed.',
  avoid: 'Hands and tools out of the yoke before it is given.',
} as const satisfies Caution;

const IN_CONTROL: Sets = {
  loop: 'automatic',
  commands: 'live',
  processFlow: 'needs the valve',
  consent: 'none',
};

/** The loop handed back by name; the operator says that it controls. */
export function loopToOperator<const Id extends string>({
  how,
  phase,
  next,
  otherwise,
  makeSafe,
}: Ends<Id> & { readonly how?: string }): Step<Id> {
  return {
    kind: 'reading',
    phase,
    title: 'Give the valve back to the operator',
    ...(how === undefined ? {} : { how }),
    caution: LOOP_TAKES_IT,
    why: 'A loop that is left in manual controls nothing, and nobody sees it until the process drifts.',
    asks: [
      { name: 'takenBackBy', label: OPERATOR, type: 'text' },
      yesNo('takenBack', 'The operator has the loop back and says that it controls'),
    ],
    judge: { rule: 'allYes', with: { fields: 'takenBack' } },
    ways: { yes: { to: next, sets: IN_CONTROL }, no: { to: otherwise } },
    makeSafe,
  };
}
