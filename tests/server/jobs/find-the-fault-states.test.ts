import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { believe, causeRanking } from '../../../procedures/troubleshooting/engine/belief.ts';
import { adviceFor } from '../../../procedures/troubleshooting/job/advice.ts';
import { pointKind } from '../../../server/jobs/point-stream.ts';
import { POSITIONER_SHEET } from '../../builders/own-air-valve.ts';
import { aSheet } from '../../builders/sheets.ts';
import { type AnApp, anApp } from '../an-app.ts';
import { FaultFinder, type Given } from './fault-finder.ts';
import { withValve } from './site.ts';

const LONG = process.env.YOKESIDE_LONG === '1';

const WIRED = { ...POSITIONER_SHEET, electricalV: 24 };

let app: AnApp;
let valves = 0;
beforeAll(async () => {
  app = await anApp({ people: true });
});
afterAll(() => app.close());

/** Somebody at the first hub of a job on a valve of its own. */
async function atHub(complaint: Given, plain = aSheet()): Promise<FaultFinder> {
  valves += 1;
  const own = (name: string | null) => (name === null ? null : `${name}-${valves}`);
  const sheet = {
    ...plain,
    tag: `FV-9${valves}`,
    supplyPoint: own(plain.supplyPoint) ?? '',
    inletPoint: own(plain.inletPoint),
    outletPoint: own(plain.outletPoint),
    bypassPoint: own(plain.bypassPoint),
  };
  await withValve(app, sheet);
  const { browser } = await app.signedIn('technician');
  const finder = new FaultFinder(app, { as: browser, signer: (await app.signedIn('supervisor')).person });
  await finder.open(sheet.tag);
  await finder.toHub(complaint);
  return finder;
}

async function answered(finder: FaultFinder, words: Given): Promise<void> {
  for (const [check, found] of Object.entries(words)) await finder.check(check, { found });
}

/** As on a sound valve, but for one answer. */
const HANGS_ON_ONE: Given = {
  controllerOutput: 'in line',
  handwheelAndStops: 'neutral',
  smallStep: 'smooth',
  fluidOutside: 'bonnet',
};
/** Answers that no one cause of the list gives together with it. */
const CONTRADICTING: Given = {
  soapSignalTube: 'bubbles',
  soapStemSeal: 'none',
  couplingMarks: 'slipped',
  stemAndGland: 'bright',
  travelAgainstOutput: 'more open',
  controllerMode: 'held',
  flowAgainstTravel: 'as the curve',
  soapAdjuster: 'none',
  lineUp: 'as it should be',
  secondMeasurement: 'differs',
  holdInManual: 'goes on',
};

describe('What a hub says of the causes', () => {
  test('a look that much hangs on is asked for again; where nothing on the list explains it, that stands before all', async () => {
    const finder = await atHub({ symptom: 'slow' });
    await answered(finder, HANGS_ON_ONE);
    const again = await finder.text();
    expect(again).toContain('Much hangs on this one answer.');
    expect(again).toContain('Look again');
    expect(again).not.toContain('No cause of the list explains');
    await answered(finder, CONTRADICTING);
    const strange = await finder.text();
    expect(strange).toContain('No cause of the list explains what was read: ');
    expect(strange).toContain('Read it again on another gauge, and look for what is not on the list.');
  });

  test('a number that was read stands beside its word, and how far it is off', async () => {
    const finder = await atHub({ symptom: 'doesNotMove', outputPercent: '100 %', signalSeenPa: '12 psi' });
    expect(await finder.text()).toContain('More than 3 % of the span lower (\u221225 %)');
  });

  test('causes that nothing from outside tells apart are named together, with what would tell them', async () => {
    const finder = await atHub({ symptom: 'hunts' });
    await answered(finder, {
      controllerOutput: 'in line',
      soapAdjuster: 'none',
      loopCurrent: 'as asked',
      couplingMarks: 'slipped',
      gaugeAgainstGauge: 'agree',
      supplyDroop: 'small',
      flowAgainstTravel: 'less',
      lineUp: 'as it should be',
      stemAndGland: 'bright',
      noise: 'hiss',
      filterBowl: 'wet',
      holdInManual: 'no swing',
      handwheelAndStops: 'engaged',
    });
    const text = await finder.text();
    expect(adviceFor(await finder.job(), 'in service').alike).not.toBeNull();
    expect(text).toContain('Cannot be told apart from outside any more: ');
  });

  test('a mend is proved by its check, and one that did not help speaks from then on', async () => {
    const finder = await atHub({ symptom: 'movesPartWay' });
    const told = await finder.text();
    expect(told).toContain('As told: Does not reach open');
    expect(told).not.toContain('Full stroke from the controller, on the bypass: ');
    await finder.check('mend freeStop', { made: 'yes', mendNote: 'a stop was wound in' });
    const made = await finder.text();
    expect(made).toMatch(/Put handwheel and stops back\s.*\smade/);
    expect(made).toContain('Prove the repair');
    await finder.check('handwheelAndStops', { found: 'engaged' });
    expect(await finder.text()).toContain(
      'Made, and it did not help: Put handwheel and stops back. Its check is not sound: the repair did not take, or the fault is another.',
    );
  });
});

