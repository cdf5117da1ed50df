import type { LoopSample } from '../troubleshooting/loop-record/samples.ts';
import { atOnce } from './in-steps.ts';
import { calmRecord } from './loop.ts';
import { bell, seeded } from './random.ts';
import { keptInSteps, type SimulatedValve } from './simulated.ts';

/** How long the loop is recorded: some periods of most swings. Judgement. */
const RECORDED_S = 900;
/** What a transmitter of the stem adds, in percent of the travel. Judgement. */
const POSITION_NOISE_PERCENT = 0.05;

/** The loop of a simulated valve over a quarter of an hour with its set point left alone, a row a second. */
export function loopSamplesOf(valve: SimulatedValve): readonly LoopSample[] {
  return atOnce(longRecordKept(valve));
}

const LONG_RECORD = 'long record';

/**
 * The same in steps of a second of the loop; a record that was asked for before takes none.
 * @example for (const _ of recordLoop(valve)) await turn()
 */
export function* recordLoop(valve: SimulatedValve): Generator<void> {
  yield* longRecordKept(valve);
}

function* longRecordKept(valve: SimulatedValve): Generator<void, readonly LoopSample[]> {
  return yield* keptInSteps(valve, { key: LONG_RECORD, steps: () => longRecord(valve) });
}

function* longRecord(valve: SimulatedValve): Generator<void, readonly LoopSample[]> {
  const random = seeded(valve.seed + 5);
  const samples = yield* calmRecord(valve.build, { seconds: RECORDED_S, random });
  const hasPosition = valve.build.frame.positioner !== 'none';
  return samples.map(({ timeS, outputPercent, process, setPoint, travelFraction }) => ({
    timeS,
    outputPercent,
    process: 100 * process,
    setPoint: 100 * setPoint,
    positionPercent: hasPosition ? 100 * travelFraction + POSITION_NOISE_PERCENT * bell(random) : null,
  }));
}

/**
 * The same as a table that the card of a loop record takes.
 * @example loopTableOf(valve).split('\r\n')[0] // 'time [s],output [%],process value [%],set point [%],position [%]'
 */
export function loopTableOf(valve: SimulatedValve): string {
  const samples = loopSamplesOf(valve);
  const hasPosition = samples[0]?.positionPercent !== null;
  const head = ['time [s]', 'output [%]', 'process value [%]', 'set point [%]'];
  const rows = samples.map((one) => [
    one.timeS.toFixed(0),
    one.outputPercent.toFixed(2),
    one.process.toFixed(3),
    (one.setPoint ?? 0).toFixed(3),
    ...(hasPosition ? [(one.positionPercent ?? 0).toFixed(2)] : []),
  ]);
  return [[...head, ...(hasPosition ? ['position [%]'] : [])], ...rows]
    .map((cells) => `${cells.join(',')}\r\n`)
    .join('');
}
