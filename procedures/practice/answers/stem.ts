import { type At, type Looks, type Said, seenBy, word } from './look.ts';

function handwheelFeel({ valve: { build, sound }, random }: At): Said {
  if (build.seizedAt !== null) return word('fast');
  if (seenBy(random, { there: build.plugOff || build.plateSlack > 1, share: 0.65 })) return word('free');
  const heavy = build.frictionN > 2 * sound.frictionN;
  if (seenBy(random, { there: heavy, share: 0.93 })) return word('heavy all over');
  if (seenBy(random, { there: build.bindN > sound.frictionN, share: 0.93 }))
    return word('heavy in one place');
  return word(seenBy(random, { there: build.objectAt > 0, share: 0.5 }) ? 'heavy in one place' : 'even');
}

/** Stem, gland and coupling, by look and by hand. */
export const looksAtStem: Looks = {
  handwheelFeel,
  stemAndGland: ({ valve: { build }, random }) => {
    // Paint, grease and poor light: one look in twenty tells nothing.
    if (random() < 0.05) return { cannotTell: true };
    if (seenBy(random, { there: build.stemScored, share: 0.93 })) return word('scored or bent');
    return word(seenBy(random, { there: build.glandTight, share: 0.9 }) ? 'gland tight' : 'bright');
  },
  couplingMarks: ({ valve: { build }, random }) =>
    word(seenBy(random, { there: build.couplingSlip !== 0, share: 0.96 }) ? 'slipped' : 'in line'),
  plugFollowsStem: ({ valve: { build } }) =>
    word(build.plugOff ? 'nothing on it' : build.seizedAt !== null ? 'fast' : 'plug hangs on it'),
};
