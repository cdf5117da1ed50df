/** The last two acts at any valve that was taken out of control: the bypass shut, and the loop handed back. */
import type { Sets, Step } from '../vocabulary.ts';
import { OPERATOR, yesNo } from './common.ts';

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
    asks: [yesNo('bypassShut', 'Bypass shut, process value held')],
    judge: { rule: 'allYes', with: { fields: 'bypassShut' } },
    ways: {
      yes: { to: next, sets: { bypass: 'shut', processFlow: 'needs the valve' } },
      no: { to: otherwise },
    },
    makeSafe,
  };
}

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
