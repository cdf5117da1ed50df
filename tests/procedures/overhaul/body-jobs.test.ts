import { describe, expect, test } from 'vitest';
import { auditJob } from '../../../procedures/audit.ts';
import { OVERHAUL } from '../../../procedures/overhaul/procedures.ts';
import { sayFigure } from '../../../procedures/say.ts';
import type { ServedProcedure } from '../../../procedures/served-procedure.ts';
import { jobOn, type Overrides, outcomesOf, pathOf, play, playOne } from '../../builders/answers.ts';
import { act, SUPERVISOR, sign } from '../../builders/jobs.ts';
import { refusalOf } from '../../builders/refusals.ts';
import { aSheet, aSheetOf } from '../../builders/sheets.ts';

function served(id: string): ServedProcedure {
  const found = OVERHAUL.find(({ definition }) => definition.id === id);
  if (found === undefined) throw new Error(`${id} is not served`);
  return found;
}

const SEAT = served('seat-and-plug');
const WHOLE = served('valve-overhaul');
const CASE_HELD = { springHeldBy: 'case', adjusterThread: '' };

/** Bench set as the sheet has it, a seat loaded by two turns, and what is measured on trim and bonnet. */
const GOOD = {
  benchFound: {
    benchLowUpPa: '3 psi',
    benchHighUpPa: '15 psi',
    benchHighDownPa: '15 psi',
    benchLowDownPa: '3 psi',
    benchTravelM: '0.75 in',
  },
  seatContact: { contactLeavesPa: '4.9 psi', contactTouchesPa: '4.3 psi' },
  trimLook: { runOutM: '0.02 mm', guideBoreM: '12.1 mm', guidePlugM: '12 mm' },
  bonnetOn: { bonnetTorqueNm: '60 N.m' },
  bonnetTorque: { bonnetTorqueLeftNm: '60 N.m' },
} satisfies Overrides;
const played = (procedure: ServedProcedure, overrides: Overrides = {}, to?: string) =>
  play(jobOn(procedure), { overrides: { ...GOOD, ...overrides }, ...(to === undefined ? {} : { to }) });

const EVERY = [SEAT, WHOLE].flatMap((procedure) =>
  (['line', 'bench'] as const).flatMap((place) =>
    (['adjuster', 'case'] as const).map((heldBy) => ({
      procedure,
      place,
      heldBy,
      id: procedure.definition.id,
    })),
  ),
);

describe.each(EVERY)(
  '[SAF-09] $id, $place, spring held by the $heldBy',
  ({ procedure, place, heldBy, id }) => {
    const sheet = aSheetOf(heldBy === 'case' ? CASE_HELD : {});
    const run = play(jobOn(procedure, { place, sheet }), { overrides: GOOD });
    const path = pathOf(run.job);
    const inOrder = (...steps: readonly string[]) => {
      const at = steps.map((step) => path.indexOf(step));
      expect(at, steps.join(' ')).not.toContain(-1);
      expect(at).toEqual([...at].sort((a, b) => a - b));
    };

    test('is done, with everything shut and off and the log borne out', () => {
      expect(run.job.closedAs).toBe('done');
      expect(run.job.situation.states).toMatchObject({ testAir: 'off', supplyLock: 'off', closure: 'shut' });
      expect(outcomesOf(run.job, 'asLeftVerdict')).toEqual(['inside']);
      expect(auditJob(run.entries, run.compiled)).toEqual([]);
    });

    test('goes in the order of the trade', () => {
      const parted =
        heldBy === 'case' ? ['unloadConnector', 'connectorHeld', 'bleedForWork'] : ['connectorOff'];
      inOrder('asFoundVerdict', ...parted, 'hangActuator', 'actuatorOff', 'bonnetCrack', 'bonnetOff');
      expect(path.includes('connectorOff')).toBe(heldBy === 'adjuster');
      inOrder(
        'bonnetOff',
        'packingOut',
        'stemLook',
        'trimOut',
        'trimLook',
        'lap',
        'blue',
        'cleanOut',
        'trimIn',
      );
      inOrder('trimIn', 'bonnetTorque', 'ringsIn', 'glandLoad', 'actuatorOn', 'bodyShut', 'benchFound');
      inOrder('benchFound', 'holdJoin', 'joinHeld', 'seatContact', 'settleStem', 'bleedForGland');
      inOrder('bleedForGland', 'glandAgain', 'connectProof', 'contactLeft', 'asLeftVerdict');
      if (heldBy === 'adjuster')
        inOrder('freeSpring', 'connectorOff', 'bodyShut', 'springBack', 'benchFound');
      if (place === 'line') inOrder('gasTest', 'trimOut', 'openBlocks', 'hotCheck');
    });

    test('opens the case only in the whole overhaul, the spring first', () => {
      if (id === 'seat-and-plug') expect(path).not.toContain('coverOff');
      else if (heldBy === 'adjuster')
        inOrder('freeSpring', 'actuatorOff', 'loosenCase', 'coverOff', 'diaphragmLook', 'closeCase');
      else
        inOrder('actuatorOff', 'shortBolts', 'longBolts', 'coverOff', 'closeCase', 'drawDown', 'tightenCase');
    });
  },
);

