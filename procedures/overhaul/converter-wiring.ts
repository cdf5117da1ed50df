import { airAway, airOffControl, airOnAgain } from '../phases/air-off.ts';
import { airOffFrame } from '../phases/air-off-frame.ts';
import { bypassedAt, takeOverOnBypass } from '../phases/bypass-taken-over.ts';
import { STEM_MOVES, yesNo } from '../phases/common.ts';
import { strokeProves } from '../phases/live-positioner.ts';
import { takeForStroke } from '../phases/own-air.ts';
import { giveBackStroked } from '../phases/stroked-back.ts';
import type { Step, Way } from '../vocabulary.ts';
import { procedure } from '../vocabulary.ts';

const halt = 'haltStroke' as const;
const shut = 'haltIsolating' as const;
const HANDS = { clear: 'not looked at' } as const;

const BRING = [
  'Bring a meter that is fit for the area, proved on a known source.',
  'Have somebody at hand who may work on this circuit.',
  'Have the area permit for opening a terminal box, where it asks for one.',
  'Bring terminals, ferrules, a gland seal and your locks and tags.',
  'Bring a supply gauge, a signal gauge and a travel indicator.',
] as const;

/** The current loop to a converter or positioner: read at its terminals, mended with circuit and air off. */
export const converterWiring = procedure({
  id: 'converter-wiring',
  title: 'Wiring of the converter',
  energyControl: airOffControl(
    'To find and mend a fault in the wires of a current loop: the current is read at its terminals where area and voltage allow it, wires are touched only with the circuit locked off.',
  ),
  revisions: [
    { letter: 'A', date: '2026-11-25', change: 'First issue.' },
    {
      letter: 'B',
      date: '2026-11-26',
      change:
        'A cable that is looked at again is moved by hand at its clips only; both ends of the pair are connected before the cover is shut. After a stop the block valves are looked at again.',
    },
    {
      letter: 'C',
      date: '2026-11-26',
      change:
        'Look for kept air on the other side of the actuator too, on a cylinder at its other end. Where a card is answered no, the next one says how it is put right and what else may be done: none leaves only a stop.',
    },
    {
      letter: 'D',
      date: '2026-11-26',
      change: 'It may go on where a job that looked for the fault left the valve on its bypass.',
    },
    { letter: 'E', date: '2026-11-26', change: 'Cards that gave no reason say why they stand open.' },
    {
      letter: 'F',
      date: '2026-11-26',
      change:
        'Eye protection on, and hands outside the yoke, wherever air is let off. Stay on the radio with the operator while the bypass is shut. Hands and tools out of the yoke before the loop is given back, and before circuits are switched on again.',
    },
  ],
  ...airOffFrame({
    airOn: [{ id: 'found', title: 'As found' }],
    airOff: { id: 'work', title: 'Wires' },
    proof: 'Proof',
  }),
  takesOver: { bypassed: bypassedAt('takenOver') },
  steps: {
    ...takeForStroke({
      title: 'Get ready for the wiring of {tag}',
      how: 'By the sheet: {energyElectrical}. The loop runs from {currentLow} to {currentHigh}.',
      bring: BRING,
      next: 'mayRead',
    }),
    ...takeOverOnBypass({ what: 'its signal wiring', bring: BRING }),
    mayRead: {
      kind: 'reading',
      phase: 'found',
      title: 'Look whether the terminals may be read live',
      how: 'Up to {liveReadMax} and where the area allows it; else the circuit is locked off first. A spark lights gas at any voltage. Electrical work has its own law: the site’s electrical rules come first.',
      why: 'A lead that slips makes a spark, and in a gas area one is enough.',
      asks: [
        yesNo('loopOnly', 'Only the loop is behind this cover, nothing at a higher voltage'),
        yesNo('areaAllows', 'Area permit in hand, gas test fresh where it asks for one'),
        yesNo('meterFit', 'Meter fit for the area, and proved'),
      ],
      judge: { rule: 'terminals' },
      ways: {
        'may be read live': { to: 'loopFound' },
        'voltage too high': { to: 'mayNotRead' },
        'area or meter not fit': { to: 'mayNotRead' },
      },
      makeSafe: halt,
    },
    mayNotRead: {
      kind: 'question',
      phase: 'found',
      title: 'The terminals are not read live',
      how: 'Then nothing is opened on a live loop: it is looked at dead, or read at the card by whoever may.',
      choices: {
        dead: { label: 'Lock the circuit off and look at the wires dead', to: 'airKnown' },
        again: { label: 'Permit, gas test or meter is here now', to: 'mayRead' },
        leave: { label: 'Give it back, and have an electrician read it', to: 'nextPerson', reason: true },
      },
      makeSafe: halt,
    },
    loopFound: readLoop({
      phase: 'found',
      title: 'Read the current at the terminals, as found',
      ways: {
        matches: { to: 'loopRight' },
        none: { to: 'askSource' },
        low: { to: 'askSource' },
        high: { to: 'askSource' },
      },
    }),
    loopRight: {
      kind: 'question',
      phase: 'found',
      title: 'The current is right at the terminals',
      how: 'Then it is the converter, its air, or what comes behind it.',
      why: 'Where the current is right at the terminals, the wiring before them needs no work.',
      choices: {
        leave: {
          label: 'Not the wires: stroke it; the converter’s calibration comes next',
          to: 'strokeLeft',
          comesNext: 'converter-calibration',
        },
        air: {
          label: 'Not the wires: stroke it; the job on the air set comes next',
          to: 'strokeLeft',
          comesNext: 'air-set',
        },
        again: { label: 'It comes and goes: read again while the cable is moved', to: 'loopFound' },
        open: { label: 'It comes and goes: look at the wires dead', to: 'airKnown' },
      },
      makeSafe: halt,
    },
    askSource: {
      kind: 'question',
      phase: 'found',
      title: 'The current is not what the output asks',
      how: 'Have it read at the output card as well. Right there and low here: it leaks to earth on the way. Wrong there too: card, fuse, barrier, or a load that is too high. None at all: open wire, fuse, or crossed wires.',
      choices: {
        wires: { label: 'Right at the card: the wires, circuit off', to: 'airKnown' },
        card: { label: 'Wrong at the card: give it back, control room told', to: 'nextPerson', reason: true },
        again: { label: 'Read it again', to: 'loopFound' },
      },
      makeSafe: halt,
    },
    ...airAway({ next: 'wiresDead' }),
    wiresDead: {
      kind: 'reading',
      phase: 'work',
      title: 'Look at terminals and wires, the circuit dead',
      how: 'By whoever may. Tried dead at these terminals first. Screen earthed at one end only; wires to earth and to each other read with both ends off.',
      action: 'workOnDeadWires',
      caution: {
        word: 'danger',
        hazard: 'A circuit that was not tried dead at these very terminals may be live.',
        consequence: 'It shocks, and its spark lights gas.',
        avoid: 'Meter proved on a known source, then these terminals, then the known source again.',
      },
      do: [
        'Show the terminals dead.',
        'Look for water, green copper and loose screws.',
        'Disconnect both ends of the pair.',
        'Read the pair to earth, then wire to wire.',
      ],
      asks: [
        {
          name: 'wiresFound',
          label: 'What is wrong',
          type: 'choice',
          choices: [
            { value: 'terminal', label: 'A loose, wet or green terminal' },
            { value: 'wire', label: 'A wire: open, to earth, or to the other' },
            { value: 'crossed', label: 'Plus and minus crossed' },
            { value: 'nothing', label: 'Nothing' },
          ],
        },
      ],
      judge: { rule: 'oneOf', with: { field: 'wiresFound', good: 'terminal,wire,crossed' } },
      ways: { yes: { to: 'wiresMended', sets: HANDS }, no: { to: 'wiresSound', sets: HANDS } },
      makeSafe: shut,
    },
    wiresSound: {
      kind: 'question',
      phase: 'work',
      title: 'Nothing is wrong with the wires',
      how: 'A break that comes and goes sits at a clip, a gland or a terminal: the cable is bent there by hand while the pair is read.',
      choices: {
        together: {
          label: 'Connect and shut again: what the output card gives is read next',
          to: 'wiresMended',
        },
        again: { label: 'Look again, the cable bent at its clips', to: 'wiresDead' },
      },
      makeSafe: shut,
    },
    wiresMended: {
      kind: 'reading',
      phase: 'work',
      title: 'Have the wires mended and connected',
      how: 'By whoever may. Terminal cut back to bright copper; a bad pair changed to a spare one at both ends, and written on the drawing. Why water came in is put right too: gland, seal, drain.',
      action: 'workOnDeadWires',
      do: [
        'Connect both ends of the pair, plus to plus.',
        'Tighten the terminals.',
        'Close the cover on its seal.',
      ],
      asks: [yesNo('wiresRight', 'Right way round, tight, cover and gland shut')],
      judge: { rule: 'allYes', with: { fields: 'wiresRight' } },
      ways: { yes: { to: 'lineLook', sets: HANDS }, no: { to: 'wiresDead', sets: HANDS } },
      makeSafe: shut,
    },
    ...airOnAgain({ next: 'mayReadLeft' }),
    mayReadLeft: {
      kind: 'reading',
      phase: 'proof',
      title: 'Look again whether the terminals may be read live',
      how: 'A gas test ages: it is asked again. Where they may not, the stroke by the signal is the proof.',
      asks: [
        yesNo('loopOnly', 'Only the loop is behind this cover, nothing at a higher voltage'),
        yesNo('areaAllows', 'Area permit in hand, gas test fresh where it asks for one'),
        yesNo('meterFit', 'Meter fit for the area, and proved'),
      ],
      judge: { rule: 'terminals' },
      ways: {
        'may be read live': { to: 'loopLeft' },
        'voltage too high': { to: 'strokeLeft' },
        'area or meter not fit': { to: 'strokeLeft' },
      },
      makeSafe: halt,
    },
    loopLeft: readLoop({
      phase: 'proof',
      title: 'Read the current at the terminals, as left',
      ways: {
        matches: { to: 'strokeLeft' },
        none: { to: 'loopStill' },
        low: { to: 'loopStill' },
        high: { to: 'loopStill' },
      },
    }),
    loopStill: {
      kind: 'question',
      phase: 'proof',
      title: 'The current is still not right',
      how: 'Right at the card and wrong here: the wires still. Wrong at both: card, fuse, barrier or load.',
      choices: {
        wires: { label: 'Circuit and air off again: the wires', to: 'airKnown' },
        again: { label: 'Read it again', to: 'loopLeft' },
        leave: { label: 'It is the card: give it back, control room told', to: 'nextPerson', reason: true },
      },
      makeSafe: halt,
    },
    ...strokeProves({ phase: 'proof', next: 'nextPerson', repair: 'airKnown', makeSafe: halt }),
    ...giveBackStroked(),
  },
});

function readLoop<const Id extends string>(step: {
  readonly phase: string;
  readonly title: string;
  readonly ways: Readonly<Record<'matches' | 'none' | 'low' | 'high', Way<Id>>>;
}): Step<Id | 'haltStroke'> {
  return {
    kind: 'reading',
    phase: step.phase,
    title: step.title,
    how: 'Across the test terminals, so that the loop is not broken: a loop that is broken drives the valve to its end. The operator sets the output; at most {loopOff} off.',
    action: 'readLoopCurrent',
    caution: STEM_MOVES,
    asks: [
      {
        name: 'loopLowA',
        label: 'Output at its low end, {currentLow} asked',
        type: 'quantity',
        dimension: 'current',
        wanted: 'currentLow',
      },
      {
        name: 'loopHalfA',
        label: 'Output at half, {currentHalf} asked',
        type: 'quantity',
        dimension: 'current',
        wanted: 'currentHalf',
      },
      {
        name: 'loopHighA',
        label: 'Output at its high end, {currentHigh} asked',
        type: 'quantity',
        dimension: 'current',
        wanted: 'currentHigh',
      },
    ],
    judge: { rule: 'loopCurrent' },
    ways: step.ways,
    makeSafe: 'haltStroke',
  };
}
