import type { FactName, Facts } from '../facts.ts';
import type { Step, Target, Way } from '../vocabulary.ts';
import { waysOf } from '../ways.ts';

type Steps = Readonly<Record<string, Step>>;

/**
 * The same steps for a procedure that is done only where one fact stands so: its branches are taken, and what cannot be
 * reached any more is left out. A procedure for valves in their line needs no proof for the bench.
 */
export function onlyWhere(
  steps: Steps,
  { fact, is, start }: { readonly fact: FactName; readonly is: Facts[FactName]; readonly start: string },
): Steps {
  const taken = Object.fromEntries(
    Object.entries(steps).map(([id, step]) => [id, withTargets(step, (to) => resolved(to, { fact, is }))]),
  );
  const reached = reachedFrom(taken, start);
  return Object.fromEntries(Object.entries(taken).filter(([id]) => reached.has(id)));
}

function resolved(
  to: Target<string>,
  { fact, is }: { readonly fact: FactName; readonly is: string },
): Target<string> {
  return typeof to === 'string' || to.by !== fact ? to : (to.ways[is] ?? '');
}

function withTargets(step: Step, change: (to: Target<string>) => Target<string>): Step {
  const way = <W extends Way<string>>(one: W): W => ({ ...one, to: change(one.to) });
  const each = <W extends Way<string>>(ways: Readonly<Record<string, W>>) =>
    Object.fromEntries(Object.entries(ways).map(([name, one]) => [name, way(one)]));
  switch (step.kind) {
    case 'end':
      return step;
    case 'instruction':
    case 'wait':
      return { ...step, next: way(step.next) };
    case 'question':
      return { ...step, choices: each(step.choices) };
    case 'hold':
      return { ...step, signed: way(step.signed), sentBack: way(step.sentBack) };
    default:
      return { ...step, ways: each(step.ways) };
  }
}

function reachedFrom(steps: Steps, start: string): ReadonlySet<string> {
  const reached = new Set([start]);
  for (const id of reached) {
    const step = steps[id];
    if (step === undefined) continue;
    for (const { way } of waysOf(step))
      for (const to of typeof way.to === 'string' ? [way.to] : Object.values(way.to.ways)) reached.add(to);
  }
  return reached;
}
