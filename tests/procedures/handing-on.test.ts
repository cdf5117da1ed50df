import { describe, expect, test } from 'vitest';
import { faultsOf } from '../../procedures/check.ts';
import { compile } from '../../procedures/compile.ts';
import { handingFaults } from '../../procedures/handing-on.ts';
import { printSheet } from '../../procedures/sheet-print.ts';
import type { Definition } from '../../procedures/vocabulary.ts';
import {
  COMPILED_HANDS_ON,
  HANDS_ON,
  otherwise,
  STANDING,
  servedAs,
  takingOver,
} from '../builders/handing-pair.ts';
import { withStep } from '../builders/mutants.ts';

const taking = compile(takingOver(STANDING));
/** Named on the way back, where only the gland weeps. */
const LIVE = servedAs('live-gland');

describe('[SAF-03] A procedure that goes on where another stands', () => {
  test('has no fault where it takes over in every state in which the other may leave the valve', () => {
    expect(handingFaults([COMPILED_HANDS_ON, taking, LIVE])).toEqual([]);
    expect(faultsOf(COMPILED_HANDS_ON)).toEqual([]);
    expect(faultsOf(taking)).toEqual([]);
  });

  test('is not served where it would take over in fewer states', () => {
    const fewer = otherwise(STANDING, { signalAir: ['live'] });
    const [fault] = handingFaults([COMPILED_HANDS_ON, compile(takingOver(fewer)), LIVE]);
    expect(fault).toBe('hands-on, handedOn: takes-over does not take over with Signal or test air isolated');
  });

  test('is not served where it does not take over at all', () => {
    expect(handingFaults([COMPILED_HANDS_ON, LIVE])).toEqual([
      'hands-on, handedOn: takes-over takes nothing over as isolated',
    ]);
  });

  test('is not served where an answer names a next procedure that is not there', () => {
    const { onward } = HANDS_ON.steps;
    if (onward?.kind !== 'question') throw new Error('another step');
    const [[back, first] = ['', undefined]] = Object.entries(onward.choices);
    if (first === undefined) throw new Error('no choices');
    const naming = (comesNext: string) =>
      compile(
        withStep(HANDS_ON, 'onward', {
          ...onward,
          choices: { ...onward.choices, [back]: { ...first, comesNext } },
        }),
      );
    expect(handingFaults([naming('hands-on'), taking, LIVE])).toEqual([]);
    expect(handingFaults([naming('gone'), taking, LIVE])).toEqual([
      'hands-on, onward: gone is named as the next procedure, and is not served',
    ]);
  });

  test('is proved from where it begins then: what is not shown there exposes somebody', () => {
    const live = compile(takingOver(otherwise(STANDING, { testAir: ['connected'] })));
    expect(faultsOf(live).some((fault) => fault.includes('taken over'))).toBe(true);
  });

  test('begins at a step that there is', () => {
    const definition: Definition = {
      ...takingOver(STANDING),
      takesOver: { isolated: { at: 'nowhere', standing: {} } },
    };
    expect(faultsOf({ ...taking, definition })).toContain('taken over as isolated: there is no step nowhere');
  });

  test('is come to from a question only, and never by making safe', () => {
    const { onward, finalCheck } = HANDS_ON.steps;
    if (onward?.kind !== 'question' || finalCheck?.kind !== 'reading') throw new Error('other steps');
    const byReading = { ...finalCheck, ways: { ...finalCheck.ways, no: { to: 'handedOn' } } };
    expect(faultsOf(compile(withStep(HANDS_ON, 'finalCheck', byReading)))).toContain(
      'finalCheck: only a question hands on, as handedOn does',
    );
    const byStop = { ...onward, makeSafe: 'handedOn' };
    expect(faultsOf(compile(withStep(HANDS_ON, 'onward', byStop)))).toContain(
      'onward: making safe leads to handedOn, which is no safe step',
    );
  });

  test('says on its sheet where it begins then, and the other where it leads', () => {
    expect(printSheet(taking.definition)).toContain('- Begins here where it is taken over, isolated: ');
    expect(printSheet(HANDS_ON)).toContain(
      '- End: the job closes as handed over to `takes-over`, isolated, as it stands.',
    );
  });
});