describe('A cause behind locks', () => {
  test('goes on as the job of its repair: locks, isolation and readings go along, signatures do not', async () => {
    const finder = await atHub({ symptom: 'doesNotMove', outputPercent: '100 %', signalSeenPa: '12 psi' });
    await finder.answer({ hubChoice: 'bypass' });
    await finder.through('onBypass');
    await finder.answer({ hubChoice: 'isolate' });
    await finder.through('isolated');
    await finder.answer({ hubChoice: 'name' });
    await finder.answer({});
    expect(await finder.text()).toContain('without undoing them');
    await finder.answer({ repairToDo: 'changeDiaphragm', causeSeen: 'air at the adjuster' });
    const before = await finder.job();
    expect(before.step).toBe('goOnDiaphragmRenewal');
    const from = {
      from: before.id,
      fromPlace: String(before.place),
      fromStep: before.step,
      fromChoice: 'on',
      fromReason: '',
    };
    await finder.open(before.tag, { procedure: 'diaphragm-renewal', ...from });
    const repair = await finder.job();
    expect([repair.procedure, repair.step, repair.goesOnFrom]).toEqual([
      'diaphragm-renewal',
      'takenOver',
      before.id,
    ]);
    expect(repair.locks).toEqual(before.locks);
    expect(Object.keys(repair.locks).length).toBeGreaterThan(2);
    expect(repair.readings).toEqual(before.readings);
    expect(repair.situation.states).toMatchObject({ inletLock: 'on', bypass: 'open', workSignOff: 'none' });
    expect([repair.holds, repair.envelope]).toEqual([[], null]);
    const point = await app.services.log.state(pointKind, String(before.sheet.inletPoint));
    expect(point.locks.map(({ job }) => job)).toEqual([repair.id]);
    const looked = await finder.text(`/jobs/${before.id}`);
    expect(looked).toContain(`went on as job ${repair.id}`);
    expect(looked).not.toContain('Work that comes next');
  });

  test('gives the valve back first where parts are not at hand, and says why it may not go on as another job', async () => {
    const finder = await atHub({ symptom: 'sticksThenJumps' });
    await finder.answer({ hubChoice: 'bypass' });
    await finder.through('onBypass');
    await finder.answer({ hubChoice: 'isolate' });
    await finder.through('isolated');
    await finder.answer({ hubChoice: 'name' });
    await finder.answer({});
    expect(await finder.answer({ repairToDo: 'repack' })).toBe('goOnPackingRenewal');
    expect(await finder.answer({ choice: 'back' })).toBe('backCheck');
  });
});

describe('A cause named with the valve on its bypass', () => {
  const onBypass = [
    ['tightenOutputTube', 'tubing', 'goOnTubing'],
    ['adjustPositioner', 'positioner-calibration', 'goOnPositionerCalibration'],
    ['adjustSource', 'converter-calibration', 'goOnConverterCalibration'],
    ['setCoupling', 'indicator-and-coupling', 'goOnIndicatorAndCoupling'],
  ] as const;

  // One of them is enough in the ordinary run: the cards are the same, and each hand-over is proved.
  test.each(LONG ? onBypass : onBypass.slice(0, 1))(
    '%s goes on as the job %s: loop, bypass and readings go along, and the valve is looked at before it moves',
    async (repairToDo, procedure, asked) => {
      const finder = await atHub({ symptom: 'slow' }, WIRED);
      await finder.answer({ hubChoice: 'bypass' });
      await finder.through('onBypass');
      await finder.answer({ hubChoice: 'name' });
      expect(await finder.answer({ repairToDo })).toBe(asked);
      const before = await finder.job();
      const { id: from, place, step: fromStep } = before;
      const on = { from, fromPlace: String(place), fromStep, fromChoice: 'on', fromReason: '' };
      await finder.open(before.tag, { procedure, ...on });
      const repair = await finder.job();
      expect([repair.procedure, repair.step, repair.goesOnFrom]).toEqual([procedure, 'takenOver', from]);
      expect(repair.situation.states).toMatchObject({ bypass: 'open', loop: 'manual', supplyLock: 'off' });
      expect(repair.readings).toEqual(before.readings);
      expect([repair.holds, repair.envelope]).toEqual([[], null]);
      await finder.answer({ notLocked: 'no', stillHeld: 'yes' });
      expect((await finder.job()).step).toBe('notAsLeft');
      await finder.answer({ choice: 'again' });
      expect(await finder.answer({ notLocked: 'yes', stillHeld: 'yes' })).toBe('blockForStroke');
    },
  );
});

