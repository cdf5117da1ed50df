/** The gauges of the bench: what each shows with the output somewhere, and how that makes the reading of a check. */
import type { Dimension } from '../../calculations/unit-table.ts';
import type { Hub } from '../../troubleshooting/check.ts';
import {
  CHECK_READINGS,
  type CheckReadings,
  type NumberAsked,
} from '../../troubleshooting/check-readings.ts';
import { type CheckId, checkOf } from '../../troubleshooting/checks.ts';
import { actuatorGauge, valveFactsOf } from '../../troubleshooting/valve-facts.ts';
import { seeCheck } from '../answer.ts';
import { processOf, type Said } from '../answers/look.ts';
import { otherEnd, signalOpens } from '../build.ts';
import { dialFor, type Point, readPressure, readTravel } from '../gauge.ts';
import { rested } from '../run.ts';
import { currentMa } from '../signal-path.ts';
import { kept, lookRandom, restedAt, type SimulatedValve } from '../simulated.ts';
import type { State } from '../state.ts';
import { wordOf } from './complaint.ts';

/** One reading as it stands before the apprentice, by the field that asks for it. */
export interface Shown {
  readonly name: string;
  readonly label: string;
  readonly dimension: Dimension;
  readonly valueSi: number;
  /** End of the scale; null for a figure that is told and has no scale. */
  readonly fullSi: number | null;
}

export interface SeenAtCheck {
  /** What is found, as the check words it; null where nothing can be told or numbers say it. */
  readonly found: string | null;
  readonly cannotTell: boolean;
  readonly shown: readonly Shown[];
  /** The gauges follow the output: whoever makes this check may ask for another one. */
  readonly followsOutput: boolean;
  /** Controller output, as signal. */
  readonly outputPercent: number;
}

/** Controller output as signal, and where it came from. */
export interface Output {
  readonly outputPercent: number;
  readonly fromPercent: number;
}

export const USUAL_OUTPUT: Output = { outputPercent: 60, fromPercent: 60 };

const FOLLOW: readonly CheckId[] = [
  'loopCurrent',
  'sourceOutlet',
  'valveAgainstSource',
  'valveAgainstCommand',
  'supplyPressure',
  'travelAgainstOutput',
  'airAtTravel',
  'topPressure',
  'bottomPressure',
];

/** Minutes that a shut-in space is watched on the bench. */
const WATCHED_S = 60;

/**
 * What an apprentice sees at a check of the simulated valve. The same look shows the same.
 * @param of.again  how often the check was made before: another look has its own small error
 */
export function seenAtCheck(
  valve: SimulatedValve,
  of: { readonly check: CheckId; readonly hub: Hub; readonly again: number; readonly output: Output },
): SeenAtCheck {
  const said = seeCheck(valve, { ...of, random: lookRandom(valve, `${of.check} ${of.again}`) });
  const asked = CHECK_READINGS[of.check];
  const follows = FOLLOW.includes(of.check);
  const { outputPercent } = of.output;
  const numbers = asked !== undefined && !('cannotTell' in said) && (follows || 'value' in said);
  const read = numbers ? readingsOf(valve, { ...of, asks: asked.asks, said }) : [];
  const shown = asked !== undefined && makesAnswer(valve, { asked, read }) ? read : [];
  const measured = checkOf(of.check).measured !== undefined && 'value' in said && shown.length === 0;
  const word = 'word' in said ? said.word : measured ? wordOf(of.check, said) : null;
  return {
    found: word === '' ? null : word,
    cannotTell: 'cannotTell' in said,
    shown,
    followsOutput: follows,
    outputPercent,
  };
}

/** Where the sheet lacks what a number is held against, words alone answer. */
function makesAnswer(
  valve: SimulatedValve,
  { asked, read }: { readonly asked: CheckReadings; readonly read: readonly Shown[] },
): boolean {
  if (read.length === 0) return false;
  const reads = Object.fromEntries(read.map(({ name, valueSi }) => [name, { value: valueSi, sigma: 0 }]));
  return asked.onAxis(valveFactsOf(valve.build.frame.sheet), reads) !== null;
}

interface Reading {
  readonly check: CheckId;
  readonly hub: Hub;
  readonly output: Output;
  readonly asks: readonly NumberAsked[];
  readonly said: Said;
}

function readingsOf(valve: SimulatedValve, of: Reading): readonly Shown[] {
  const state = stateAtOutput(valve, of);
  const passing = passingOf(valve, { ...of, state });
  return of.asks.map(({ name, label, dimension }) => {
    const { valueSi, fullSi } = passing[name] ?? standing(valve, { ...of, name, state });
    return { name, label, dimension: dimension === 'travel' ? 'length' : dimension, valueSi, fullSi };
  });
}

function stateAtOutput(valve: SimulatedValve, { hub, output }: Reading): State {
  const process = processOf(hub);
  const opening = (percent: number) => (signalOpens(valve.build.frame) ? percent : 100 - percent);
  const { outputPercent, fromPercent } = output;
  const state = kept(valve, {
    key: `gauges ${fromPercent} ${outputPercent} ${process}`,
    work: () => {
      const from = restedAt(valve, { outputPercent: opening(fromPercent), process });
      return rested(valve.build, { outputPercent: opening(outputPercent), process, from });
    },
  });
  return structuredClone(state);
}

