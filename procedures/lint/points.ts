import { CONDITIONS, type ConditionId } from '../../safety/conditions.ts';
import type { Definition, HoldStep, OpenStep, Way } from '../vocabulary.ts';
import { waysOf } from '../ways.ts';

const SIGN_OFFS = ['workSignOff', 'returnSignOff'] as const;

/** What makes a point one that people can rely on; and that nothing but a signed hold gives a sign-off. */
export function pointFaults(id: string, step: OpenStep): readonly string[] {
  return [...signOffFaults(id, step), ...(step.kind === 'hold' ? holdFaults(id, step) : [])];
}

/** What is needed is listed and taken in hand before anything else. */
export function startFaults({ start, steps }: Definition): readonly string[] {
  const first = steps[start];
  return first?.kind === 'instruction' && first.do.length > 1
    ? []
    : [`${start}: the first card does not list what is needed`];
}

function signOffFaults(id: string, step: OpenStep): readonly string[] {
  return waysOf(step)
    .filter(({ event, way }) => gives(way) && !(event === 'SIGN' && isStrict(step)))
    .map(({ event, outcome }) => `${id}: "${outcome ?? event}" gives a sign-off, and no signed hold does`);
}

function gives({ sets = {} }: Way<string>): boolean {
  return SIGN_OFFS.some((condition) => sets[condition] === 'given');
}

function isStrict(step: OpenStep): boolean {
  return step.kind === 'hold' && step.point === 'hold';
}

function holdFaults(id: string, step: HoldStep<string>): readonly string[] {
  const overIsolation = isOverIsolation(step);
  return [
    ...(step.criterion.trim() === '' ? [`${id}: nothing says when it is acceptable`] : []),
    ...(step.point !== 'hold' && overIsolation
      ? [`${id}: a ${step.point} stands over an isolation, where only a hold will do`]
      : []),
    ...(step.point === 'witness' && !(Number(step.noticeS) > 0)
      ? [`${id}: a witness has no time to come`]
      : []),
    ...(step.waivedBy !== undefined && overIsolation ? [`${id}: a hold over an isolation is waived`] : []),
    ...(step.readTwice ?? [])
      .filter((condition) => !step.evidence.includes(condition))
      .map((condition) => `${id}: ${condition} is read twice and not shown`),
  ];
}

/** Work is allowed by it, or an energy or a lock is shown on it. */
function isOverIsolation(step: HoldStep<string>): boolean {
  const isolating = (condition: ConditionId) => ['energy', 'lock'].includes(CONDITIONS[condition].group);
  return step.allows.length > 0 || gives(step.signed) || step.evidence.some(isolating);
}
