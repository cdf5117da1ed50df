import type { Shows } from './cause.ts';
import { type CylinderEnd, endOpens, signalOpens, type ValveFacts } from './valve-facts.ts';

/** Which word of a check stands for a direction, on this valve. */
export interface Senses {
  readonly stays: 'stays shut' | 'stays open';
  readonly leans: 'less open' | 'more open';
  /** Where the controller's output goes when the valve stands there. */
  readonly output: 'wound up' | 'wound down';
  /** The end that is not reached when the valve cannot go this way. */
  readonly short: 'short of open' | 'short of shut';
  readonly runs: 'runs open' | 'runs shut';
}

const OPENING: Senses = {
  stays: 'stays open',
  leans: 'more open',
  output: 'wound down',
  short: 'short of open',
  runs: 'runs open',
};

const SHUTTING: Senses = {
  stays: 'stays shut',
  leans: 'less open',
  output: 'wound up',
  short: 'short of shut',
  runs: 'runs shut',
};

function towards(opens: boolean): Senses {
  return opens ? OPENING : SHUTTING;
}

/** Where the valve goes without signal. */
export function signalLost(v: ValveFacts): Senses {
  return towards(!signalOpens(v));
}

/** Where the valve goes on full signal. */
export function signalFull(v: ValveFacts): Senses {
  return towards(signalOpens(v));
}

export function otherEnd(end: CylinderEnd): CylinderEnd {
  return end === 'top' ? 'bottom' : 'top';
}

export function endPressure(end: CylinderEnd): 'topPressure' | 'bottomPressure' {
  return end === 'top' ? 'topPressure' : 'bottomPressure';
}

export function endNozzle(end: CylinderEnd): 'nozzlePressureTop' | 'nozzlePressureBottom' {
  return end === 'top' ? 'nozzlePressureTop' : 'nozzlePressureBottom';
}

/** Where the valve goes when an end is loaded. */
export function loading(v: ValveFacts, end: CylinderEnd): Senses {
  return towards(endOpens(v, end));
}

/** The end whose air shuts the valve. */
export function shuttingEnd(v: ValveFacts): CylinderEnd {
  return endOpens(v, 'top') ? 'bottom' : 'top';
}

/** Effects only where the valve has it: checks of other kinds are dropped when the model is built. */
export function bothEnds(of: {
  readonly end: CylinderEnd;
  readonly this: Readonly<Record<string, number>>;
  readonly other: Readonly<Record<string, number>>;
}): Shows {
  return { [endPressure(of.end)]: of.this, [endPressure(otherEnd(of.end))]: of.other };
}
