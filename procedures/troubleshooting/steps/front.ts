/** From opening the job to the first hub: what is needed, the complaint, what is fitted, the operator. */
import { WITH_POSITIONER } from '../../facts.ts';
import { OPERATOR, YES_NO, yesNo } from '../../phases/common.ts';
import { putRight } from '../../phases/finding.ts';
import type { ChoiceField, OtherWords, Step } from '../../vocabulary.ts';
import { CHECK_READINGS } from '../check-readings.ts';
import { OPENING_IDS, OPENINGS } from '../openings.ts';

const fitted = (name: string, label: string): ChoiceField => ({
  name,
  label,
  type: 'choice',
  choices: YES_NO,
  optional: true,
});

const FIRST_NUMBERS = [
  ...(CHECK_READINGS.valveAgainstCommand?.asks ?? []),
  ...(CHECK_READINGS.travelAgainstOutput?.asks ?? []),
];

const phase = 'complaint';
const makeSafe = 'haltService';

/** @param next  the first hub */
export function front(next: string): Readonly<Record<string, Step>> {
  return { ...needed(), ...complaint(), ...sameTrouble(), ...operator(next) };
}

/** A cylinder without a spring has no bench set to be held against. */
export const CYLINDER_NEEDS: OtherWords = {
  shows: ['signalLow', 'signalHigh', 'travel', 'energyInlet', 'energyTemperature', 'energyResidue'],
};

function needed(): Readonly<Record<string, Step>> {
  return {
    needs: {
      kind: 'instruction',
      phase,
      title: 'Get ready to look for the fault of {tag}',
      how: '{airAction}, {failPosition} on loss of air; air moves the stem {airMoves}.',
      why: 'Most faults are found from outside. What is opened too early has to be closed again.',
      do: [
        'Read the maker’s manual for this valve: it outranks this card.',
        'Bring soap, a spare gauge with its fitting, and a radio.',
        'Bring your locks and tags, face shield and gloves.',
        'Have the site permit in hand: local rules and the site lockout come first.',
      ],
      shows: ['benchSetLow', 'benchSetHigh', 'travel', 'energyInlet', 'energyTemperature', 'energyResidue'],
      next: { to: 'complaint' },
      makeSafe: 'notStarted',
    },
  };
}

/** Only a valve that an earlier job looked at comes here. */
function sameTrouble(): Readonly<Record<string, Step>> {
  return {
    sameTrouble: {
      kind: 'question',
      phase,
      title: 'This valve was looked at before: is it the same trouble?',
      how: '{lastTimeSays}',
      why: 'A repair that did not last speaks against its cause: weakly, and the less the longer ago it was made. What was renewed may have failed again.',
      choices: {
        same: { label: 'The same trouble is back: let it count', to: 'fitted' },
        other: { label: 'Another trouble, or not known: it does not count', to: 'fitted' },
      },
      makeSafe: 'notStarted',
    },
  };
}

function complaint(): Readonly<Record<string, Step>> {
  return {
    complaint: {
      kind: 'reading',
      phase,
      title: 'Write what is complained of, and the first numbers',
      how: 'In one line if you like, such as: does not move, controller full, so many psi at the valve. It is read back before it counts.',
      why: 'A word from the control room is a start; the check of the same thing outranks it.',
      asks: [
        {
          name: 'symptom',
          label: 'What the operator says of it',
          type: 'choice',
          optional: true,
          choices: OPENING_IDS.map((id) => ({ value: id, label: OPENINGS[id].words })),
        },
        ...[...new Map(FIRST_NUMBERS.map((one) => [one.name, one])).values()].map((one) => ({
          ...one,
          type: 'quantity' as const,
          optional: true as const,
        })),
      ],
      judge: { rule: 'firstLine' },
      ways: { kept: { to: 'fitted' }, 'kept, seen before': { to: 'sameTrouble' } },
      makeSafe: 'notStarted',
    },
    fitted: {
      kind: 'reading',
      phase,
      title: 'Look what is fitted at {tag}',
      how: 'Blank stands for the usual of its kind. A gauge counts that is there and was seen alive.',
      asks: [
        {
          name: 'sourceKind',
          label: 'What gives the signal',
          type: 'choice',
          optional: true,
          choices: [
            { value: 'transducer', label: 'A transducer on a current' },
            { value: 'pneumatic controller', label: 'A pneumatic controller' },
          ],
        },
        fitted('gaugeAtSource', 'Gauge at the outlet of transducer or controller'),
        fitted('gaugeAtSignal', 'Gauge on the signal at the valve'),
        fitted('gaugeAtSupply', 'Gauge on the supply'),
        fitted('gaugeAtCase', 'Gauge on the actuator'),
        {
          ...fitted('gaugeAtEnds', 'Gauges at both ends of the cylinder'),
          when: { fact: 'actuator', is: 'piston' },
        },
        { ...fitted('gaugeAtNozzle', 'Gauge on the nozzle of the positioner'), when: WITH_POSITIONER },
        {
          ...fitted('coverMay', 'The area allows a positioner cover off with air on'),
          when: WITH_POSITIONER,
        },
      ],
      judge: { rule: 'record' },
      ways: { kept: { to: 'askOperator' } },
      makeSafe: 'notStarted',
    },
  };
}

function operator(next: string): Readonly<Record<string, Step>> {
  return {
    askOperator: {
      kind: 'reading',
      phase: 'service',
      title: 'Ask the operator to have the valve looked at',
      how: 'Say that nothing is opened, that the output may be stepped a little, and how you are reached.',
      why: 'An output that is stepped unasked upsets the process, and hides the fault.',
      asks: [
        { name: 'operator', label: OPERATOR, type: 'text', carried: true },
        yesNo('consentGiven', 'The operator agrees, and the permit is in hand'),
        yesNo('notLocked', 'No lock hangs on this valve’s points: it is in service'),
      ],
      judge: { rule: 'allYes', with: { fields: 'consentGiven notLocked' } },
      ways: { yes: { to: next, sets: { consent: 'given' } }, no: { to: 'notAgreed' } },
      makeSafe,
    },
    notAgreed: putRight<string>({
      phase: 'service',
      title: 'The operator does not agree, or a lock hangs',
      how: 'A valve that is locked is somebody else’s work. The operator says when it may be looked at, and what may not be touched.',
      again: ['Agreed, no lock: ask again', 'askOperator'],
      stop: ['Not now: give it back and close the job', 'serviceBack'],
      makeSafe,
    }),
    haltService: {
      kind: 'question',
      phase: 'service',
      title: 'Stopped: the valve is in service, nothing is opened',
      how: 'Go back from the valve and tell the operator.',
      choices: {
        goOn: { label: 'Go on: ask the operator again', to: 'askOperator' },
        giveBack: { label: 'Give it back and close the job', to: 'serviceBack' },
      },
      makeSafe,
    },
  };
}
