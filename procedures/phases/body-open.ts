import type { Caution, Step, Target } from '../vocabulary.ts';
import { yesNo } from './common.ts';
import { putRight } from './finding.ts';

type Open =
  | 'bonnetCrack'
  | 'bonnetNotDry'
  | 'bonnetOff'
  | 'gasTest'
  | 'gasNotClean'
  | 'trimOut'
  | 'partsMissing';
type Shut = 'trimIn' | 'bonnetOn' | 'bonnetTorque' | 'bonnetNotRight' | 'bonnetWitness';

/** How long a witness has to come to the last round of the nuts, in seconds (common practice, no source). */
const WITNESS_S = 900;

interface Ways<Next extends string> {
  readonly phase: string;
  readonly next: Next;
  readonly makeSafe: Next;
}

const THROWS: Caution = {
  word: 'danger',
  hazard: 'What is still in the body throws the bonnet, or comes out at its joint.',
  consequence: 'Pressure, heat or poison kills whoever stands at the joint.',
  avoid: 'Far side first, nuts on by their full thread. Face away, shield down, the way out free.',
};

/** The bonnet loosened from the far side and cracked before a nut comes off. */
export function openBonnet<const Next extends string>({
  phase,
  next,
  makeSafe,
}: Ways<Next>): Readonly<Record<'bonnetCrack' | 'bonnetNotDry' | 'bonnetOff', Step<Open | Next>>> {
  return {
    bonnetCrack: {
      kind: 'reading',
      phase,
      title: 'Loosen the bonnet nuts, far side first, and crack the joint',
      how: 'Half a turn each, those away from you first. Wedge the joint apart on the far side and wait. No nut comes off yet.',
      action: 'breakBonnetJoint',
      caution: THROWS,
      do: [
        'Loosen the far nuts by half a turn.',
        'Loosen the near nuts alike.',
        'Break the joint on the far side.',
        'Watch the joint for a minute.',
      ],
      asks: [
        {
          name: 'jointShows',
          label: 'What comes out at the joint',
          type: 'choice',
          choices: [
            { value: 'nothing', label: 'Nothing, watched for a minute' },
            { value: 'drops', label: 'Drops that stop' },
            { value: 'flows', label: 'It keeps coming' },
          ],
        },
      ],
      judge: { rule: 'oneOf', with: { field: 'jointShows', good: 'nothing,drops' } },
      ways: {
        yes: { to: 'bonnetOff', sets: { closure: 'open' } },
        no: { to: 'bonnetNotDry', sets: { closure: 'open' } },
      },
      makeSafe,
    },
    bonnetNotDry: {
      kind: 'question',
      phase,
      title: 'It keeps coming at the joint',
      how: 'A block valve passes, or a pocket was not drained. The nuts are run down again evenly, then the line is looked at.',
      choices: {
        stopped: {
          label: 'Nuts run down, drained again, and it has stopped: crack it again',
          to: 'bonnetCrack',
        },
        stop: { label: 'Nuts run down: stop', to: makeSafe },
      },
      makeSafe,
    },
    bonnetOff: {
      kind: 'reading',
      phase,
      title: 'Raise the bonnet straight off, stem and plug with it where they are joined',
      how: 'Hung where it is heavy. Count the nuts; lay stem and plug on wood, seat face up.',
      action: 'breakBonnetJoint',
      caution: {
        word: 'warning',
        hazard: 'A bonnet that is heavy swings or falls as its last nut comes off.',
        consequence: 'It crushes hands and feet.',
        avoid: 'Hang it before the last nuts; fingers out of the joint, nobody under it.',
      },
      do: ['Take the nuts off.', 'Raise the bonnet straight up.', 'Cap the body.'],
      asks: [yesNo('gasketWhole', 'The old gasket came out whole, or every piece of it')],
      judge: { rule: 'record' },
      ways: { kept: { to: next, sets: { closure: 'open' } } },
      makeSafe,
    },
  };
}

/** Plug, cage and seat out, where this fluid wants it behind a fresh gas test. */
export function takeTrimOut<const Next extends string>({
  phase,
  next,
  makeSafe,
}: Omit<Ways<Next>, 'next'> & { readonly next: Target<Next> }): Readonly<
  Record<'gasTest' | 'gasNotClean' | 'trimOut' | 'partsMissing', Step<Open | Next>>
