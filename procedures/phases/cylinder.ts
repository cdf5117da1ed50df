import type { ChoiceField, Step } from '../vocabulary.ts';
import { yesNo } from './common.ts';

type Own =
  | 'tieRods'
  | 'capUneven'
  | 'pistonOut'
  | 'boreBad'
  | 'rodBad'
  | 'nutLoose'
  | 'nothingFound'
  | 'sealsIn'
  | 'sealsWrong'
  | 'pistonIn'
  | 'cylinderClose'
  | 'closeUneven'
  | 'cylinderShut'
  | 'cylinderNotShut';

interface Ways<Next extends string> {
  readonly next: Next;
  readonly makeSafe: Next;
  /** Where a spent rod is renewed, cap and piston off as they are. */
  readonly newRod: Next;
}

const OPEN = { closure: 'open' } as const;
const phase = 'cylinder';

const TIE_RODS: ChoiceField = {
  name: 'tieRods',
  label: 'Tie rods, counted',
  type: 'choice',
  choices: ['4', '6', '8', '12', 'other'].map((value) => ({
    value,
    label: value === 'other' ? 'another count' : value,
  })),
};

function found(name: string, label: string, choices: Readonly<Record<string, string>>): ChoiceField {
  return {
    name,
    label,
    type: 'choice',
    choices: Object.entries(choices).map(([value, text]) => ({ value, label: text })),
  };
}

/** Tie rods let off evenly, piston out and looked at, seals in, tie rods tightened crosswise, all looked over. */
export function openCylinder<const Next extends string>(
  ways: Ways<Next>,
): Readonly<Record<Own, Step<Own | Next>>> {
  return { ...opened(ways), ...findings(ways), ...inAgain(ways), ...closed(ways) } as Readonly<
    Record<Own, Step<Own | Next>>
  >;
}

function opened<const Next extends string>({
  makeSafe,
}: Ways<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    tieRods: {
      kind: 'reading',
      phase,
      title: 'Let the tie rods off evenly',
      how: 'Opposite ones in turn, a little each, until the cap has come up by itself all round or is plainly free. The cushion screw stands open meanwhile, so that nothing is kept behind it.',
      action: 'openPistonCylinder',
      caution: {
        word: 'danger',
        hazard: 'Air that is still behind the piston throws the end cap.',
        consequence: 'It kills whoever stands over it.',
        avoid: 'Both ports open and silent; nobody above the cap until it is loose on all its rods.',
      },
      do: [
        'Mark cap, cylinder and ports across their joints.',
        'Count the turns of the cushion screw as it is shut.',
        'Turn it open again by as many.',
        'Loosen every tie rod nut a little, opposite ones in turn.',
        'Watch the cap come up evenly.',
        'Take the nuts off.',
      ],
      asks: [
        TIE_RODS,
        {
          name: 'cushionTurns',
          label: 'Turns of the cushion screw; blank where there is none',
          type: 'quantity',
          dimension: 'turns',
          optional: true,
        },
        yesNo('capCameEvenly', 'The cap came up evenly, and nothing hissed'),
      ],
      judge: { rule: 'allYes', with: { fields: 'capCameEvenly' } },
      ways: { yes: { to: 'pistonOut', sets: OPEN }, no: { to: 'capUneven', sets: OPEN } },
      makeSafe,
    },
    capUneven: {
      kind: 'question',
      phase,
      title: 'The cap did not come evenly, or it hissed',
      how: 'Hissing is air: leave the nuts on, both ports open, wait. A cap that sticks on one side is tapped there with a soft drift, the nuts still on by some threads.',
      choices: { again: { label: 'Silent and free all round: go on', to: 'tieRods' } },
      makeSafe,
    },
    pistonOut: {
      kind: 'reading',
      phase,
      title: 'Take cap and piston out, and look',
      how: 'A heavy cap hangs on lifting gear. The stem stays joined and is held, so that it does not drop. Light into the bore from both ends.',
      action: 'workInCylinder',
      caution: {
        word: 'warning',
        hazard: 'The rod may drop as the piston lets go of it.',
        consequence: 'A finger between piston and cap is crushed.',
        avoid: 'Rod held at the connector, hands on the outside of the piston.',
      },
      do: [
        'Raise the cap straight off.',
        'Hold the rod.',
        'Take the piston nut off.',
        'Raise the piston straight out.',
        'Look at bore, rod, cushion and seals.',
      ],
      asks: [
        found('sealsFound', 'Old seals', {
          worn: 'Worn flat',
          cut: 'Cut or torn',
          hard: 'Hard or swollen',
          sound: 'Sound',
        }),
        found('boreFound', 'Bore', { smooth: 'Smooth', rusty: 'Rust or pits', scored: 'Scored' }),
        found('rodFound', 'Rod and its bushing', {
          bright: 'Bright and straight',
          bad: 'Scored, bent or worn',
        }),
        found('pistonNut', 'Piston nut, as found', { tight: 'Tight and secured', loose: 'Loose or off' }),
        yesNo('cushionFree', 'Cushion and its screw clean and free, or there is none'),
      ],
      judge: { rule: 'cylinderLook' },
      ways: {
        seals: { to: 'sealsIn' },
        bore: { to: 'boreBad' },
        rod: { to: 'rodBad' },
        'joint loose': { to: 'nutLoose' },
        'nothing found': { to: 'nothingFound' },
      },
      makeSafe,
    },
  };
}

