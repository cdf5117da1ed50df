import { anywhereControl, anywhereFrame, giveBackAnywhere, takeAnywhere } from '../phases/bench-air.ts';
import { STEM_MOVES, yesNo } from '../phases/common.ts';
import { SHUT_IN_S } from '../shut-in-figures.ts';
import type { ChoiceField, QuantityField } from '../vocabulary.ts';
import { procedure } from '../vocabulary.ts';

const makeSafe = 'haltStroke' as const;

function bubbles(name: string, label: string): ChoiceField {
  return {
    name,
    label,
    type: 'choice',
    choices: [
      { value: 'none', label: 'None' },
      { value: 'no such joint', label: 'It has no such joint' },
      { value: 'bubbles', label: 'Bubbles, a drip or a draught' },
    ],
  };
}

function onActuator(name: string, label: string): QuantityField {
  return { name, label, type: 'quantity', dimension: 'pressure', gauge: 'signalGauge' };
}

function temperature(name: string, label: string): QuantityField {
  return { name, label, type: 'quantity', dimension: 'temperature', optional: true };
}

/** Packing, joints and tubes with soap; the actuator shut in and watched. */
export const soapTests = procedure({
  id: 'soap-tests',
  title: 'Soap tests and actuator shut in',
  energyControl: anywhereControl(
    'To find what leaks to the outside on a valve under pressure, and whether its actuator holds air. Nothing is tightened: what leaks is a job of its own.',
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
        'It is done on the bench as well, without the body. The actuator is shut in at the end of its stroke, temperature and time are read with the air, and the fall that is left is held against a limit.',
    },
    {
      letter: 'D',
      date: '2026-11-26',
      change:
        'On a cylinder soap end caps, vents and rod and shut in the loaded end; on a diaphragm case joint, adjuster and stem. Where a card is answered no, the next one says how it is put right and what else may be done: none leaves only a stop.',
    },
    {
      letter: 'E',
      date: '2026-11-26',
      change: 'On a cylinder soap the end that is fed; where a spring stands behind the piston that is one.',
    },
    { letter: 'F', date: '2026-11-26', change: 'Cards that gave no reason say why they stand open.' },
    {
      letter: 'G',
      date: '2026-11-26',
      change:
        'Stay on the radio with the operator while the bypass is shut. Hands and tools out of the yoke before the loop is given back.',
    },
  ],
  ...anywhereFrame([
    { id: 'soap', title: 'Soap' },
    { id: 'shutIn', title: 'Actuator shut in' },
  ]),
  steps: {
    ...takeAnywhere({
      title: 'Get ready to soap {tag}',
      how: 'Soap is for air and cool clean service. On hot, toxic or burning fluid the site’s own leak method goes in its place.',
      bring: [
        'Bring soap that leaves no chloride on stainless tubes.',
        'Bring a lamp, goggles, a stop watch, a contact thermometer and a gauge for the actuator.',
      ],
      next: 'soapBody',
      onBench: 'soapAir',
    }),
    soapBody: {
      kind: 'reading',
      phase: 'soap',
      title: 'Soap the gland, the bonnet and the flanges, hands off the nuts',
      how: 'The body is under pressure: stand beside it, never over a stud. Wait at each spot.',
      why: 'A weep that is found small can be planned for; left alone it cuts its way wider.',
      caution: {
        word: 'warning',
        hazard: 'A joint that weeps may give way.',
        consequence: 'Hot, toxic or fast fluid can burn, poison or blind.',
        avoid: 'Look from the side, face shield down; leave every nut alone.',
      },
      asks: [
        bubbles('glandBubbles', 'Gland and stem'),
        bubbles('bonnetBubbles', 'Bonnet joint'),
        bubbles('flangeBubbles', 'Flanges and drains'),
      ],
      judge: { rule: 'noneOf', with: { fields: 'glandBubbles bonnetBubbles flangeBubbles', bad: 'bubbles' } },
      ways: { none: { to: 'soapAir' }, some: { to: 'bodyLeaks' } },
      makeSafe,
    },
    bodyLeaks: {
      kind: 'question',
      phase: 'soap',
      title: 'The body leaks to the outside',
      how: 'A gland is tightened live only by its own careful job. Bonnet and flange wait until the line is safe.',
      choices: {
        goOn: { label: 'Operator told; look at the air side as well', to: 'soapAir', reason: true },
        leave: { label: 'Too much to stay near it: give it back at once', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    soapAir: {
      kind: 'reading',
      phase: 'soap',
      title: 'Soap tubes, positioner and case, the signal at the middle',
      onCylinder: {
        title: 'Soap tubes, positioner and cylinder, the signal at the middle',
        how: 'Each end that is fed has air now. Air that goes on at an exhaust of the positioner may come past the piston. A bleed that the maker built in is no leak.',
        labels: {
          caseBubbles: 'End caps, and their gaskets all round',
          springSideBubbles: 'Any vent of the cylinder, and the cushion screws',
          stemSealBubbles: 'Where the rod leaves the cylinder',
        },
      },
      how: 'Air at the adjuster or at the vent of the spring side is the diaphragm, not the joint. A bleed that the maker built in is no leak.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [
        bubbles('tubeBubbles', 'Tube fittings'),
        bubbles('caseBubbles', 'Case joint and bolts'),
        bubbles('springSideBubbles', 'Adjuster, or vent of the spring side'),
        bubbles('stemSealBubbles', 'Where the stem enters the case'),
      ],
      judge: {
        rule: 'noneOf',
        with: { fields: 'tubeBubbles caseBubbles springSideBubbles stemSealBubbles', bad: 'bubbles' },
      },
      ways: { none: { to: 'canBeShutIn' }, some: { to: 'airLeaks' } },
      makeSafe,
    },
    airLeaks: {
      kind: 'question',
      phase: 'soap',
      title: 'The air side leaks',
      how: 'Fitting: with the air off. Case joint: case nuts, the cheapest cure. Adjuster or vent: a diaphragm. Each is a job of its own.',
      onCylinder: {
        how: 'Fitting: with the air off. End caps, vent or rod: the seals of the cylinder. Each is a job of its own.',
      },
      choices: {
        goOn: { label: 'Written down: shut the actuator in as well', to: 'canBeShutIn', reason: true },
        leave: { label: 'Written down: give it back', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    canBeShutIn: {
      kind: 'question',
      phase: 'shutIn',
      title: 'Whether the actuator can be shut in',
      how: 'A cock between positioner and actuator, with a gauge on the side of the actuator.',
      why: 'Shut in, an actuator that leaks loses its pressure, and a gauge says how fast.',
      choices: {
        yes: { label: 'It has such a cock and gauge', to: 'shutIn' },
        no: { label: 'It has none: nothing more to do here', to: 'nextPerson' },
      },
      makeSafe,
    },
    shutIn: {
      kind: 'reading',
      phase: 'shutIn',
      title: 'Drive it to its end by air, shut the cock at the actuator and read the gauge',
      how: 'To the end that the air drives it to, and a little more signal, so that the stem stands on its stop. It stands still from now on whatever the signal does.',
      onCylinder: {
        how: 'To the end that the air drives it to, and a little more signal, so that the piston stands at its end. The cock and the gauge are those of the loaded end. It stands still from now on whatever the signal does.',
        why: 'Anywhere else the piston follows the air as it leaks: the gauge hardly falls, and the leak hides.',
        do: [
          'Set the signal past the end that air drives it to.',
          'Wait until the stem stands on its stop.',
          'Wait until the gauge stands still.',
          'Shut the cock of the loaded end.',
          'Read gauge and cylinder temperature.',
        ],
        labels: { shutInStartK: 'Temperature of the cylinder, at the loaded end' },
      },
      why: 'Anywhere else the spring follows the air as it leaks: the gauge hardly falls, and the leak hides.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      do: [
        'Set the signal past the end that air drives it to.',
        'Wait until the stem stands on its stop.',
        'Wait until the gauge stands still.',
        'Shut the cock at the actuator.',
        'Read gauge and case temperature.',
      ],
      asks: [
        onActuator('shutInStartPa', 'Air on the actuator, just shut in'),
        temperature('shutInStartK', 'Temperature of the case, on the side of the air'),
      ],
      judge: { rule: 'record' },
      ways: { kept: { to: 'shutInWait' } },
      makeSafe,
    },
    shutInWait: {
      kind: 'wait',
      phase: 'shutIn',
      title: 'Let it stand shut in',
      how: 'Nobody touches cock, gauge or signal. Sun, rain and a warm case move the gauge without a leak.',
      onCylinder: {
        how: 'Nobody touches cock, gauge or signal. Sun, rain and a warm cylinder move the gauge without a leak.',
      },
      waitS: SHUT_IN_S,
      next: { to: 'shutInEnd' },
      makeSafe,
    },
    shutInEnd: {
      kind: 'reading',
      phase: 'shutIn',
      title: 'Read gauge and temperature again, and look at the stem',
      how: 'It may lose {shutInAllowed}. Without the temperature it counts as unknown, and less can be told.',
      onCylinder: {
        labels: {
          shutInStartK: 'Temperature of the cylinder then',
          shutInEndK: 'Temperature of the cylinder, now',
        },
      },
      asks: [
        { ...onActuator('shutInStartPa', 'Air on the actuator, when it was shut in'), carried: true },
        { ...temperature('shutInStartK', 'Temperature of the case then'), carried: true },
        onActuator('shutInEndPa', 'Air on the actuator, now'),
        temperature('shutInEndK', 'Temperature of the case, now'),
        {
          name: 'shutInTimeS',
          label: 'Time since it was shut in, by the watch',
          type: 'quantity',
          dimension: 'time',
        },
        yesNo('stemStood', 'The stem stands on its stop still'),
      ],
      judge: { rule: 'shutIn' },
      ways: {
        holds: { to: 'cockOpen' },
        leaks: { to: 'actuatorLeaks' },
        'too close': { to: 'shutInClose' },
        'stem moved': { to: 'stemCame' },
        'not read': { to: 'shutInClose' },
      },
      makeSafe,
    },
    shutInClose: {
      kind: 'question',
      phase: 'shutIn',
      title: 'Nothing can be said from this yet',
      how: 'A longer look tells more: the limit grows with the time, what gauge and thermometer cannot tell does not. Leave the cock shut.',
      shows: ['shutInFell', 'shutInUncertainty', 'shutInAllowed'],
      choices: {
        longer: { label: 'Let it stand longer, and read it again', to: 'shutInWait' },
        leave: { label: 'Leave it so', to: 'cockOpen', reason: true },
      },
      makeSafe,
    },
    stemCame: {
      kind: 'question',
      phase: 'shutIn',
      title: 'The stem has left its stop',
      how: 'It has lost so much air that the spring has moved it. That is a large leak, or the cock passes towards the positioner.',
      onCylinder: {
        how: 'It has lost so much air that the piston has moved. That is a large leak, or the cock passes towards the positioner.',
      },
      choices: {
        leaks: { label: 'It leaks: go on', to: 'actuatorLeaks' },
        again: { label: 'It was not on its stop: shut it in again', to: 'cockAgain' },
      },
      makeSafe,
    },
    actuatorLeaks: {
      kind: 'question',
      phase: 'shutIn',
      title: 'The actuator loses air',
      how: 'Where the soap showed nothing it goes through the diaphragm, or the cock passes.',
      onCylinder: { how: 'Where the soap showed nothing it goes past the piston, or the cock passes.' },
      shows: ['shutInFell', 'shutInWarmth', 'shutInUncertainty', 'shutInAllowed'],
      choices: {
        again: { label: 'Open the cock, shut it in once more', to: 'cockAgain' },
        leave: { label: 'Written down for the overhaul', to: 'cockOpen', reason: true },
      },
      makeSafe,
    },
    cockAgain: {
      kind: 'reading',
      phase: 'shutIn',
      title: 'Bring the cock at the actuator back to open, and let it follow once',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [yesNo('followsAgain', 'The cock is open, and the valve follows its signal')],
      judge: { rule: 'allYes', with: { fields: 'followsAgain' } },
      ways: { yes: { to: 'shutIn' }, no: { to: 'notFollowing' } },
      makeSafe,
    },
    cockOpen: {
      kind: 'reading',
      phase: 'shutIn',
      title: 'Bring the cock at the actuator back to open, slowly',
      how: 'The valve goes to where the signal asks.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [yesNo('followsAgain', 'The cock is open, and the valve follows its signal')],
      judge: { rule: 'allYes', with: { fields: 'followsAgain' } },
      ways: { yes: { to: 'nextPerson' }, no: { to: 'notFollowing' } },
      makeSafe,
    },
    notFollowing: {
      kind: 'question',
      phase: 'shutIn',
      title: 'It does not follow its signal again',
      how: 'The cock is not wide open, or dirt has come loose in it. Hands stay out of the yoke: it may come at any moment.',
      choices: {
        again: { label: 'The cock is wide open: look again', to: 'cockOpen' },
        leave: { label: 'Give it back as it is, and find the fault', to: 'nextPerson', reason: true },
      },
      makeSafe,
    },
    ...giveBackAnywhere(),
  },
});
