/** The ways between the hubs that belong to no shared phase: looking over, fitting a gauge, test air, giving back. */

import { CONDITION_IDS, everythingLive } from '../../../safety/conditions.ts';
import { capital } from '../../capital.ts';
import { type WhenFact, WITH_POSITIONER } from '../../facts.ts';
import { airStays, bleedCase, connectCase } from '../../phases/case-air.ts';
import { OPERATOR, yesNo } from '../../phases/common.ts';
import { CYLINDER_AIR_STAYS } from '../../phases/cylinder-words.ts';
import { putRight } from '../../phases/finding.ts';
import { ALL_ENERGIES } from '../../phases/overhaul-frame.ts';
import { LOOP_TAKES_IT } from '../../phases/to-operator.ts';
import type { OtherWords, Sets, Step } from '../../vocabulary.ts';
import { checkOf } from '../checks.ts';
import { GAUGE_POINTS } from '../valve-facts.ts';
import { type AtHub, checkCard } from './check-cards.ts';
import { ON_TEST_AIR } from './hub-choices.ts';

/** A valve that was given back is in service like others: whatever was shown safe of it counts no more. */
const AS_AT_OPENING = Object.fromEntries(
  CONDITION_IDS.filter((id) => id !== 'springHolder').map((id) => [id, everythingLive()[id]]),
) as Sets;

/** Before anything moves on the bypass: the valve whole, hands and tools out of the yoke. */
export function lookOver({ phase, back, makeSafe }: AtHub): Readonly<Record<string, Step>> {
  return {
    lookOver: {
      kind: 'reading',
      phase,
      title: 'Look the valve over before anything moves it',
      asks: [
        yesNo('caseStillTight', 'Case, bonnet and gland shut, every bolt in and tight'),
        yesNo('toolsOut', 'Tools out of the yoke, people clear and told'),
      ],
      judge: { rule: 'allYes', with: { fields: 'caseStillTight toolsOut' } },
      ways: { yes: { to: back, sets: { closure: 'shut', clear: 'clear' } }, no: { to: 'notLookedOver' } },
      makeSafe,
    },
    notLookedOver: putRight<string>({
      phase,
      title: 'It is not whole, or not clear',
      how: 'A slack bolt or a leak is a finding by itself: it is not stroked, and its repair is named.',
      again: ['Tools out, people clear: look again', 'lookOver'],
      stop: ['Something is slack or leaks: stop here', makeSafe],
      makeSafe,
    }),
    fitGauge: {
      kind: 'reading',
      phase,
      title: 'Fit a gauge that a check wants',
      how: 'Shut the cock before the joint where there is one, let the piece bleed, fit the gauge, soap the joint. Without a cock the gauge waits for the isolated valve.',
      action: 'fitGaugeIntoLiveLine',
      caution: {
        word: 'warning',
        hazard: 'The joint can blow off, and the valve moves as its air is lost.',
        consequence: 'A hand at the joint or in the yoke can be hurt.',
        avoid: 'Stand beside the joint, hands outside the yoke; tell the operator first.',
      },
      asks: [
        {
          name: 'gaugePoint',
          label: 'Where it is fitted',
          type: 'choice',
          choices: Object.entries(GAUGE_POINTS).map(([value, label]) => ({
            value,
            label: capital(label),
            ...(ONLY_WHERE[value] === undefined ? {} : { when: ONLY_WHERE[value] }),
          })),
        },
        yesNo('jointTight', 'Fitted, its joint soaped and tight, and it moves'),
      ],
      judge: { rule: 'gaugeFitted' },
      ways: {
        fitted: { to: 'lookOver', sets: { clear: 'not looked at' } },
        'not fitted': { to: 'lookOver', sets: { clear: 'not looked at' } },
      },
      makeSafe,
    },
  };
}

const SHUT = 'Cylinder, bonnet and gland shut, every tie rod and bolt in and tight';

/** What these cards say on a cylinder. */
export const CYLINDER_BETWEEN: Readonly<Record<string, OtherWords>> = {
  lookOver: { labels: { caseStillTight: SHUT } },
  connectAir: {
    how: 'One source, in your hand. At most {testAirLimit} goes on this cylinder: {testAirBecause}. The port of the other end stays open, pointed away.',
  },
  airStays: CYLINDER_AIR_STAYS,
};

/** Only a cylinder has two ends, and a nozzle for each. */
const CYLINDER: WhenFact = { fact: 'actuator', is: 'piston' };
const ONLY_WHERE: Readonly<Record<string, WhenFact>> = {
  cylinderTop: CYLINDER,
  cylinderBottom: CYLINDER,
  nozzle: WITH_POSITIONER,
  nozzleTop: CYLINDER,
  nozzleBottom: CYLINDER,
};