describe('Seat and plug', () => {
  test('are lapped again where the blue shows a gap, and cleaned out before new rings', () => {
    const { job } = played(SEAT, { blue: [{ blueRing: 'gap' }, { blueRing: 'whole' }] });
    expect(outcomesOf(job, 'blue')).toEqual(['no', 'yes']);
    expect(pathOf(job).filter((step) => step === 'lap')).toHaveLength(2);
  });

  test('that are grooved want parts', () => {
    const { job } = played(SEAT, {
      trimLook: [{ ...GOOD.trimLook, seatFace: 'grooved' }, { ...GOOD.trimLook }],
    });
    expect(outcomesOf(job, 'trimLook')).toEqual(['seat or plug spent', 'lap']);
  });

  test('are not reached while the joint keeps coming', () => {
    const { job } = played(SEAT, { bonnetCrack: { jointShows: 'flows' } }, 'bonnetNotDry');
    expect(job.situation.states.closure).toBe('open');
  });

  test('are not reached without the gas test that the fluid wants', () => {
    const run = play(jobOn(SEAT, { sheet: aSheet({ fluidHarm: 'flammable' }) }), {
      overrides: { ...GOOD, shutOffGrade: { shutOffBy: 'positive' } },
      to: 'gasNotClean',
    });
    expect(outcomesOf(run.job, 'gasTest')).toEqual(['the fluid wants one']);
  });

  test('get their bonnet in three passes of the torque, crosswise', () => {
    const { job } = played(
      SEAT,
      { bonnetOn: { bonnetNuts: '8', bonnetTorqueNm: '100 N.m' } },
      'bonnetTorque',
    );
    // By hand: 30, 60 and 100 N·m are 22.1, 44.3 and 73.8 lbf·ft.
    expect(sayFigure('bonnetPasses', job)).toBe('22.1 lbf·ft, 44.3 lbf·ft, 73.8 lbf·ft');
    expect(sayFigure('bonnetOrder', job)).toBe('1, 5, 3, 7, 2, 6, 4, 8');
  });

  // By hand: contact at 3.1 psi leaves 0.1 psi on 100 in2, 10 lbf; 30 lbf an inch on a 1 in port are 94 lbf; the 84
  // missing are 1.06 turns of 80 lbf, so 1.25.
  test('with too little load have the plug turned by what is missing, and the contact found again', () => {
    const low = { contactLeavesPa: '3.4 psi', contactTouchesPa: '2.8 psi' };
    const run = played(SEAT, { seatContact: [low, { ...GOOD.seatContact }] }, 'seatTurn');
    expect(sayFigure('seatTurns', run.job)).toBe('1.25 turns');
    expect(run.job.situation.states).toMatchObject({ signalAir: 'held', plug: 'off seat' });
    play(run, { overrides: { ...GOOD, seatContact: [low, { ...GOOD.seatContact }] } });
    expect(outcomesOf(run.job, 'seatLoad')).toEqual(['too little', 'enough']);
  });

  test('are never turned on a pinned stem', () => {
    const low = { contactLeavesPa: '3.4 psi', contactTouchesPa: '2.8 psi' };
    const { job } = play(jobOn(SEAT, { sheet: aSheet({ stemPinned: true }) }), {
      overrides: { ...GOOD, seatContact: low },
    });
    expect(outcomesOf(job, 'seatLoad')).toEqual(['must not be turned']);
    expect(pathOf(job)).not.toContain('seatTurn');
  });

  test('a bench set that has shifted is wound back before the stems are joined', () => {
    const shifted = {
      benchLowUpPa: '4 psi',
      benchHighUpPa: '16 psi',
      benchHighDownPa: '16 psi',
      benchLowDownPa: '4 psi',
      benchTravelM: '0.75 in',
    };
    const { job } = played(SEAT, { benchFound: [shifted, { ...GOOD.benchFound }] });
    expect(outcomesOf(job, 'benchFound')).toEqual(['both ends shifted', 'inside']);
    expect(pathOf(job)).toContain('benchWind');
  });
});

