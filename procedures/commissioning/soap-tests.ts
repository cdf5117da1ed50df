import { STEM_MOVES, yesNo } from '../phases/common.ts';
import { OWN_AIR_FRONT, OWN_AIR_SAFE_AT, ownAirControl, takeForStroke } from '../phases/own-air.ts';
import { giveBackStroked, OWN_AIR_RETURN } from '../phases/stroked-back.ts';
import type { ChoiceField, QuantityField } from '../vocabulary.ts';
import { procedure } from '../vocabulary.ts';

const makeSafe = 'haltStroke' as const;
/** Long enough for a leak that matters to move a good gauge (common practice, no source). */
const BLOCK_IN_S = 300;

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

/** Packing, joints and tubes with soap; the actuator shut in and watched. */
export const soapTests = procedure({
  id: 'soap-tests',
  title: 'Soap tests and actuator shut in',
  energyControl: ownAirControl(
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
  ],
  phases: [
    ...OWN_AIR_FRONT,
    { id: 'soap', title: 'Soap' },
    { id: 'shutIn', title: 'Actuator shut in' },
    OWN_AIR_RETURN,
  ],
  start: 'needs',
  safe: OWN_AIR_SAFE_AT,
  steps: {
    ...takeForStroke({
      title: 'Get ready to soap {tag}',
      how: 'Soap is for air and cool clean service. On hot, toxic or burning fluid the site’s own leak method goes in its place.',
      bring: [
        'Bring soap that leaves no chloride on stainless tubes.',
        'Bring a lamp, goggles and a gauge for the actuator.',
      ],
      next: 'soapBody',
    }),
    soapBody: {
      kind: 'reading',
      phase: 'soap',
      title: 'Soap the gland, the bonnet and the flanges, hands off the nuts',
      how: 'The body is under pressure: stand beside it, never over a stud. Wait at each spot.',
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
      how: 'Air at the adjuster or at the vent of the spring side is the diaphragm, not the joint. A bleed that the maker built in is no leak.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [
        bubbles('tubeBubbles', 'Tube fittings'),
        bubbles('caseBubbles', 'Case joint, or cylinder ends and rod'),
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
      choices: {
        yes: { label: 'It has such a cock and gauge', to: 'shutIn' },
        no: { label: 'It has none: nothing more to do here', to: 'nextPerson' },
      },
      makeSafe,
    },
    shutIn: {
      kind: 'reading',
      phase: 'shutIn',
      title: 'Bring it to the middle, shut the cock at the actuator and read the gauge',
      how: 'It stands still from now on whatever the signal does. Hands out of the yoke: as it leaks, the stem creeps.',
      action: 'strokeByOwnAir',
      caution: STEM_MOVES,
      asks: [onActuator('shutInStartPa', 'Air on the actuator, just shut in')],
      judge: { rule: 'record' },
      ways: { kept: { to: 'shutInWait' } },
      makeSafe,
    },
    shutInWait: {
      kind: 'wait',
      phase: 'shutIn',
      title: 'Let it stand shut in',
      how: 'The first minutes it cools as well: sun, rain and a warm case move the gauge without a leak.',
      waitS: BLOCK_IN_S,
      next: { to: 'shutInEnd' },
      makeSafe,
    },
    shutInEnd: {
      kind: 'reading',
      phase: 'shutIn',
      title: 'Read the gauge again, and look at the stem',
      asks: [
        { ...onActuator('shutInStartPa', 'Air on the actuator, when it was shut in'), carried: true },
        onActuator('shutInEndPa', 'Air on the actuator, now'),
      ],
      judge: { rule: 'steady', with: { first: 'shutInStartPa', again: 'shutInEndPa' } },
      ways: { steady: { to: 'cockOpen' }, falls: { to: 'actuatorLeaks' } },
      makeSafe,
    },
    actuatorLeaks: {
      kind: 'question',
      phase: 'shutIn',
      title: 'The actuator loses air',
      how: 'Where the soap showed nothing it goes through the diaphragm or past the piston, or the cock passes.',
      choices: {
        again: {
          label: 'Open the cock, shut it in once more',
          to: 'lookBeforeStroke',
          sets: { clear: 'not looked at' },
        },
        leave: { label: 'Written down for the overhaul', to: 'cockOpen', reason: true },
      },
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
      ways: { yes: { to: 'nextPerson' }, no: { to: makeSafe } },
      makeSafe,
    },
    ...giveBackStroked(),
  },
});
