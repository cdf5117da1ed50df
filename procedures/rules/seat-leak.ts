import { collectedM3PerS } from '../calculations/leak-measured.ts';
import { pressureDecay } from '../calculations/pressure-decay.ts';
import { guarded } from '../cycle-verdict.ts';
import { atRoomM3PerS, ROOM, type SeatTest, seatTestOf } from '../seat-test.ts';
import type { Judged, Rule, RuleInput } from './rule.ts';

/** Less than this share of the test pressure shows no leak that is there (common practice, no source). */
const ENOUGH = 0.95;

/** A shorter look than this counts for nothing (common practice, no source). */
const LOOKED_S_MIN = 60;

/** How well a glass, a stop watch and the air of a room are known together (common practice, no source). */
const KNOWN_TO_SHARE = 0.05;

/** How well the temperature of shut-in air is known, in K (common practice, no source). */
const KNOWN_TO_K = 0.5;

/** The test pressure before anything is measured: it must stand, and no joint of body or rig may leak. */
export const seatPressureRule: Rule = {
  outcomes: ['stands', 'too little', 'joint leaks'],
  params: [],
  judge({ job, readings, words }) {
    const { pressurePa } = seatTestOf(job.sheet);
    const figures = { wantedPa: pressurePa };
    if (words.jointsTight !== 'yes') return { outcome: 'joint leaks', figures };
    const enough = (readings.seatTestPa?.valueSi ?? 0) >= ENOUGH * pressurePa;
    return { outcome: enough ? 'stands' : 'too little', figures };
  },
};

interface Measured {
  readonly leakM3PerS: number;
  readonly uncertaintyM3PerS: number;
}

/** What came through the seat against what this valve may leak, by whichever way it was measured. */
export const seatLeakRule: Rule = {
  outcomes: [
    'tight enough',
    'leaks',
    'too close',
    'too little pressure',
    'too short',
    'way does not fit',
    'not read',
  ],
  params: [],
  judge(input) {
    const test = seatTestOf(input.job.sheet);
    const figures = { allowedM3PerS: test.allowedM3PerS, wantedPa: test.pressurePa };
    const { seatTestPa, leakTimeS } = input.readings;
    if (seatTestPa === undefined || leakTimeS === undefined) return { outcome: 'not read', figures };
    if (seatTestPa.valueSi < ENOUGH * test.pressurePa) return { outcome: 'too little pressure', figures };
    if (leakTimeS.valueSi < LOOKED_S_MIN) return { outcome: 'too short', figures };
    const by = WAYS[input.words.leakBy ?? ''];
    return by === undefined
      ? { outcome: 'not read', figures }
      : by({ input, test, looked: leakTimeS.valueSi });
  },
};

interface Look {
  readonly input: RuleInput;
  readonly test: SeatTest;
  readonly looked: number;
}

const WAYS: Readonly<Record<string, (look: Look) => Judged>> = {
  glass({ input, test, looked }) {
    const volumeM3 = input.readings.leakVolumeM3?.valueSi;
    if (volumeM3 === undefined) return notRead(test);
    const leakM3PerS = collectedM3PerS({ volumeM3, elapsedS: looked });
    return judged(test, { leakM3PerS, uncertaintyM3PerS: KNOWN_TO_SHARE * leakM3PerS });
  },
  meter({ input, test }) {
    const leakM3PerS = input.readings.leakFlowM3PerS?.valueSi;
    if (leakM3PerS === undefined) return notRead(test);
    return judged(test, { leakM3PerS, uncertaintyM3PerS: KNOWN_TO_SHARE * leakM3PerS });
  },
  bubbles({ input, test, looked }) {
    const counted = input.readings.leakBubbles?.valueSi;
    if (test.bubblesPerMin === null) return { outcome: 'way does not fit', figures: {} };
    if (counted === undefined) return notRead(test);
    const perMin = (60 * counted) / looked;
    // The table is in bubbles of its own tube; how many millilitres each has is not asked.
    const leaks = perMin > test.bubblesPerMin;
    const figures = { bubblesPerMin: perMin, bubblesAllowedPerMin: test.bubblesPerMin };
    return { outcome: leaks ? 'leaks' : 'tight enough', figures };
  },
  'shut in': shutIn,
};

/** The outlet side shut in with a gauge on it: what comes through the seat raises its pressure. */
function shutIn({ input, test, looked }: Look): Judged {
  const { outletStartPa, outletEndPa, outletVolumeM3 } = input.readings;
  if (test.medium !== 'air') return { outcome: 'way does not fit', figures: {} };
  if (outletStartPa === undefined || outletEndPa === undefined || outletVolumeM3 === undefined)
    return notRead(test);
  const decay = pressureDecay({
    volumeM3: outletVolumeM3.valueSi,
    startPa: outletStartPa.valueSi,
    endPa: outletEndPa.valueSi,
    startAtmospherePaAbs: ROOM.pressurePaAbs,
    endAtmospherePaAbs: ROOM.pressurePaAbs,
    startK: ROOM.temperatureK,
    endK: ROOM.temperatureK,
    elapsedS: looked,
    gaugeUncertaintyPa: outletEndPa.uncertaintySi ?? 0,
    temperatureUncertaintyK: KNOWN_TO_K,
    volumeUncertaintyM3: 2 * KNOWN_TO_SHARE * outletVolumeM3.valueSi,
  });
  return judged(test, {
    leakM3PerS: atRoomM3PerS(Math.max(0, -decay.leakMolPerS)),
    uncertaintyM3PerS: atRoomM3PerS(decay.leakUncertaintyMolPerS),
  });
}

function judged({ allowedM3PerS }: SeatTest, { leakM3PerS, uncertaintyM3PerS }: Measured): Judged {
  const verdict = guarded({ value: leakM3PerS, limit: allowedM3PerS, uncertainty: uncertaintyM3PerS });
  const outcome = verdict === 'inside' ? 'tight enough' : verdict === 'outside' ? 'leaks' : 'too close';
  return { outcome, figures: { leakM3PerS, uncertaintyM3PerS, allowedM3PerS } };
}

function notRead({ allowedM3PerS }: SeatTest): Judged {
  return { outcome: 'not read', figures: { allowedM3PerS } };
}