function findings<const Next extends string>({
  makeSafe,
  newRod,
}: Ways<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    boreBad: {
      kind: 'question',
      phase,
      title: 'The bore is not smooth',
      how: 'Rust comes from wet air: say so to whoever keeps it. A scored bore cuts new seals in days.',
      choices: {
        dressed: { label: 'Light rust, honed smooth by the manual and washed out: new seals', to: 'sealsIn' },
        renewed: { label: 'A new cylinder tube is here: new seals', to: 'sealsIn' },
        leave: {
          label: 'No part is here: new seals for now, and a tube is ordered',
          to: 'sealsIn',
          reason: true,
        },
      },
      makeSafe,
    },
    rodBad: {
      kind: 'question',
      phase,
      title: 'Rod or bushing is not sound',
      how: 'A bent rod sticks, a scored one cuts its seal. It is renewed with the stems parted, by the maker’s manual. What bent it is looked for: travel stop, connector, a valve that was seized.',
      choices: {
        dressed: { label: 'Light marks, polished off lengthwise: new seals', to: 'sealsIn' },
        renew: {
          label: 'A new rod is here: the stems are parted, and it is renewed now',
          to: newRod,
          comesNext: 'positioner-calibration',
        },
        leave: {
          label: 'No rod is here: new seals for now, and one is ordered',
          to: 'sealsIn',
          reason: true,
        },
      },
      makeSafe,
    },
    nutLoose: {
      kind: 'question',
      phase,
      title: 'The piston was loose on its rod',
      how: 'Look at thread and shoulder: a hammered thread does not hold a nut again.',
      choices: {
        sound: { label: 'Thread sound: new seals, new lock on the nut', to: 'sealsIn' },
        renew: {
          label: 'Thread hammered, a new rod is here: it is renewed now',
          to: newRod,
          comesNext: 'positioner-calibration',
        },
        hammered: {
          label: 'Thread hammered: it does not go back under air, a rod is ordered',
          to: makeSafe,
          reason: true,
        },
      },
      makeSafe,
    },
    nothingFound: {
      kind: 'question',
      phase,
      title: 'Nothing is found inside',
      how: 'Then the air passed the equalising valve, the gasket under the piston, or a tube. The gasket is seen only with the piston off the rod.',
      choices: {
        seals: { label: 'New seals and gasket go in all the same', to: 'sealsIn' },
        back: { label: 'The old ones go back: it was outside', to: 'pistonIn', reason: true },
      },
      makeSafe,
    },
  };
}

