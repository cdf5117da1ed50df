import { STEM_MOVES, yesNo } from '../phases/common.ts';
import { OWN_AIR_FRONT, OWN_AIR_SAFE_AT, ownAirControl, takeForStroke } from '../phases/own-air.ts';
import { strokeByOutput } from '../phases/own-stroke.ts';
import { giveBackStroked, OWN_AIR_RETURN } from '../phases/stroked-back.ts';
import { procedure } from '../vocabulary.ts';

const makeSafe = 'haltStroke' as const;

/** Controller, signal, valve and what the operator sees of it, as one. */
export const loopCheck = procedure({
  id: 'loop-check',
  title: 'Loop check with the operator',
  energyControl: ownAirControl(
    'To show with the operator that the output moves this valve and no other, the right way, as far as it says, and that what comes back on the screen is true; then to give it back without a bump.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-26',
      change:
        'After a stop the block valves are looked at again before the valve moves; what is not right on the way back is decided on a card of its own.',
    },
    {
      letter: 'C',
      date: '2026-11-26',
      change:
        'Travel is read at outputs in percent, as the operator says them; the card after it says by how much it is off.',
    },
    {
      letter: 'D',
      date: '2026-11-26',
      change:
        'Where a card is answered no, the next one says how it is put right and what else may be done: none leaves only a stop.',
    },
    { letter: 'E', date: '2026-11-26', change: 'Cards that gave no reason say why they stand open.' },
    {
      letter: 'F',
      date: '2026-11-26',
      change:
        'Stay on the radio with the operator while the bypass is shut. Hands and tools out of the yoke before the loop is given back.',
    },
  ],
  phases: [...OWN_AIR_FRONT, { id: 'loop', title: 'Loop' }, OWN_AIR_RETURN],
  start: 'needs',
  safe: OWN_AIR_SAFE_AT,
  steps: {
    ...takeForStroke({
      title: 'Get ready to check the loop of {tag}',
      how: 'Two people: one at the valve, one at the controller.',
      bring: ['Bring a radio, and agree on the words.', 'Bring the loop drawing.'],
      next: 'thisValve',
    }),
    thisValve: {
      kind: 'reading',
      phase: 'loop',
      title: 'Have the output moved by a tenth, and look which valve moves',
      how: 'Up a tenth and back. Rising signal {risingSignal} the valve.',
      why: 'A loop that is wired to the neighbour is found here or in an accident.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [
        yesNo('rightValve', 'This valve moved, and no other'),
        yesNo('rightWay', 'It moved the way that the sheet says'),
      ],
      judge: { rule: 'allYes', with: { fields: 'rightValve rightWay' } },
      ways: { yes: { to: 'loopStroke' }, no: { to: 'wrongValve' } },
      makeSafe,
    },
    wrongValve: {
      kind: 'question',
      phase: 'loop',
      title: 'Another valve moved, or it went the wrong way',
      how: 'Stop moving outputs. The other valve may be in service: the operator looks at its loop now. Wiring and tubing are followed before anybody tries again.',
      choices: {
        again: { label: 'Found and put right: try again', to: 'thisValve' },
        leave: { label: 'Give it back, loop in manual, and have it traced', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    loopStroke: strokeByOutput({
      phase: 'loop',
      title: 'Have the output set from end to end, and read the travel',
      ways: {
        inside: { to: 'feedback' },
        outside: { to: 'loopOutside' },
        'too close': { to: 'feedback' },
        'not all read': { to: 'loopNotRead' },
      },
      makeSafe,
    }),
    loopNotRead: {
      kind: 'question',
      phase: 'loop',
      title: 'Not every output was read',
      choices: {
        again: { label: 'Read them again', to: 'loopStroke' },
        stuck: { label: 'It does not reach them', to: 'loopOutside' },
      },
      makeSafe,
    },
    loopOutside: {
      kind: 'question',
      phase: 'loop',
      title: 'The valve does not stand where the output says',
      shows: ['strokeError', 'strokeHysteresis', 'strokeZero', 'strokeSpan'],
      how: 'Read the signal at the valve: right there, it is positioner or valve; wrong there, it is output, wiring or converter.',
      choices: {
        again: { label: 'Read them again', to: 'loopStroke' },
        goOn: { label: 'Write it down, and look at the feedback', to: 'feedback', reason: true },
        leave: { label: 'Give it back, and find the fault', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    feedback: {
      kind: 'reading',
      phase: 'loop',
      title: 'Ask the operator what the screen says of the valve',
      asks: [
        {
          name: 'feedbackSays',
          label: 'Position and switches on the screen',
          type: 'choice',
          choices: [
            { value: 'true', label: 'As the stem stands, at both ends and in the middle' },
            { value: 'none', label: 'The loop has no feedback' },
            { value: 'wrong', label: 'Otherwise than the stem' },
          ],
        },
      ],
      judge: { rule: 'oneOf', with: { field: 'feedbackSays', good: 'true,none' } },
      ways: { yes: { to: 'nextPerson' }, no: { to: 'feedbackWrong' } },
      makeSafe,
    },
    feedbackWrong: {
      kind: 'question',
      phase: 'loop',
      title: 'The screen shows otherwise than the stem',
      how: 'Somebody will run the plant by that number. Transmitter, its linkage and its range.',
      choices: {
        again: { label: 'Set: look again', to: 'feedback' },
        leave: { label: 'The operator knows that it is wrong', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    ...giveBackStroked(),
  },
});
