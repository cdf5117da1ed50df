/**
 * Loaded before the program under test: its clock stands ahead of the machine's by the milliseconds that a file holds,
 * so that a test need not sit out the waits of a procedure. The file outlives the program, so time never runs back.
 */
import { readFileSync } from 'node:fs';

const file = process.env.YOKESIDE_TEST_CLOCK ?? '';
const MachineDate = Date;

function nowMs(): number {
  return MachineDate.now() + Number(readFileSync(file, 'utf8'));
}

class MovedDate extends MachineDate {
  constructor(...given: readonly unknown[]) {
    super(...((given.length === 0 ? [nowMs()] : given) as [number]));
  }

  static override now(): number {
    return nowMs();
  }
}

globalThis.Date = MovedDate as DateConstructor;

// The count that nobody sets goes along: time is meant to have passed, not a clock to have been moved.
const countMs = performance.now.bind(performance);
performance.now = () => countMs() + Number(readFileSync(file, 'utf8'));