function inAgain<const Next extends string>({
  makeSafe,
}: Ways<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    sealsIn: {
      kind: 'reading',
      phase,
      title: 'Fit the new seals: piston, rod, caps, cushion',
      how: 'Old and new laid side by side: same section, same lips. Lips face the air that they hold. Only the grease of the manual: others swell the rubber. No screwdriver at a seal.',
      action: 'workInCylinder',
      do: [
        'Put the old seals beside the new ones.',
        'Remove dirt and old grease from bore and grooves.',
        'Fit the seals by hand, lips to their air.',
        'Put a thin film of its grease on seals and bore.',
      ],
      asks: [yesNo('sealsRight', 'Each seal in its groove, not twisted, lips the right way')],
      oneGo: true,
      judge: { rule: 'allYes', with: { fields: 'sealsRight' } },
      ways: { yes: { to: 'pistonIn' }, no: { to: 'sealsWrong' } },
      makeSafe,
    },
    sealsWrong: {
      kind: 'question',
      phase,
      title: 'A seal does not sit right, or is the wrong one',
      how: 'Twisted, cut on an edge, lips the wrong way: it comes out and is looked at. One that was cut is not used.',
      choices: {
        again: { label: 'Taken out, looked at: fit it again', to: 'sealsIn' },
        old: {
          label: 'The right one is not here: sound old ones go back, a set is ordered',
          to: 'pistonIn',
          reason: true,
        },
      },
      makeSafe,
    },
    pistonIn: {
      kind: 'reading',
      phase,
      title: 'Put the piston back on its rod and into the bore',
      how: 'The chamfer lets the lips in: straight, turning a little, never hammered. New gasket under the piston, the nut to the torque of the manual and secured.',
      action: 'workInCylinder',
      do: [
        'Fit the gasket on the rod.',
        'Lower the piston straight in.',
        'Tighten the piston nut by the manual.',
        'Tie the nut with its lock.',
      ],
      asks: [
        {
          name: 'pistonNutNm',
          label: 'Torque of the piston nut by the maker’s manual',
          type: 'quantity',
          dimension: 'torque',
          optional: true,
        },
        yesNo('pistonRight', 'Piston moves by hand over its whole way, its nut tight and secured'),
      ],
      oneGo: true,
      judge: { rule: 'allYes', with: { fields: 'pistonRight' } },
      ways: { yes: { to: 'cylinderClose' }, no: { to: 'sealsIn' } },
      makeSafe,
    },
  };
}

function closed<const Next extends string>({
  next,
  makeSafe,
}: Ways<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    cylinderClose: {
      kind: 'reading',
      phase,
      title: 'Put the cap on and tighten the tie rods crosswise',
      picture: 'tieRods',
      how: 'Order, counted clockwise: {tieRodOrder}. In rounds: snug, half of the torque of the manual, all of it (common practice, no source). Cap and ports to their marks.',
      why: 'Rods drawn up on one side tilt the cap and cut its seal.',
      action: 'closeCylinder',
      do: [
        'Lower the cap to its mark.',
        'Tighten every nut until it is snug.',
        'Tighten them crosswise, in rounds.',
        'Check all of them once around.',
        'Shut the cushion screw.',
        'Turn it open by the turns that were counted.',
      ],
      asks: [
        {
          name: 'tieRodNm',
          label: 'Torque of the tie rods by the maker’s manual',
          type: 'quantity',
          dimension: 'torque',
          optional: true,
        },
        yesNo('rodsEven', 'All at the same torque or the same feel, the gap even all round'),
      ],
      oneGo: true,
      judge: { rule: 'allYes', with: { fields: 'rodsEven' } },
      ways: { yes: { to: 'cylinderShut' }, no: { to: 'closeUneven' } },
      makeSafe,
    },
    closeUneven: {
      kind: 'question',
      phase,
      title: 'The tie rods do not come up evenly',
      how: 'A rod that turns without end is stripped; a cap that stands off has a seal pinched under it.',
      choices: {
        again: { label: 'Slackened all round: tighten again', to: 'cylinderClose' },
        open: { label: 'A seal is pinched, or a rod is renewed: cap off', to: 'pistonOut' },
      },
      makeSafe,
    },
    cylinderShut: {
      kind: 'reading',
      phase,
      title: 'Look that everything is shut',
      asks: [
        yesNo('cylinderTight', 'Cap down, every tie rod tight, cushion screw back'),
        yesNo('bodyTight', 'Bonnet and gland shut, connector tight'),
      ],
      judge: { rule: 'allYes', with: { fields: 'cylinderTight bodyTight' } },
      ways: {
        yes: { to: next, sets: { closure: 'shut', spring: 'contained' } },
        no: { to: 'cylinderNotShut' },
      },
      makeSafe,
    },
    cylinderNotShut: {
      kind: 'question',
      phase,
      title: 'Something is not shut',
      how: 'Tie rods crosswise, opposite ones in turn; a cap that stands off on one side has its seal pinched. Gland, bonnet and connector are looked at by hand.',
      choices: { again: { label: 'Tightened crosswise: look again', to: 'cylinderClose' } },
      makeSafe,
    },
  };
}