describe('A repair that a search had named, once its own job is closed', () => {
  test('asks whether the trouble is gone, and leads back to the search, which counts what was done', async () => {
    const finder = await atHub({ symptom: 'leaksAtPacking' });
    await finder.answer({ hubChoice: 'name' });
    await finder.answer({ repairToDo: 'drawUpGland' });
    await finder.through('afterReturn');
    await finder.answer({ choice: 'close' });
    const search = await finder.job();
    expect(await finder.text()).not.toContain('Is the trouble gone?');
    await finder.open(search.tag, { procedure: 'live-gland' });
    expect(await finder.text()).not.toContain('Is the trouble gone?');
    await finder.through('done');
    const said = await finder.text();
    expect(said).toContain('Is the trouble gone?');
    expect(said).toContain(`Job ${search.id} named this repair for: Leaks at the packing.`);
    expect(said).toContain('It is not gone: look for the fault again');
    await finder.open(search.tag);
    await finder.through('sameTrouble', { complaint: { symptom: 'leaksAtPacking' } });
    expect(await finder.text()).toContain('Draw the gland up');
  });
});

describe('A valve that comes back', () => {
  test('is told what was found and done last time; it counts weakly, where it is the same trouble, and may be taken back', async () => {
    const first = await atHub({ symptom: 'movesPartWay' });
    await first.check('mend freeStop', { made: 'yes', mendNote: 'a stop was wound in' });
    await first.check('handwheelAndStops', { found: 'neutral' });
    await first.answer({ hubChoice: 'name' });
    await first.answer({ repairToDo: 'freeStop' });
    await first.through('afterReturn');
    await first.answer({ choice: 'close' });
    const { id, status, tag } = await first.job();
    expect(status).toBe('closed');
    await first.open(tag);
    const again = { complaint: { symptom: 'movesPartWay' } };
    await first.through('sameTrouble', again);
    expect(await first.text()).toContain(`job ${id}. `);
    expect(await first.text()).toContain('Repair made on the spot: Put handwheel and stops back.');
    await first.through('inService', { ...again, sameTrouble: { choice: 'same' } });
    const job = await first.job();
    const { evidence, belief, model } = adviceFor(job, 'in service');
    expect(evidence.filter(({ kind }) => kind === 'seen before')).toMatchObject([
      { repair: 'freeStop', job: id },
    ]);
    const chance = (of: typeof evidence) =>
      causeRanking(model, believe(model, of)).find(({ id: cause }) => cause === 'stopEngaged')?.probability ??
      0;
    const without = evidence.filter(({ kind }) => kind !== 'seen before');
    expect(chance(evidence)).toBeLessThan(chance(without));
    expect(chance(evidence)).toBeGreaterThan(0.4 * chance(without));
    expect(belief.repaired).toEqual([]);
    expect(await first.text()).toContain(`Counted from job ${id} on `);
    await otherTrouble(first, tag);
  });
});

/** A third job on the same valve, whose trouble is another one. */
async function otherTrouble(finder: FaultFinder, tag: string): Promise<void> {
  await finder.answer({ hubChoice: 'name' });
  await finder.answer({ repairToDo: 'leaveAlone' });
  await finder.through('afterReturn');
  await finder.answer({ choice: 'close' });
  await finder.open(tag);
  await finder.through('inService', {
    complaint: { symptom: 'leaksAtPacking' },
    sameTrouble: { choice: 'other' },
  });
  const job = await finder.job();
  expect(adviceFor(job, 'in service').evidence.map(({ kind }) => kind)).not.toContain('seen before');
}
