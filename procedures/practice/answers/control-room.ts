import { judgeLoop } from '../../troubleshooting/loop-record/judge.ts';
import { atOnce } from '../in-steps.ts';
import {
  answersAfterS,
  changedAtOnce,
  crossingsOf,
  offSetPoint,
  swingOf,
  swings,
  swingsOnTrend,
} from '../look-at-loop.ts';
import { heldInManual, type LoopRecord, loopRecord } from '../loop.ts';
import { loopSamplesOf } from '../loop-table.ts';
import { bell, seeded } from '../random.ts';
import { keptInSteps, recordOf, type SimulatedValve } from '../simulated.ts';
import { type At, type Looks, type Said, word } from './look.ts';

const OFF = 0.025;
/** Per cent of output below which a valve works near its seat. */
const NEAR_SHUT = 20;

function controllerOutput({ valve }: At): Said {
  const record = recordOf(valve);
  const tail = record.samples.slice(-60).map((one) => one.outputPercent);
  const last = tail.at(-1) ?? 0;
  if (swings(swingOf(record.samples))) return word('swings');
  const off = offSetPoint(record);
  const still = Math.max(...tail) - Math.min(...tail) < 0.2;
  if (last >= 97) return word('wound up');
  if (last <= 3) return word('wound down');
  if (Math.abs(off) > OFF && still) return word('frozen');
  // On its way to its end, where the process does not come: it will be there before anybody has walked out.
  if (Math.abs(off) > OFF) return word(last > (tail[0] ?? 0) ? 'wound up' : 'wound down');
  return word(last < NEAR_SHUT ? 'near shut' : 'in line');
}

function trend({ valve }: At): Said {
  const record = recordOf(valve);
  const swing = swingOf(record.samples);
  if (swingsOnTrend(swing))
    return word(swing.atEnds > 0.55 && swing.crossings <= 7 ? 'saw-tooth' : 'fast swing');
  if (changedAtOnce(record)) return word('sudden change');
  if (Math.abs(offSetPoint(record)) > OFF) return word('offset');
  const usualS = answersAfterS(atOnce(recordingSound(valve))) ?? 60;
  const nowS = answersAfterS(record);
  return word(nowS === null || nowS > 1.6 * usualS + 5 ? 'sluggish' : 'steady');
}

/** The loop as it was while nothing was wrong, in steps of a second. */
export function* recordingSound(valve: SimulatedValve): Generator<void, LoopRecord> {
  return yield* keptInSteps(valve, {
    key: 'sound record',
    steps: () => loopRecord(valve.sound, { faulty: valve.sound, random: seeded(valve.seed + 2) }),
  });
}

function holdInManual({ valve }: At): Said {
  const record = recordOf(valve);
  const swing = swingOf(record.samples);
  if (!swingsOnTrend(swing)) return word('no swing');
  const seen = heldInManual(valve.build, { record, random: seeded(valve.seed + 3) }).slice(-60);
  const left = Math.max(...seen) - Math.min(...seen);
  return word(left > 0.4 * swing.process && crossingsOf(seen) >= 2 ? 'goes on' : 'stops');
}

/** A record says what two methods say of it together, or nothing. */
function loopRecordSaid({ valve }: At): Said {
  const { verdict } = judgeLoop(loopSamplesOf(valve), 'settles');
  return verdict === 'no verdict' ? { cannotTell: true } : word(verdict);
}

/** From the control room. */
export const looksFromControlRoom: Looks = {
  controllerOutput,
  controllerMode: ({ valve: { build } }) =>
    word(build.mode === 'held' ? 'held' : build.inputBad ? 'bad input' : 'automatic'),
  trend,
  holdInManual,
  loopRecord: loopRecordSaid,
  secondMeasurement: ({ valve: { build }, random }) => ({
    value: Math.abs(100 * build.measureOff * 0.5 + 0.8 * bell(random)),
    readSigma: 0.5,
  }),
};
