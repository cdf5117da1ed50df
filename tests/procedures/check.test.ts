import { describe, expect, test } from 'vitest';
import { faultsOf, textsOf } from '../../procedures/check.ts';
import type { OpenStep } from '../../procedures/vocabulary.ts';
import { COMPILED } from '../builders/jobs.ts';
import { openSteps, withStep } from '../builders/mutants.ts';

const { definition } = COMPILED;

/** What is found when one step is changed and the proof stays as it was: the faults of its shape and texts. */
function faultsWith(id: string, change: Readonly<Record<string, unknown>>): readonly string[] {
  const step = { ...definition.steps[id], ...change } as OpenStep;
  return faultsOf({ ...COMPILED, definition: withStep(definition, id, step) });
}

describe('A definition is not served', () => {
  test.each([
    ['Undo the cap', 'undo'],
    ['Loosen the gland', 'loosen'],
    ['Lift the cover', 'lift'],
    ['Turn the handwheel', 'turn'],
    ['Open the drain', 'open'],
    ['Slacken the bolts', 'slacken'],
    ['Back off the adjuster', 'back off'],
    ['Break the joint', 'break'],
  ])('where "%s" stands on a card without an action class', (title) => {
    expect(faultsWith('rigShutIn', { title })).toContain(`rigShutIn: "${title}" needs an action class`);
    expect(faultsWith('needs', { do: [`${title}.`] }).join()).toContain('needs an action class');
  });

  test('where its first card lists nothing to take in hand (HP-33)', () => {
    expect(faultsWith('needs', { do: ['Read the maker’s manual.'] })).toEqual([
      'needs: the first card does not list what is needed',
    ]);
  });

  test('where a text names a figure that no valve has', () => {
    expect(faultsWith('needs', { how: 'Set {benchSetMiddle}.' })).toEqual([
      'needs: there is no figure {benchSetMiddle}',
    ]);
  });

  test('where a text carries a bare number or a vague word (HP-29)', () => {
    expect(faultsWith('needs', { how: 'Set 9 psi.' })).toEqual(['needs: a bare number in "Set 9 psi."']);
    expect(faultsWith('needs', { how: 'Use adequate light.' })).toEqual([
      'needs: a vague word in "Use adequate light."',
    ]);
  });

  test('where an action line does not begin with a verb of the list (HP-23)', () => {
    expect(faultsWith('needs', { do: ['Carefully read it.'] })).toContain(
      'needs: "Carefully read it." does not begin with a verb of the list',
    );
  });

  test('where a way leads to a step or a phase that is not there', () => {
    expect(faultsWith('needs', { next: { to: 'nowhere' } })).toContain('needs: there is no step nowhere');
    expect(faultsWith('done', { phase: 'gone' })).toEqual(['done: there is no phase gone']);
  });

  test('where making safe leads to a card that is not safe', () => {
    expect(faultsWith('turnStem', { makeSafe: 'contactFound' })).toEqual([
      'turnStem: making safe leads to contactFound, which is no safe step',
    ]);
  });

  test('where an outcome of its rule has no way, or a way has no outcome', () => {
    expect(faultsWith('rigBleed', { ways: { yes: { to: 'consent' } } })).toEqual([
      'rigBleed: no way for "no"',
    ]);
    const ways = { yes: { to: 'consent' }, no: { to: 'rigDoesNotBleed' }, perhaps: { to: 'needs' } };
    expect(faultsWith('rigBleed', { ways })).toEqual(['rigBleed: nothing gives "perhaps"']);
  });

  test('where a pressure on the case has no way for too much of it', () => {
    const step = definition.steps.holdForPlug;
    if (step?.kind !== 'reading') throw new Error('holdForPlug is a reading');
    const { 'above limit': _, ...ways } = step.ways;
    expect(faultsWith('holdForPlug', { ways })).toEqual(['holdForPlug: no way for "above limit"']);
  });

  test('where its rule wants a parameter that the step does not give', () => {
    expect(faultsWith('rigBleed', { judge: { rule: 'allYes' } })).toEqual([
      'rigBleed: rule allYes wants fields',
    ]);
  });

  test('[SAF-12] where an act that makes an energy worse is not recorded so, whatever came of it', () => {
    const sets = { supplyLock: 'off', supplyAir: 'live', signalAir: 'live' };
    const ways = { yes: { to: 'tellPeople', sets }, no: { to: 'haltOnAir' } };
    expect(faultsWith('supplyBack', { ways })).toEqual([
      'supplyBack: after "no" supplyLock is off',
      'supplyBack: after "no" supplyAir is live',
      'supplyBack: after "no" signalAir is live',
    ]);
    expect(faultsWith('turnStem', { ways: { kept: { to: 'contactLeft' } } })).toEqual([
      'turnStem: after "kept" signalAir is live',
      'turnStem: after "kept" plug is seat unknown',
    ]);
  });

  test('[SAF-05] where a signer is not shown every energy before work begins', () => {
    expect(faultsWith('holdWork', { evidence: ['supplyAir', 'spring'] })).toContain(
      'holdWork: the signer is not shown processInlet',
    );
    expect(faultsWith('signBench', { evidence: ['spring'] })).toEqual([
      'signBench: the signer is not shown signalAir',
    ]);
    expect(faultsWith('signReturn', { evidence: [] })).toEqual([
      'signReturn: the signer is not shown spring',
    ]);
  });
});

test('Every text that a person reads on a card is looked at', () => {
  const texts = openSteps(definition).flatMap(([, step]) => textsOf(step));
  for (const said of [
    'Hands stay outside the yoke.',
    'Turns made',
    'Set the plug on its seat',
    'Turn the plug stem, counting.',
    'Two gauges that agree are believed.',
  ])
    expect(texts).toContain(said);
});