type Scaled = Pick<Shown, 'valueSi' | 'fullSi'>;

/** What stands on a gauge, with the output where it is. */
function standing(
  valve: SimulatedValve,
  of: Reading & { readonly name: string; readonly state: State },
): Scaled {
  const { build } = valve;
  const { frame } = build;
  const { name, state, output } = of;
  const random = lookRandom(valve, `${of.check} ${name} ${output.outputPercent}`);
  if (name === 'outputPercent') return { valueSi: output.outputPercent, fullSi: null };
  if (name === 'openedM') {
    const slip = frame.positioner === 'none' ? build.couplingSlip : 0;
    return {
      valueSi: readTravel(build, { stemAt: state.stemAt - slip, random }).value,
      fullSi: frame.travelM,
    };
  }
  if (name === 'currentA') {
    const opening = signalOpens(frame) ? output.outputPercent : 100 - output.outputPercent;
    return { valueSi: Math.round(currentMa(build, opening) * 50) / 50_000, fullSi: null };
  }
  const { point, truePa, mostPa } = pointOf(valve, of);
  const { value } = readPressure(build, { point, truePa: Math.max(0, truePa), mostPa, random });
  return { valueSi: value, fullSi: dialFor(mostPa) };
}

function pointOf(
  valve: SimulatedValve,
  of: { readonly check: CheckId; readonly name: string; readonly state: State },
): { readonly point: Point; readonly truePa: number; readonly mostPa: number } {
  const { build } = valve;
  const { frame } = build;
  const { state } = of;
  const signal = 1.5 * frame.signalHighPa;
  switch (of.name) {
    case 'sourcePa':
      return { point: 'source', truePa: state.sourcePa, mostPa: signal };
    case 'supplySeenPa': {
      const cut = build.positionerCockOpen === 0 && !build.gaugeBeforeCock;
      return { point: 'supply', truePa: cut ? 0 : state.supplyPa, mostPa: 1.3 * frame.supplyPa };
    }
    case 'actuatorPa': {
      const point = actuatorGauge(valveFactsOf(frame.sheet)) === 'signal' ? 'signal' : 'actuator';
      const mostPa = 1.2 * Math.max(frame.supplyPa, frame.signalHighPa);
      return { point, truePa: state.endPa[frame.risingEnd], mostPa };
    }
    case 'endPa': {
      const top = of.check === 'topPressure';
      const truePa = state.endPa[top ? frame.topEnd : otherEnd(frame.topEnd)];
      return { point: top ? 'cylinderTop' : 'cylinderBottom', truePa, mostPa: frame.supplyPa };
    }
    default:
      return { point: 'signal', truePa: state.signalPa, mostPa: signal };
  }
}

/** Readings that come one after the other while something is done: made from what the look came to. */
function passingOf(
  valve: SimulatedValve,
  of: Reading & { readonly state: State },
): Readonly<Record<string, Scaled>> {
  const { frame } = valve.build;
  const value = 'value' in of.said ? of.said.value : 0;
  const signalDial = dialFor(1.5 * frame.signalHighPa);
  const spanPa = frame.signalHighPa - frame.signalLowPa;
  const half = frame.signalLowPa + spanPa / 2;
  const on = (fullSi: number) => (valueSi: number) => ({ valueSi: Math.max(0, valueSi), fullSi });
  const signal = on(signalDial);
  switch (of.check) {
    case 'supplyDroop': {
      const restPa = Math.max(of.state.supplyPa, 1);
      const supply = on(dialFor(1.3 * frame.supplyPa));
      return { supplyRestPa: supply(restPa), supplyLowestPa: supply(restPa * (1 - value / 100)) };
    }
    case 'blockActuatorSide':
    case 'rigHold': {
      const firstPa = of.check === 'rigHold' ? half : Math.max(1e4, of.state.endPa[frame.risingEnd]);
      const gauge = on(dialFor(1.2 * Math.max(frame.doubleActing ? frame.supplyPa : 0, frame.signalHighPa)));
      return {
        firstPa: gauge(firstPa),
        lastPa: gauge(firstPa * (1 - (value * WATCHED_S) / 6000)),
        watchedS: { valueSi: WATCHED_S, fullSi: null },
      };
    }
    case 'gaugeAgainstGauge':
      return { onePa: signal(half), otherPa: signal(half + (value * spanPa) / 100) };
    case 'upAgainstDown': {
      const { sheet } = frame;
      const rangePa = frame.doubleActing
        ? (sheet.supplyHighPa ?? spanPa)
        : sheet.benchSetHighPa - sheet.benchSetLowPa;
      const middlePa = frame.doubleActing
        ? frame.supplyPa / 2
        : (sheet.benchSetHighPa + sheet.benchSetLowPa) / 2;
      const gauge = on(dialFor(1.2 * Math.max(frame.supplyPa, frame.signalHighPa)));
      const apart = (value * rangePa) / 200;
      return { upPa: gauge(middlePa + apart), downPa: gauge(middlePa - apart) };
    }
    default:
      return {};
  }
}