> {
  return {
    gasTest: {
      kind: 'reading',
      phase,
      title: 'Test the body for gas, where the fluid can burn or poison',
      how: '{processFluid}. Pockets in cage and seat keep it after the body was drained.',
      why: 'Gas that is left in a body burns or poisons whoever leans over it.',
      asks: [
        {
          name: 'gasTest',
          label: 'Gas test',
          type: 'choice',
          choices: [
            { value: 'absent', label: 'This fluid neither burns nor poisons' },
            { value: 'fresh', label: 'Tested now and clean' },
            { value: 'none', label: 'Not clean, or not tested' },
          ],
        },
        { name: 'gasTestBy', label: 'Instrument, what it read, and when', type: 'text', optional: true },
      ],
      judge: { rule: 'gasTest' },
      ways: {
        'may be opened': {
          to: 'trimOut',
          sets: { gasTest: { from: 'gasTest', among: ['fresh', 'absent'] } },
        },
        'the fluid wants one': { to: 'gasNotClean' },
        'not said how': { to: 'gasNotClean' },
        'not clean': { to: 'gasNotClean' },
      },
      makeSafe,
    },
    gasNotClean: {
      kind: 'question',
      phase,
      title: 'The body is not shown free of gas',
      how: 'Purge it by the site’s rule, with everybody back, and test again.',
      choices: {
        again: { label: 'Purged: test again', to: 'gasTest' },
        stop: { label: 'Leave it and stop', to: makeSafe },
      },
      makeSafe,
    },
    trimOut: {
      kind: 'reading',
      phase,
      title: 'Take plug, cage and seat out',
      how: 'Straight up, without knocking the seat face. A screwed seat by its own tool, after its thread was soaked.',
      action: 'removeTrim',
      caution: {
        word: 'warning',
        hazard: 'Pockets in cage and seat keep pressure and residue.',
        consequence: 'They spit into the face.',
        avoid: 'Shield down, gloves on; loosen, wait, then take it out.',
      },
      do: [
        'Take plug and stem out.',
        'Take the cage out.',
        'Take the seat out where it comes out.',
        'Cap the body.',
      ],
      asks: [yesNo('trimCounted', 'All parts and every old gasket laid out in their order')],
      judge: { rule: 'allYes', with: { fields: 'trimCounted' } },
      ways: {
        yes: { to: next, sets: { closure: 'open' } },
        no: { to: 'partsMissing', sets: { closure: 'open' } },
      },
      makeSafe,
    },
    partsMissing: putRight<Open | Next>({
      phase,
      title: 'A part or a piece of gasket is missing',
      how: 'It is in the body, on the seat, or went down the line. A light, a mirror and a magnet; the outlet side as well. What stays in is caught between plug and seat.',
      again: ['Found: lay everything out and count', 'trimOut'],
      stop: ['Not found: cap the body and stop', makeSafe],
      makeSafe,
    }),
  };
}

