/** Words follow the actuator: nothing that is served says case of a cylinder, or cylinder of a diaphragm. */
import { describe, expect, test } from 'vitest';
import { factsOf } from '../../procedures/facts.ts';
import { forValve } from '../../procedures/for-valve.ts';
import { FIGURES, type FigureName } from '../../procedures/quantities.ts';
import { reachedSteps } from '../../procedures/reached.ts';
import { asked } from '../../procedures/readings/given.ts';
import { fill, placeholdersIn, sayFigure } from '../../procedures/say.ts';
import { PROCEDURES } from '../../procedures/served.ts';
import type { Place } from '../../procedures/served-procedure.ts';
import { asFitted } from '../../procedures/troubleshooting/as-fitted.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import type { OpenStep } from '../../procedures/vocabulary.ts';
import { ACTION_CLASSES } from '../../safety/action-classes.ts';
import { CONDITIONS } from '../../safety/conditions.ts';
import { DEMO_VALVES } from '../../server/demo/demo-valves.ts';
import { drawing } from '../../server/jobs/view/drawing.ts';
import { doneText } from '../../server/jobs/view/energies.ts';
import { openJob } from '../builders/jobs.ts';
import { aSheet, sheetOf } from '../builders/sheets.ts';

type Job = ReturnType<typeof openJob>['job'];

const OTHERS = { diaphragm: /cylinder|piston|tie rod/i, piston: /\bcases?\b|diaphragm|bench set/i } as const;

/** A regulator and a relay have diaphragms of their own, whatever actuator they feed. */
const OF_ITS_OWN = ['air-set bowlOut', 'relay-restriction relayNew', 'relay-restriction relayOut'];

/** Every text of a card, as the definition has it, with what its hold shows. */
function textsOf(step: OpenStep, job: Job): readonly string[] {
  const { title, how = '', why = '', caution, shows = [] } = step;
  const fields = step.kind === 'reading' ? step.asks.filter((field) => asked(field, job)) : [];
  const hold =
    step.kind === 'hold'
      ? [
          step.criterion,
          ...step.evidence.flatMap((condition) => [
            CONDITIONS[condition].name,
            doneText({ condition }, { ...job, situation: afterLook(job) }),
          ]),
          ...step.allows.map((action) => ACTION_CLASSES[action].name),
        ]
      : [];
  return [
    ...[title, how, why, caution?.hazard ?? '', caution?.consequence ?? '', caution?.avoid ?? ''],
    ...('do' in step ? (step.do ?? []) : []),
    ...fields.flatMap((field) => [
      field.label,
      ...(field.type === 'choice' ? field.choices.map(({ label }) => label) : []),
      ...(field.type === 'quantity' && field.wanted !== undefined ? [shown(field.wanted)] : []),
    ]),
    ...(step.kind === 'question' ? Object.values(step.choices).map(({ label }) => label) : []),
    ...hold,
    ...shows.map(shown),
  ];
}

const shown = (name: FigureName): string => `${FIGURES[name].label}: {${name}}`;

/** Where a spring, or the lack of one, has been looked at. */
function afterLook({ situation }: Job): Job['situation'] {
  return { ...situation, states: { ...situation.states, spring: 'contained' } };
}

/** Texts are filled only where they, or a figure in them, can say such a word: nearly none of them do. */
function wrongWords(sheet: ValveSheet, other: RegExp): readonly string[] {
  return (['line', 'bench'] as const).flatMap((place: Place) => {
    const { job } = openJob({ sheet, place });
    const wrongFigures = new Set(Object.keys(FIGURES).filter((name) => other.test(sayFigure(name, job))));
    const isWrong = (text: string) =>
      other.test(text) || placeholdersIn(text).some((name) => wrongFigures.has(name));
    const panel = drawing(job, { nowMs: 0 }).facts.map(({ label, value }) => `panel: ${label} ${value}`);
    const cards = PROCEDURES.filter(({ whyNot }) => whyNot(sheet, place) === null).flatMap(
      ({ definition }) => {
        const own = asFitted(forValve(definition, job.facts), sheet);
        return [...reachedSteps(own, job.facts)].flatMap((id) => {
          const step = own.steps[id];
          const texts = step === undefined || step.kind === 'end' ? [step?.title ?? ''] : textsOf(step, job);
          return texts
            .filter((text) => isWrong(text) && !OF_ITS_OWN.includes(`${definition.id} ${id}`))
            .map((text) => `${definition.id} ${id}: ${fill(text, job)}`);
        });
      },
    );
    return [...cards, ...panel.filter((text) => other.test(text))];
  });
}

/** An ordinary run reads of valves that are built alike the first. */
const ALL = DEMO_VALVES.map(sheetOf);
const built = (sheet: ValveSheet) => JSON.stringify(factsOf(sheet, 'line'));
const READ =
  process.env.YOKESIDE_LONG === '1'
    ? ALL
    : ALL.filter((sheet, at) => ALL.findIndex((other) => built(other) === built(sheet)) === at);

describe('No card, hold or panel says of an actuator what it has not', () => {
  test.each(READ.map((sheet) => [sheet.tag, sheet] as const))('%s', (_, sheet) => {
    expect([...new Set(wrongWords(sheet, OTHERS[sheet.actuatorKind]))]).toEqual([]);
  });

  test('a cylinder without positioner, lock-up or tank', () => {
    const sheet = aSheet({ actuatorKind: 'piston', springHeldBy: 'no spring', failPosition: 'stays' });
    expect([...new Set(wrongWords(sheet, OTHERS.piston))]).toEqual([]);
  });

  test.each([
    ['its cylinder holds', { springHeldBy: 'case', adjusterThread: null, adjusterThreadPitchM: null }],
    ['an adjuster holds', { springHeldBy: 'adjuster' }],
  ] as const)('a cylinder with a spring that %s', (_, holder) => {
    const sheet = aSheet({
      actuatorKind: 'piston',
      positioner: 'pneumatic',
      positionerRisingSignalLoads: 'bottom',
      positionerRelays: 'one',
      ...holder,
    });
    expect([...new Set(wrongWords(sheet, OTHERS.piston))]).toEqual([]);
  });

  test('and a word of the other actuator would be found', () => {
    expect(wrongWords(aSheet(), OTHERS.piston).length).toBeGreaterThan(100);
  });
});
