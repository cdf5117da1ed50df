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

/** Apart from the actuator: what drags is packing and guide, whatever the actuator does. */
function plugFollowsStem({ valve: { build, sound }, random }: At): Said {
  if (build.plugOff) return word('nothing on it');
  if (build.seizedAt !== null) return word('fast');
  const heavy = build.frictionN - build.boreFrictionN > 2 * sound.frictionN;
  if (seenBy(random, { there: heavy, share: 0.85 })) return word('drags');
  const binds = build.bindN > sound.frictionN;
  return word(seenBy(random, { there: binds, share: 0.6 }) ? 'drags' : 'plug hangs on it');
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
  plugFollowsStem,
};
