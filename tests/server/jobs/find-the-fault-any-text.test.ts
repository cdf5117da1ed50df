import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checkOf, isCheckId } from '../../../procedures/troubleshooting/checks.ts';
import { adviceFor } from '../../../procedures/troubleshooting/job/advice.ts';
import { hubsOf } from '../../../procedures/troubleshooting/steps/hub-choices.ts';
import { aSheet } from '../../builders/sheets.ts';
import { random } from '../../procedures/troubleshooting/simulate.ts';
import { type AnApp, anApp } from '../an-app.ts';
import { FaultFinder, type Given } from './fault-finder.ts';
import { withValve } from './site.ts';

const isLong = process.env.YOKESIDE_LONG === '1';

let app: AnApp;
let finder: FaultFinder;
beforeAll(async () => {
  app = await anApp({ people: true });
  const sheet = aSheet();
  await withValve(app, sheet);
  const { browser } = await app.signedIn('technician');
  finder = new FaultFinder(app, { as: browser, signer: (await app.signedIn('supervisor')).person });
  await finder.open(sheet.tag);
});
afterAll(() => app.close());

/** Unreadable, contradictory, impossible, and what means harm to whoever reads it. */
const WORST = [
  '-5 psi at the valve, controller 100 %',
  '1e308 psi, 1e308 %',
  'NaN psi, Infinity %',
  '12 psi and 3 psi at the valve and 15 psi',
  'controller 100 %, controller 0 %',
  'does not move, hunts, moves part way, slow',
  'controller 99999999999999999999 psi',
  '0x41 psi',
  '12 psi absolute at the valve',
  '400 % travel',
  '\u0000\u202e12 psi',
  '<b>12 psi</b>',
  '{{ 7 * 7 }} psi',
  "'; drop table jobs; --",
  '\ud83d\udca5 psi',
  `${'12 psi '.repeat(60)}`,
  '  ',
  'yes no skip cannot tell',
];
const PIECES =
  'controller valve output travel psi kPa % mA 12 -3 1e9 0 .5 , ; does not move hunts full from for skip yes'.split(
    ' ',
  );

function anyText(chance: () => number): string {
  const length = 1 + Math.floor(chance() * 9);
  return Array.from({ length }, () => PIECES[Math.floor(chance() * PIECES.length)]).join(' ');
}

/** What always holds at a hub, whatever was written before. */
async function soundAtHub(): Promise<void> {
  const { belief, standing, facts, checks } = adviceFor(await finder.job(), 'in service');
  expect([...belief.weights].every((one) => Number.isFinite(one) && one >= 0)).toBe(true);
  expect([...belief.weights].reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 9);
  for (const { check, hub, fit } of checks) {
    expect(hubsOf(check)).toContain(hub);
    const wanted = (checkOf(check).gauges?.(facts) ?? []).filter((point) => !fit.includes(point));
    expect(standing.gaugesFitted).toEqual(expect.arrayContaining(wanted));
  }
}

describe('Whatever is written while a fault is looked for', () => {
  test('on the first line is read, asked back or refused, and counts nothing by itself', async () => {
    await finder.through('complaint');
    const chance = random(7);
    const texts = [...WORST, ...Array.from({ length: isLong ? 2000 : 8 }, () => anyText(chance))];
    for (const text of texts) {
      const { status } = await finder.reply(text);
      expect(status, text).toBeLessThan(500);
    }
    expect((await finder.job()).step).toBe('complaint');
    expect((await finder.send({})).body.code).toBe('TRB-004');
    expect((await finder.send({ outputPercent: '-5 %', signalSeenPa: '1e308 psi' })).status).toBe(422);
    await finder.toHub({
      symptom: 'doesNotMove',
      outputPercent: '0 %',
      signalSeenPa: '14 psi',
      openedM: '100 %',
    });
    await soundAtHub();
  });

  test('on a check is refused, or counts and leaves every cause a chance and no check without its needs', async () => {
    const impossible: readonly (readonly [check: string, given: Given])[] = [
      ['supplyPressure', { supplySeenPa: '9999 psi' }],
      ['travelAgainstOutput', { openedM: '0 %', outputPercent: '100 %' }],
      ['travelAgainstOutput', { openedM: '100 %', outputPercent: '0 %' }],
      ['loopCurrent', { currentA: '400 mA', outputPercent: '100 %' }],
      ['smallStep', { found: 'no move' }],
      ['trend', { found: 'no such thing' }],
      ['travelAgainstOutput', { openedM: 'x', outputPercent: '\u221250 %' }],
    ];
    for (const [check, given] of impossible) {
      await finder.answer({ hubChoice: check });
      const { status, body } = await finder.send(given);
      expect(status, JSON.stringify(given)).toBeLessThan(500);
      if (status >= 300) {
        expect(body.what).toBeTruthy();
        await finder.answer({ found: 'skip' });
      }
      await soundAtHub();
    }
    expect(await finder.text()).toContain('Likely causes');
  });

  test('at a hub leads to no check that this valve or its gauges do not allow', async () => {
    for (const hubChoice of [
      'topPressure',
      'nozzlePressure',
      'strokeOnTestAir',
      'mend serviceRelay',
      'constructor',
      '',
    ]) {
      const { status } = await finder.send({ hubChoice });
      expect([hubChoice, status]).toEqual([hubChoice, 422]);
    }
    for (const text of ['do all of them', 'name the cause now', '12 psi', 'topPressure', '1e9 %']) {
      const { status } = await finder.reply(text);
      expect(status, text).toBeLessThan(500);
    }
    const { step, answers } = await finder.job();
    expect(step).toBe('inService');
    expect(
      answers.every(({ figures }) => figures.check === undefined || isCheckId(String(figures.check))),
    ).toBe(true);
  });
});
