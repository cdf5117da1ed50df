import type { Dimension } from '../calculations/unit-table.ts';
import type { CheckId } from './checks.ts';
import * as axis from './readings/axis.ts';
import { signalOpens, type ValveFacts } from './valve-facts.ts';

type OnAxis = axis.OnAxis;
type Read = axis.Read;

/** One number that a check may be answered with. */
export interface NumberAsked {
  readonly name: string;
  readonly label: string;
  readonly dimension: Dimension | 'travel';
}

export type Reads = Readonly<Record<string, Read>>;

/** What is read at a check, and how it comes onto its axis; null where the sheet lacks what that takes. */
export interface CheckReadings {
  readonly asks: readonly NumberAsked[];
  readonly onAxis: (v: ValveFacts, reads: Reads) => OnAxis | null;
}

const pressure = (name: string, label: string): NumberAsked => ({ name, label, dimension: 'pressure' });
const OUTPUT: NumberAsked = {
  name: 'outputPercent',
  label: 'Controller output at that moment, as signal',
  dimension: 'percent',
};
const TRAVEL: NumberAsked = {
  name: 'openedM',
  label: 'Travel at that moment, from shut',
  dimension: 'travel',
};
const FIRST = pressure('firstPa', 'When it was shut in');
const LAST = pressure('lastPa', 'At the end');
const ELAPSED: NumberAsked = { name: 'watchedS', label: 'How long it was watched', dimension: 'time' };

/** Output as opening asked: 0 is shut. */
function openingPercent(v: ValveFacts, signalPercent: number): number {
  return signalOpens(v) ? signalPercent : 100 - signalPercent;
}

const at = (reads: Reads, name: string): Read => {
  const read = reads[name];
  if (read === undefined) throw new Error(`${name} was not read`);
  return read;
};

const apart = (v: ValveFacts, of: { readonly one: Read; readonly other: Read }): OnAxis => {
  const { value, readSigma } = axis.lessOther(v, { pressurePa: of.one, otherPa: of.other });
  return { value: Math.abs(value), readSigma };
};

const fall = (reads: Reads): OnAxis | null =>
  axis.lostAMinute({
    firstPa: at(reads, 'firstPa'),
    lastPa: at(reads, 'lastPa'),
    elapsedS: at(reads, 'watchedS').value,
  });

const END: CheckReadings = {
  asks: [pressure('endPa', 'This end of the cylinder'), pressure('supplySeenPa', 'Supply gauge')],
  onAxis: (_, reads) =>
    axis.percentOfSupply({ pressurePa: at(reads, 'endPa'), supplyPa: at(reads, 'supplySeenPa') }),
};

/** The checks that a number may answer. A word answers any of them. */
export const CHECK_READINGS: { readonly [C in CheckId]?: CheckReadings } = {
  loopCurrent: {
    asks: [{ name: 'currentA', label: 'Current at the terminals', dimension: 'current' }, OUTPUT],
    onAxis: (_, reads) =>
      axis.currentOff({ currentA: at(reads, 'currentA'), outputPercent: at(reads, 'outputPercent').value }),
  },
  sourceOutlet: {
    asks: [pressure('sourcePa', 'Gauge at the outlet of the source'), OUTPUT],
    onAxis: (v, reads) =>
      axis.againstCommand(v, {
        pressurePa: at(reads, 'sourcePa'),
        signalPercent: at(reads, 'outputPercent').value,
      }),
  },
  valveAgainstSource: {
    asks: [pressure('signalSeenPa', 'Signal at the valve'), pressure('sourcePa', 'Pressure at its source')],
    onAxis: (v, reads) =>
      axis.lessOther(v, { pressurePa: at(reads, 'signalSeenPa'), otherPa: at(reads, 'sourcePa') }),
  },
  valveAgainstCommand: {
    asks: [pressure('signalSeenPa', 'Signal at the valve'), OUTPUT],
    onAxis: (v, reads) =>
      axis.againstCommand(v, {
        pressurePa: at(reads, 'signalSeenPa'),
        signalPercent: at(reads, 'outputPercent').value,
      }),
  },
  supplyPressure: {
    asks: [pressure('supplySeenPa', 'Supply gauge')],
    onAxis: (v, reads) => axis.againstSetSupply(v, at(reads, 'supplySeenPa')),
  },
  supplyDroop: {
    asks: [
      pressure('supplyRestPa', 'Supply gauge at rest'),
      pressure('supplyLowestPa', 'Lowest while it strokes'),
    ],
    onAxis: (_, reads) => {
      const left = axis.percentOfSupply({
        pressurePa: at(reads, 'supplyLowestPa'),
        supplyPa: at(reads, 'supplyRestPa'),
      });
      return left === null ? null : { ...left, value: 100 - left.value };
    },
  },
  travelAgainstOutput: {
    asks: [TRAVEL, OUTPUT],
    onAxis: (v, reads) =>
      axis.travelOff(v, {
        openedM: at(reads, 'openedM'),
        outputPercent: openingPercent(v, at(reads, 'outputPercent').value),
      }),
  },
  airAtTravel: {
    asks: [pressure('actuatorPa', 'Actuator gauge'), TRAVEL],
    onAxis: (v, reads) =>
      axis.airAtTravelOff(v, { pressurePa: at(reads, 'actuatorPa'), openedM: at(reads, 'openedM') }),
  },
  blockActuatorSide: { asks: [FIRST, LAST, ELAPSED], onAxis: (_, reads) => fall(reads) },
  rigHold: { asks: [FIRST, LAST, ELAPSED], onAxis: (_, reads) => fall(reads) },
  gaugeAgainstGauge: {
    asks: [pressure('onePa', 'The one gauge'), pressure('otherPa', 'The other gauge')],
    onAxis: (v, reads) => apart(v, { one: at(reads, 'onePa'), other: at(reads, 'otherPa') }),
  },
  topPressure: END,
  bottomPressure: END,
  upAgainstDown: {
    asks: [
      pressure('upPa', 'At half travel, coming from below'),
      pressure('downPa', 'At half travel, coming from above'),
    ],
    onAxis: (v, reads) => axis.upLessDown(v, { upPa: at(reads, 'upPa'), downPa: at(reads, 'downPa') }),
  },
};