/** Test air on the actuator of the isolated valve: behind a hold, one source, bled off and shown gone after. */
export function testAir(isolated: AtHub): Readonly<Record<string, Step>> {
  const { phase } = isolated;
  const at: AtHub = { ...isolated, back: 'onTestAir', lookOver: 'onTestAir', makeSafe: 'ventNow' };
  return {
    holdTestAir: {
      kind: 'hold',
      phase,
      title: 'Before test air goes on the actuator',
      how: 'Work stops here. Each energy is shown safe by a reading. Somebody who did none of this work signs, or sends it back.',
      point: 'hold',
      criterion:
        'Each energy is absent, or shown safe by a reading inside its limit or by a vent without flow, tried twice.',
      evidence: ALL_ENERGIES,
      allows: ['connectTestAir', 'strokeByTestAir'],
      signed: { to: 'connectAir', sets: { workSignOff: 'given' } },
      sentBack: { to: 'haltIsolating' },
      makeSafe: 'haltIsolating',
    },
    connectAir: connectCase({
      phase,
      title: 'Connect one regulator and its gauge to the actuator',
      do: ['Set the regulator to zero.', 'Connect it to the side that moves the stem.'],
      next: 'onTestAir',
      ventNow: 'ventNow',
    }),
    onTestAir: {
      kind: 'question',
      phase,
      title: 'On test air: what to look at',
      how: 'Hands outside the yoke. One source, in your hand.',
      choices: {
        ...Object.fromEntries(
          ON_TEST_AIR.map((id) => [id, { label: checkOf(id).title, to: onAirStepId(id) }]),
        ),
        away: { label: 'Done: bleed the air off', to: 'bleedAir' },
      },
      makeSafe: 'ventNow',
    },
    ...Object.fromEntries(ON_TEST_AIR.map((id) => [onAirStepId(id), checkCard(id, at)])),
    bleedAir: bleedCase({
      phase,
      title: 'Bleed the test air to zero and read it',
      next: 'testAirOff',
      notGone: 'airStays',
      ventNow: 'ventNow',
    }),
    airStays: airStays({ phase, again: 'bleedAir', ventNow: 'ventNow' }),
    testAirOff: {
      kind: 'instruction',
      phase,
      title: 'Take the test air off the actuator',
      action: 'disconnectTestAir',
      do: ['Disconnect the test air.', 'Cap the port.'],
      next: { to: isolated.back, sets: { testAir: 'off' } },
      makeSafe: 'haltAirAway',
    },
  };
}

export function onAirStepId(id: string): string {
  return `${id}OnTestAir`;
}

/** Back to the operator from service, and what comes after any return. */
export function returned(): Readonly<Record<string, Step>> {
  return {
    serviceBack: {
      kind: 'reading',
      phase: 'return',
      title: 'Give the valve back to the operator',
      how: 'Say what was found, and what the valve may do until it is put right.',
      caution: LOOP_TAKES_IT,
      why: 'Until it is put right, the operator runs the valve with its fault.',
      asks: [
        { name: 'takenBackBy', label: OPERATOR, type: 'text' },
        yesNo('takenBack', 'The operator has the loop as they want it'),
      ],
      judge: { rule: 'allYes', with: { fields: 'takenBack' } },
      ways: { yes: { to: 'afterReturn', sets: { consent: 'none' } }, no: { to: 'serviceNotBack' } },
      makeSafe: 'haltService',
    },
    serviceNotBack: putRight<string>({
      phase: 'return',
      title: 'The operator does not have the loop as they want it',
      how: 'What was stepped or touched goes back to where it stood before it was looked at.',
      again: ['Put back: give it to them again', 'serviceBack'],
      also: { goOn: { label: 'Look on with their leave', to: 'askOperator' } },
      stop: ['Leave it in manual, and operations know', 'haltService'],
      makeSafe: 'haltService',
    }),
    afterReturn: {
      kind: 'question',
      phase: 'return',
      title: 'The valve is back with its operator',
      why: 'What was found decides which work is planned.',
      choices: {
        close: { label: 'Close the job: the repair is planned or made by its own procedure', to: 'done' },
        goOn: { label: 'Look on, or prove the repair in service', to: 'askOperator', sets: AS_AT_OPENING },
      },
      makeSafe: 'done',
    },
    done: {
      kind: 'end',
      phase: 'return',
      title: 'The cause is named, and the valve is back',
      closes: 'done',
    },
    notStarted: {
      kind: 'end',
      phase: 'complaint',
      title: 'Stopped before anything was touched',
      closes: 'stopped',
    },
  };
}
