import type { ActionClass } from '../../safety/action-classes.ts';
import type { OpenStep } from '../vocabulary.ts';

/** Words of an act that only some classes may stand for: a class for the adjuster opens no case. */
const WORDS_OF: readonly (readonly [RegExp, readonly ActionClass[]])[] = [
  [
    /\b(loosen|undo|open|lift|remove)\b.*\b(case|cover) ?(bolts?|halves)?\b/i,
    [
      'loosenCaseBolts',
      'loosenShortCaseBolts',
      'loosenLongCaseBolts',
      'openElectricCover',
      'openPneumaticCover',
      // Its joint is at the case; the case stays shut.
      'breakSignalLine',
    ],
  ],
  [/\b(turn|screw)\b.*\bplug stem\b/i, ['turnPlugStem']],
  [/\bwind\b.*\badjuster\b/i, ['windAdjusterOnTestAir', 'backOffAdjuster', 'windAdjusterBack']],
  [/\bback off\b.*\badjuster\b/i, ['backOffAdjuster']],
  [/\b(loosen|undo)\b.*\bpointer\b/i, ['setIndicatorOnTestAir']],
  [/\b(loosen|undo|open|remove)\b.*\b(gland|packing)\b/i, ['removePacking']],
  [/\btighten\b.*\bgland\b/i, ['tightenLiveGland', 'removePacking', 'closeBody']],
  [/\b(loosen|undo|break|open|lift)\b.*\bbonnet\b/i, ['breakBonnetJoint']],
  [/\b(loosen|undo)\b.*\byoke nut\b/i, ['undoYokeNut', 'liftActuator']],
];

/** Acts on a card that its class does not stand for. */
export function wordFaults(id: string, step: OpenStep): readonly string[] {
  if (step.kind === 'hold' || step.kind === 'question') return [];
  const acts = [step.title, ...('do' in step ? (step.do ?? []) : [])];
  return acts.flatMap((text) =>
    WORDS_OF.filter(
      ([words, classes]) => words.test(text) && (step.action === undefined || !classes.includes(step.action)),
    ).map(([, classes]) => `${id}: "${text}" wants the class ${classes.join(' or ')}`),
  );
}
