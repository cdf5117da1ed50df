import type { Facts } from '../facts.ts';
import type { Definition } from '../vocabulary.ts';
import { strokeCheck } from './stroke-check.ts';

type Place = Facts['place'];
type StrokeStep = keyof typeof strokeCheck.steps;

/** What a stroke check passes where nothing gives trouble and the plug is set: the marks of the job scale. */
const STROKE_CHECK = {
  bench: strokeWay({ before: ['benchRecord', 'keptAir', 'otherEnergies'], after: ['signBench'] }),
  line: strokeWay({
    before: [
      'consent',
      'loopManual',
      'openBypass',
      'shutInlet',
      'shutOutlet',
      'drainInlet',
      'drainOutlet',
      'shutSupply',
      'ventSupply',
      'noSecondFeed',
      'keptAir',
      'otherEnergies',
      'waitDrained',
      'drainsAgain',
      'breakSignalLine',
    ],
    after: [
      'backCheck',
      'zeroBeforeBack',
      'reconnect',
      'supplyBack',
      'signReturn',
      'unlockBlocks',
      'tellPeople',
      'openBlocks',
      'shutBypass',
      'loopBack',
    ],
  }),
};

const WAYS: Readonly<Record<string, Readonly<Record<Place, readonly string[]>>>> = {
  [strokeCheck.id]: STROKE_CHECK,
};

/**
 * The steps of a procedure on the straight way, in order; those that an older revision does not have are left out.
 *
 * @example straightWay(strokeCheck, 'bench')[0] // 'needs'
 */
export function straightWay({ id, steps }: Definition, place: Place): readonly string[] {
  return WAYS[id]?.[place].filter((step) => Object.hasOwn(steps, step)) ?? Object.keys(steps);
}

function strokeWay({
  before,
  after,
}: {
  readonly before: readonly StrokeStep[];
  readonly after: readonly StrokeStep[];
}): readonly StrokeStep[] {
  return [
    'needs',
    'knowEnergies',
    'rigGauges',
    'rigShutIn',
    'rigHold',
    'rigBleed',
    ...before,
    'springLook',
    'holdWork',
    'connectAir',
    'contactFound',
    'asFoundCycle',
    'asFoundStrokes',
    'asFoundVerdict',
    'chooseWork',
    'threadLook',
    'holdForPlug',
    'turnStem',
    'contactLeft',
    'holdOpen',
    'setIndicator',
    'asLeftCycle',
    'asLeftStrokes',
    'asLeftVerdict',
    'airOff',
    'disconnectAir',
    'finalCheck',
    'nextPerson',
    ...after,
  ];
}
