/** Two procedures of which the first hands a valve on to the second: both made of the stroke check. */
import { COMMISSIONING } from '../../procedures/commissioning/procedures.ts';
import { strokeCheck } from '../../procedures/commissioning/stroke-check.ts';
import { type Compiled, compile, proofUnder } from '../../procedures/compile.ts';
import { everyFacts } from '../../procedures/facts.ts';
import type { ServedProcedure } from '../../procedures/served-procedure.ts';
import type { Definition, Standing, TakesOver } from '../../procedures/vocabulary.ts';
import type { AnyState, ConditionId } from '../../safety/conditions.ts';

const plain: Definition = withoutPacking(strokeCheck);

/** The stroke check as it would be if it handed nothing on itself. */
function withoutPacking({ steps: { toPacking, ...steps }, ...definition }: Definition): Definition {
  const { toPackingNow: asked } = steps;
  if (toPacking?.kind !== 'end' || asked?.kind !== 'question') throw new Error('it hands on otherwise now');
  const back = { label: 'Not now: it goes back so', to: 'finalCheck' };
  return { ...definition, steps: { ...steps, toPackingNow: { ...asked, choices: { back } } } };
}

const disconnect = plain.steps.disconnectAir;
if (disconnect?.kind !== 'instruction') throw new Error('the stroke check has no such step any more');

/** A stroke check that asks, once the test air is off, whether the work goes on elsewhere. */
export const HANDS_ON: Definition = {
  ...plain,
  id: 'hands-on',
  steps: {
    ...plain.steps,
    disconnectAir: { ...disconnect, next: { ...disconnect.next, to: 'onward' } },
    onward: {
      kind: 'question',
      phase: 'airAway',
      title: 'What the readings lead to',
      makeSafe: 'haltAirAway',
      choices: {
        back: { label: 'Give it back', to: 'finalCheck' },
        repair: { label: 'Go on with the repair', to: 'handedOn', reason: true },
      },
    },
    handedOn: {
      kind: 'end',
      phase: 'airAway',
      title: 'The repair goes on',
      closes: 'handed over',
      handsOver: { procedure: 'takes-over', as: 'isolated' },
    },
  },
};

/** Every state in which the first may come to a step, under each standing of its facts. */
function standingAt(step: string, compiled: Compiled): TakesOver<string>['where'] {
  return everyFacts(compiled.facts).map((facts) => {
    const met = proofUnder(compiled, facts)?.reach.get(step) ?? new Map<ConditionId, ReadonlySet<AnyState>>();
    const standing = Object.fromEntries([...met].map(([id, states]) => [id, [...states]])) as Standing;
    const used = Object.fromEntries(compiled.facts.map((name) => [name, facts[name]]));
    return { facts: used, standing };
  });
}

/** The stroke check once more, to be begun at its return as well. */
export function takingOver(where: TakesOver<string>['where'] = []): Definition {
  return { ...plain, id: 'takes-over', takesOver: { isolated: { at: 'finalCheck', standing: {}, where } } };
}

/** The same, with some conditions otherwise. */
export function otherwise(where: TakesOver<string>['where'], standing: Standing): TakesOver<string>['where'] {
  return (where ?? []).map((one) => ({ ...one, standing: { ...one.standing, ...standing } }));
}

export function served(definition: Definition): ServedProcedure {
  const [stroke] = COMMISSIONING;
  if (stroke === undefined) throw new Error('no stroke check is served');
  return { ...stroke, definition };
}

export const COMPILED_HANDS_ON = compile(HANDS_ON);
export const STANDING = standingAt('handedOn', COMPILED_HANDS_ON);

/** A procedure that is served by this name alone, so that it may be named as the next one. */
export function servedAs(id: string): Compiled {
  return { ...COMPILED_HANDS_ON, definition: { ...HANDS_ON, id, steps: {} } };
}
