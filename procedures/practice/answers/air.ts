import { readPressure } from '../gauge.ts';
import { run } from '../run.ts';
import { restedAt } from '../simulated.ts';
import { type At, type Looks, processOf, type Said, seenBy, word } from './look.ts';

function supplyGauge(at: At, truePa: number) {
  const { build } = at.valve;
  return readPressure(build, {
    point: 'supply',
    truePa,
    mostPa: 1.3 * build.frame.supplyPa,
    random: at.random,
  });
}

function supplyPressure(at: At): Said {
  const { build } = at.valve;
  const state = restedAt(at.valve, { outputPercent: 60, process: processOf(at.hub) });
  const cut = build.positionerCockOpen === 0 && !build.gaugeBeforeCock;
  const read = supplyGauge(at, cut ? 0 : state.supplyPa);
  if (read.value < 0.03 * build.frame.supplyPa) return word('none');
  return {
    value: (100 * read.value) / build.frame.supplyPa - 100,
    readSigma: (100 * read.sigma) / build.frame.supplyPa,
  };
}

function supplyDroop(at: At): Said {
  const process = processOf(at.hub);
  const state = restedAt(at.valve, { outputPercent: 35, process });
  if (state.supplyPa < 5e3) return { cannotTell: true };
  const before = supplyGauge(at, state.supplyPa);
  let leastPa = state.supplyPa;
  run(at.valve.build, {
    state,
    seconds: 8,
    doing: (timeS) => ({ outputPercent: timeS < 4 ? 70 : 35, process }),
    seen: (now) => {
      leastPa = Math.min(leastPa, now.supplyPa);
    },
  });
  const least = supplyGauge(at, leastPa);
  const factor = 100 / Math.max(1, before.value);
  return { value: (before.value - least.value) * factor, readSigma: 1.4 * least.sigma * factor };
}

/** What is heard above the bleed of a sound valve, and what is missed of it. kg/s; judgement. */
const LOUD_KG_PER_S = 3e-4;
const HEARD_KG_PER_S = 3e-5;

function listenExhaust(at: At): Said {
  const process = processOf(at.hub);
  const blown = restedAt(at.valve, { outputPercent: 60, process }).blownKgPerS;
  const usual = restedAt(at.valve, { outputPercent: 60, process, which: 'sound' }).blownKgPerS;
  const extra = blown - usual;
  if (seenBy(at.random, { there: extra > LOUD_KG_PER_S, share: 0.92 })) return word('loud');
  const silent = usual > HEARD_KG_PER_S ? blown < 0.2 * usual : silentSource(at);
  return word(seenBy(at.random, { there: silent, share: 0.88 }) ? 'no bleed' : 'small bleed');
}

/** Without a positioner the pilot of the source is all that bleeds. */
function silentSource({ valve: { build } }: At): boolean {
  return build.headerPa === 0 || build.sourceRestriction < 0.05 || build.sourceNozzle < 0.1;
}

/** The air set. */
export const looksAtAir: Looks = {
  supplyPressure,
  supplyDroop,
  filterBowl: ({ valve: { build }, random }) =>
    word(build.bowl !== 'dry' && random() < 0.95 ? build.bowl : 'dry'),
  listenExhaust,
};
