import { expect, test } from 'vitest';
import { factsOf } from '../../../../../procedures/facts.ts';
import { checkOf } from '../../../../../procedures/troubleshooting/checks.ts';
import { believe, causeRanking } from '../../../../../procedures/troubleshooting/engine/belief.ts';
import { type Decision, decide } from '../../../../../procedures/troubleshooting/engine/decide.ts';
import type { Evidence } from '../../../../../procedures/troubleshooting/engine/evidence.ts';
import { modelOf } from '../../../../../procedures/troubleshooting/engine/model.ts';
import { surpriseOf } from '../../../../../procedures/troubleshooting/engine/surprise.ts';
import { nextView } from '../../../../../server/jobs/view/cards/fault-next.ts';
import { sayItem } from '../../../../../server/jobs/view/cards/fault-words.ts';
import { aSheet } from '../../../../builders/sheets.ts';
import { standingAtStart } from '../../../../procedures/troubleshooting/simulate.ts';
import { BARE_DIAPHRAGM } from '../../../../procedures/troubleshooting/valves.ts';

const model = modelOf(BARE_DIAPHRAGM);
const said = (check: (typeof model.checks)[number], outcome: string): Evidence => ({
  kind: 'answer',
  check,
  outcome,
  gaugeAlive: true,
});

function viewAfter(evidence: readonly Evidence[], meant: Partial<Decision> = {}) {
  const [belief, standing] = [believe(model, evidence), standingAtStart(model)];
  const decision = { ...decide(model, { belief, evidence, standing }), ...meant };
  const causes = causeRanking(model, belief);
  const { checks } = decision;
  const surprise = surpriseOf(model, belief);
  const base = {
    facts: BARE_DIAPHRAGM,
    model,
    belief,
    evidence,
    standing,
    causes,
    surprise,
    checks,
    decision,
  };
  return nextView(
    { ...base, alike: null, proofDue: null },
    { sheet: aSheet(), facts: factsOf(aSheet(), 'line') },
  );
}

/** All that is seen in service is as on a sound valve, but for what stands here. */
const allSoundBut = (check: string) =>
  model.checks
    .filter((id) => checkOf(id).hubs.includes('in service') && id !== check)
    .map((id) => said(id, Object.keys(checkOf(id).outcomes)[0] ?? ''));

test('a look that decides is asked for again, with what it showed, and is one click', () => {
  const view = viewAfter([...allSoundBut('fluidOutside'), said('fluidOutside', 'bonnet')]);
  expect(view).toMatchObject({ kind: 'Look again', title: checkOf('fluidOutside').title });
  expect(view.rows.find(({ label }) => label === 'why this one')?.text).toContain(
    checkOf('fluidOutside').outcomes.bonnet ?? 'no such outcome',
  );
  expect(view.acts[0]).toMatchObject({ text: 'Look again', value: 'fluidOutside', kind: 'main' });
});

test('what was looked at more than once says so, and whether the looks agree', () => {
  const words = (evidence: readonly Evidence[]) => believe(model, evidence).items.map(sayItem).join();
  const [bonnet, dry] = [said('fluidOutside', 'bonnet'), said('fluidOutside', 'dry')];
  expect(words([bonnet])).not.toContain('looked at');
  expect(words([bonnet, bonnet])).toContain('looked at twice');
  expect(words([bonnet, dry, bonnet])).toContain('looked at 3 times and not the same');
});

test('a repair that pays more than another check is named with what both would cost, and made here where that is allowed', () => {
  const repair = { id: 'lineUpRight', probability: 0.93, minutes: 5 } as const;
  const view = viewAfter([said('lineUp', 'block throttles')], {
    best: 'repair',
    repair,
    repairNowMinutes: 12.4,
    checkFirstMinutes: 17.6,
  });
  expect(view).toMatchObject({ kind: 'Stop checking: repair', title: 'Have the line-up put right' });
  const row = (label: string) => view.rows.find((one) => one.label === label);
  expect(row('likely')?.strong).toBe('about 9 in 10');
  expect(row('costs')?.text).toBe(
    '12 minutes to a cured valve on the average, 18 minutes with another check first',
  );
  expect(view.acts[0]).toMatchObject({ text: 'Mend it now', value: 'mend lineUpRight', kind: 'main' });
  const opened = viewAfter([], {
    best: 'repair',
    repair: { id: 'changeDiaphragm', probability: 0.8, minutes: 150 },
  });
  expect(opened.rows.find((one) => one.label === 'how')?.text).toContain('It has its own procedure');
  expect(opened.acts[0]).toMatchObject({ value: 'name' });
});

test('a cheap repair that comes before a likelier one says why it is first', () => {
  const found = [said('lineUp', 'block throttles')];
  const whyFirst = (id: 'lineUpRight' | 'tightenCase' | 'leaveAlone') =>
    viewAfter(found, { best: 'repair', repair: { id, probability: 0.05, minutes: 5 } }).rows.find(
      ({ label }) => label === 'why first',
    )?.text;
  expect(whyFirst('tightenCase')).toMatch(
    /^It costs less to try than what is likelier: Have the line-up put right, .*\d+ in 10\.$/,
  );
  expect([whyFirst('lineUpRight'), whyFirst('leaveAlone')]).toEqual([undefined, undefined]);
});

test('a valve that is sound, or was put right, is given back: nothing of it is planned as a repair', () => {
  const view = viewAfter([], { best: 'repair', repair: { id: 'leaveAlone', probability: 0.95, minutes: 5 } });
  expect(view.kind).toBe('Stop checking: nothing is left to repair');
  expect(view.rows.find(({ label }) => label === 'how')?.text).toBe('Name it, and the valve goes back.');
  expect(view.rows.some(({ label }) => label === 'because')).toBe(false);
});
