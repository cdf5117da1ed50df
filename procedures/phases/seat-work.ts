import type { ChoiceField, Field, Step, Target } from '../vocabulary.ts';
import { yesNo } from './common.ts';

type Own = 'trimLook' | 'trimParts' | 'lap' | 'blue' | 'blueBad' | 'cleanOut' | 'notClean';

interface Ways<Next extends string> {
  readonly phase: string;
  readonly next: Target<Next>;
  readonly makeSafe: Next;
}

function face(name: string, label: string): ChoiceField {
  return {
    name,
    label,
    type: 'choice',
    choices: [
      { value: 'marked', label: 'Light marks all round, no groove' },
      { value: 'bright', label: 'One bright even ring' },
      { value: 'grooved', label: 'A groove, wire-drawn across' },
      { value: 'pitted', label: 'Pitted or dented' },
    ],
  };
}

function length(name: string, label: string, optional = false): Field {
  return {
    name,
    label,
    type: 'quantity',
    dimension: 'length',
    ...(optional ? { optional: true as const } : {}),
  };
}

/** Seat and plug looked at, measured, lapped and blued; then everything cleaned out. */
export function seatWork<const Next extends string>(
  ways: Ways<Next>,
): Readonly<Record<Own, Step<Own | Next>>> {
  return { ...measured(ways), ...lapped(ways) } as Readonly<Record<Own, Step<Own | Next>>>;
}

function measured<const Next extends string>({
  phase,
  makeSafe,
}: Ways<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    trimLook: {
      kind: 'reading',
      phase,
      title: 'Look at seat, plug and guides, and measure them',
      how: 'Plug and stem between centres or on blocks, dial indicator at the seat face. Clearance is guide bore less guide diameter, each at its worst place. Limits by the manual; without one the stem may run out by {runOutUsual} (common practice, no source).',
      why: 'Lapping takes marks away. It never takes a groove away, and it never straightens a stem.',
      asks: [
        face('seatFace', 'Seat face'),
        face('plugFace', 'Plug face'),
        length('runOutM', 'Run-out of the plug face, whole reading of the dial'),
        length('runOutMaxM', 'Run-out allowed by the manual', true),
        length('guideBoreM', 'Guide bore, largest'),
        length('guidePlugM', 'Guide diameter, smallest'),
        length('clearanceMaxM', 'Clearance allowed by the manual', true),
        yesNo('pinTight', 'Plug tight on its stem; its pin sound'),
      ],
      judge: { rule: 'trimLook' },
      ways: {
        lap: { to: 'lap' },
        sound: { to: 'blue' },
        'seat or plug spent': { to: 'trimParts' },
        'stem bent': { to: 'trimParts' },
        'guides worn': { to: 'trimParts' },
        'plug loose': { to: 'trimParts' },
      },
      makeSafe,
    },
    trimParts: {
      kind: 'question',
      phase,
      title: 'The trim wants parts',
      how: 'A groove, a pit, a bent stem, a worn guide or a loose plug is not lapped away. Plug and stem come as one; a seat that does not come out is machined by a shop.',
      choices: {
        parts: { label: 'New parts are here: look at them and measure', to: 'trimLook' },
        lap: { label: 'Parts later: lap what there is', to: 'lap', reason: true },
        asIs: { label: 'Parts later: put it together as it is', to: 'cleanOut', reason: true },
      },
      makeSafe,
    },
  };
}

function lapped<const Next extends string>({
  phase,
  next,
  makeSafe,
}: Ways<Next>): Readonly<Partial<Record<Own, Step<Own | Next>>>> {
  return {
    lap: {
      kind: 'instruction',
      phase,
      title: 'Lap plug and seat together, the plug guided',
      how: 'Metal seats only; a soft insert is renewed. Guided by cage or bonnet without packing, so that it stands true. Fine compound, light hand, and stop as soon as the ring closes: lapping widens the seat.',
      why: 'Lapped by its own weight askew, a plug cuts an oval that no load shuts.',
      action: 'workInBody',
      do: [
        'Put a little compound on the seat face.',
        'Set the plug in, guided.',
        'Turn it to and fro by a quarter turn.',
        'Raise it often, to another place each time.',
        'Take the compound off to look.',
      ],
      next: { to: 'blue' },
      makeSafe,
    },
    blue: {
      kind: 'reading',
      phase,
      title: 'Blue the seat and look at the ring',
      how: 'All compound off first. A thin film on the plug, set down once, guided, without turning it.',
      action: 'workInBody',
      asks: [
        {
          name: 'blueRing',
          label: 'The ring on the seat',
          type: 'choice',
          choices: [
            { value: 'whole', label: 'Whole, narrow and even' },
            { value: 'gap', label: 'A gap in it' },
            { value: 'wide', label: 'Whole, but wide' },
            { value: 'double', label: 'Two rings, or at the wrong height' },
          ],
        },
      ],
      judge: { rule: 'oneOf', with: { field: 'blueRing', good: 'whole' } },
      ways: { yes: { to: 'cleanOut' }, no: { to: 'blueBad' } },
      makeSafe,
    },
    blueBad: {
      kind: 'question',
      phase,
      title: 'The ring is not whole and narrow',
      how: 'A gap wants more lapping, or a machined seat where it stays. A wide ring wants more load for the same tightness: it is machined narrow. Two rings: the plug was not guided.',
      choices: {
        lap: { label: 'Lap it again', to: 'lap' },
        parts: { label: 'It stays: parts or a machine shop', to: 'trimParts' },
        wide: { label: 'Wide but whole: leave it so', to: 'cleanOut', reason: true },
      },
      makeSafe,
    },
    cleanOut: {
      kind: 'reading',
      phase,
      title: 'Clean everything out, before a new ring goes in',
      how: 'Compound that is left laps on, in the packing and in the guides, for years.',
      action: 'workInBody',
      do: [
        'Take all compound off plug, seat and guides.',
        'Look at bore and ports with a light.',
        'Take every rest of the old gaskets off.',
      ],
      asks: [
        yesNo('compoundOff', 'A white cloth stays white on seat, plug, stem and guides'),
        yesNo('facesClean', 'Gasket faces clean, no groove across them'),
        yesNo('nothingInside', 'Nothing is left in the body: tools, cloth, old gasket counted'),
      ],
      oneGo: true,
      judge: { rule: 'allYes', with: { fields: 'compoundOff facesClean nothingInside' } },
      ways: { yes: { to: next }, no: { to: 'notClean' } },
      makeSafe,
    },
    notClean: {
      kind: 'question',
      phase,
      title: 'It is not clean yet',
      how: 'A gasket face with a groove across it leaks whatever the torque: it is dressed, or the shop faces it.',
      choices: {
        again: { label: 'Cleaned: look again', to: 'cleanOut' },
        face: { label: 'A face is grooved, put together all the same', to: next, reason: true },
      },
      makeSafe,
    },
  };
}