describe('A stop in an open valve', () => {
  test('goes on where it was left, and wants its signature again where it was sent back', () => {
    const run = played(WHOLE, {}, 'lap');
    act(run, { kind: 'make-safe', reason: 'end of the shift' });
    expect(run.job.step).toBe('haltOpen');
    play(run, { overrides: { ...GOOD, whereOpen: { choice: 'lap' } } });
    expect(run.job.closedAs).toBe('done');
    expect(auditJob(run.entries, run.compiled)).toEqual([]);
  });
});

describe('The last round of a bonnet', () => {
  const atWitness = played(SEAT, {}, 'bonnetWitness');
  const once = () => ({ ...atWitness, entries: [...atWitness.entries] });

  test('goes on without its witness once the notice is over, and the record says so (HP-02)', () => {
    const run = once();
    expect(refusalOf(() => act(run, { kind: 'go-on' })).what).toContain('left to come');
    run.nowMs += 900_000;
    act(run, { kind: 'go-on' });
    expect(run.job).toMatchObject({ step: 'ringsIn', signing: { passed: [{ how: 'not witnessed' }] } });
  });

  test('is waived by an engineer alone, with a reason that is kept (HP-12)', () => {
    const run = once();
    const waive = { kind: 'waive', reason: 'nobody on nights' } as const;
    expect(refusalOf(() => act(run, waive, SUPERVISOR)).what).toBe('This is waived by the engineer.');
    act(run, waive, { id: 'p-engineer', role: 'engineer' });
    expect(run.job).toMatchObject({ step: 'ringsIn', signing: { passed: [{ how: 'waived' }] } });
    const shown = run.entries.at(-1)?.inputs as unknown as { shown: { shows: readonly string[][] } };
    expect(shown.shown.shows).toContainEqual(['torque of each nut, as left', '44.3 lbf·ft']);
  });

  test('on which a nut moved is sent back: the bonnet is put right', () => {
    const run = once();
    act(run, { kind: 'send-back', reason: 'a nut moved', disposition: 'putRight' }, SUPERVISOR);
    expect(run.job.step).toBe('bonnetNotRight');
  });
});

test('Both drains are read by two people before a body is opened: nobody signs for it before (SA-22)', () => {
  const run = played(SEAT, {}, 'holdWork');
  expect(refusalOf(() => sign(run)).what).toBe(
    'Read by one person only: Process, inlet side, Process, outlet side.',
  );
  playOne(run);
  sign(run);
  expect(run.job.step).toBe('connectAir');
});

test('No bellows is overhauled so', () => {
  for (const procedure of [SEAT, WHOLE]) {
    expect(procedure.whyNot(aSheet({ bellowsSeal: true }), 'bench')).toContain('bellows');
    expect(procedure.whyNot(aSheet(), 'line')).toBeNull();
  }
});

describe('The seal rings of a balanced plug', () => {
  const sealed = (texts: Readonly<Record<string, string>>) =>
    pathOf(play(jobOn(SEAT, { sheet: aSheetOf(texts) }), { overrides: GOOD }).job);

  test('come off before the trim is looked at, and new ones go on once it is clean', () => {
    const path = sealed({ balanceSealDiameterM: '1.2 in' });
    const at = ['trimOut', 'sealRingsOff', 'trimLook', 'cleanOut', 'sealRingsOn', 'trimIn'].map((step) =>
      path.indexOf(step),
    );
    expect(at).not.toContain(-1);
    expect(at).toEqual([...at].sort((one, other) => one - other));
  });

  test('are not asked after where the sheet has none', () => {
    const path = sealed({});
    expect(path).not.toContain('sealRingsOff');
    expect(path).not.toContain('sealRingsOn');
  });
});