/** Trim, gasket and bonnet back, the nuts in passes, the stem free in between. */
export function closeBonnet<const Next extends string>({
  phase,
  next,
  makeSafe,
}: Ways<Next>): Readonly<Record<Shut, Step<Shut | Next>>> {
  return {
    trimIn: {
      kind: 'reading',
      phase,
      title: 'Fit seat, cage and plug with new gaskets',
      how: 'Gaskets dry and new, never one that was pressed before. Seat by its torque from the manual, its thread lubricated as it says. The cage is turned to its mark; a seal ring is led in at the chamfer, never forced.',
      action: 'closeBody',
      do: ['Check the body with a light.', 'Fit gasket and seat.', 'Fit cage and plug.'],
      asks: [
        { name: 'gasketParts', label: 'Gaskets, by their part numbers', type: 'text' },
        yesNo('plugMoves', 'The plug moves freely by hand over its whole way'),
      ],
      oneGo: true,
      judge: { rule: 'allYes', with: { fields: 'plugMoves' } },
      ways: { yes: { to: 'bonnetOn' }, no: { to: 'plugBinds' } },
      makeSafe,
    },
    plugBinds: {
      kind: 'question',
      phase,
      title: 'The plug does not move freely',
      how: 'Burr on cage or guide, a seal ring caught, a gasket that lies askew, dirt. It is not forced: a plug that binds cold seizes hot.',
      choices: {
        again: { label: 'Found and put right: fit it again', to: 'trimIn' },
        stop: { label: 'Not found: stop here', to: makeSafe },
      },
      makeSafe,
    },
    bonnetOn: {
      kind: 'reading',
      phase,
      title: 'Set the bonnet on, its nuts by hand',
      how: 'Threads clean and lubricated as the manual has it: torque is worth nothing on a dry thread.',
      action: 'closeBody',
      caution: {
        word: 'warning',
        hazard: 'A bonnet that is heavy swings or falls as it is set down.',
        consequence: 'It crushes hands and feet.',
        avoid: 'Let it hang until its nuts are on; fingers out of the joint, nobody under it.',
      },
      do: ['Lower the bonnet to its mark.', 'Tighten the nuts by hand.', 'Check that the gap is even.'],
      asks: [
        {
          name: 'bonnetNuts',
          label: 'Bonnet nuts, counted',
          type: 'choice',
          choices: ['4', '6', '8', '12', '16', 'other'].map((value) => ({
            value,
            label: value === 'other' ? 'another count' : value,
          })),
        },
        {
          name: 'bonnetTorqueNm',
          label: 'Torque by the maker’s manual',
          type: 'quantity',
          dimension: 'torque',
        },
      ],
      judge: { rule: 'record' },
      ways: { kept: { to: 'bonnetTorque' } },
      makeSafe,
    },
    ...torqued({ phase, next, makeSafe }),
  } as Readonly<Record<Shut, Step<Shut | Next>>>;
}

function torqued<const Next extends string>({
  phase,
  next,
  makeSafe,
}: Ways<Next>): Readonly<Partial<Record<Shut, Step<Shut | Next>>>> {
  return {
    bonnetTorque: {
      kind: 'reading',
      phase,
      title: 'Tighten the bonnet nuts in passes: {bonnetPasses}',
      how: 'Crosswise, counted clockwise: {bonnetOrder}. Then once around until no nut moves. The stem stays free after each pass.',
      why: 'One nut to its full torque at once tips the bonnet, and the cage with it.',
      action: 'closeBody',
      asks: [
        {
          name: 'bonnetTorqueLeftNm',
          label: 'Torque of each nut, as left',
          type: 'quantity',
          dimension: 'torque',
          wanted: 'bonnetTorque',
        },
        yesNo('stemFree', 'The stem moves freely by hand, the gap is even all round'),
      ],
      judge: { rule: 'torqued' },
      ways: {
        'as wanted': { to: 'bonnetWitness' },
        less: { to: 'bonnetNotRight' },
        more: { to: 'bonnetNotRight' },
        'stem not free': { to: 'bonnetNotRight' },
      },
      makeSafe,
    },
    bonnetWitness: {
      kind: 'hold',
      phase,
      title: 'Show the last round of the bonnet nuts to a witness',
      how: 'Once around with the wrench at {bonnetTorque}, before packing and actuator stand in the way. Nobody sees this joint under the wrench again.',
      point: 'witness',
      noticeS: WITNESS_S,
      waivedBy: 'engineer',
      criterion: 'On one round at {bonnetTorque} no nut moves, the gap is even and the stem is free.',
      shows: ['bonnetTorque', 'bonnetTorqueLeft', 'bonnetOrder'],
      evidence: [],
      allows: [],
      signed: { to: next },
      sentBack: { to: 'bonnetNotRight' },
      makeSafe,
    },
    bonnetNotRight: {
      kind: 'question',
      phase,
      title: 'The bonnet is not as it should be',
      how: 'Wanted: {bonnetTorque}. A bolt that had more is stretched and changed. A stem that binds now means a bonnet or a cage that stands askew: loosened, set right, and all passes again.',
      choices: {
        again: { label: 'Put right: all passes again', to: 'bonnetTorque' },
        askew: { label: 'Let off again: set cage and bonnet right', to: 'trimIn' },
      },
      makeSafe,
    },
  };
}
