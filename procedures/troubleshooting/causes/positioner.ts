import type { Cause, Shows } from '../cause.ts';
import {
  bothEnds,
  endNozzle,
  loading,
  otherEnd,
  positionerDriven,
  signalFull,
  signalLost,
} from '../senses.ts';
import { hasPositioner, type ValveFacts } from '../valve-facts.ts';
import { BASIS } from './sources.ts';

const pneumatic = (v: ValveFacts) => v.positioner === 'pneumatic';

/** The valve runs to one end and stays, whichever the loop happens to ask for. Shares sum to one. */
function runsAway(v: ValveFacts, of: { readonly lost: number; readonly full: number }): Shows {
  const [lost, full] = [signalLost(v), signalFull(v)];
  const nozzleOnFull = v.spring || v.risingLoads === v.coveredNozzleLoads;
  return {
    controllerOutput: { [lost.output]: of.lost * 0.8, [full.output]: of.full * 0.8, swings: 0.15 },
    trend: { 'sudden change': 0.82 },
    travelAgainstOutput: { [lost.stays]: of.lost, [full.stays]: of.full },
    ...bothEnds({
      end: v.risingLoads,
      this: { full: of.full, empty: of.lost },
      other: { full: of.lost, empty: of.full },
    }),
    cylinderGaugesOnStep: { [lost.runs]: of.lost, [full.runs]: of.full },
    outputGauge: { empty: of.lost, full: of.full },
    nozzlePressure: nozzleOnFull
      ? { 'stuck high': of.full, 'stuck low': of.lost }
      : { 'stuck low': of.full, 'stuck high': of.lost },
    [endNozzle(v.risingLoads)]: { 'stuck high': of.full, 'stuck low': of.lost },
    [endNozzle(otherEnd(v.risingLoads))]: { 'stuck low': of.full, 'stuck high': of.lost },
    strokeByController: { overshoots: 0.5, 'does not move': 0.44 },
    strokeOnTestAir: { overshoots: 0.5, 'does not move': 0.44 },
  };
}

/** Positioner, apart from its relays: input, linkage, adjustment. Effects: judgement. */
export const positionerCauses = {
  flapperBent: {
    words: 'The flapper is bent or out of square with its nozzle',
    family: 'positioner',
    prior: 1,
    basis: BASIS.judgement,
    when: pneumatic,
    shows: () => ({
      travelAgainstOutput: { 'less open': 0.46, 'more open': 0.42 },
      smallStep: { slow: 0.18, swings: 0.05, jumps: 0.05, 'no move': 0.04 },
      nozzlePressure: { 'stuck low': 0.14, 'stuck high': 0.04, pulses: 0.04 },
      nozzlePressureTop: { 'stuck low': 0.14, 'stuck high': 0.04, pulses: 0.04 },
      nozzlePressureBottom: { 'stuck low': 0.14, 'stuck high': 0.04, pulses: 0.04 },
      flapperByHand: { 'one way': 0.24 },
      positionerMarks: { 'off the marks': 0.5 },
      strokeByController: { 'short of open': 0.42, 'short of shut': 0.38 },
      strokeOnTestAir: { 'short of open': 0.42, 'short of shut': 0.38 },
      flapperAgainstGauges: { askew: 0.92 },
      bothFlappersAgainstGauges: { askew: 0.92 },
      positionerBench: { 'flapper bent': 0.97 },
    }),
  },
  relayWorn: {
    words: 'The relay of the positioner is worn and leaks to exhaust',
    family: 'positioner',
    prior: 2,
    basis: BASIS.leaks,
    when: hasPositioner,
    shows: () => ({
      trend: { sluggish: 0.52 },
      supplyDroop: { large: 0.5 },
      smallStep: { slow: 0.57, swings: 0.25 },
      topPressure: { low: 0.57 },
      bottomPressure: { low: 0.57 },
      cylinderGaugesOnStep: { slow: 0.57 },
      outputGauge: { slow: 0.55 },
      listenExhaust: { loud: 0.92 },
      positionerExhaust: { blows: 0.96 },
      strokeByController: { slow: 0.58 },
      strokeOnTestAir: { slow: 0.55 },
      flapperAgainstGauges: { 'covered, low': 0.18 },
      bothFlappersAgainstGauges: { 'top covered, low': 0.09, 'bottom covered, low': 0.09 },
      positionerBench: { 'relay worn': 0.97 },
    }),
  },
  bellowsRuptured: {
    words: 'The input bellows or capsule of the positioner is ruptured',
    family: 'positioner',
    prior: 1.2,
    basis: BASIS.judgement,
    when: pneumatic,
    shows: (v) => {
      const { stays, output } = signalLost(v);
      return {
        ...positionerDriven(v, { full: false, share: 0.92 }),
        controllerOutput: { [output]: 0.88 },
        trend: { 'sudden change': 0.87 },
        valveAgainstSource: { pieces: [[0.7, -70, -4]], words: { nothing: 0.04 } },
        sourceOutlet: { pieces: [[0.2, -40, -4]] },
        valveAgainstCommand: { pieces: [[0.7, -80, -4]], words: { nothing: 0.04 } },
        travelAgainstOutput: { [stays]: 0.95 },
        smallStep: { 'no move': 0.96 },
        strokeByController: { 'does not move': 0.94 },
        strokeOnTestAir: { 'does not move': 0.94 },
        listenExhaust: { loud: 0.36 },
        positionerExhaust: { blows: 0.3 },
        blockSourceSide: { 'climbs to full': 0.84, 'stays low': 0.02 },
        positionerBench: { 'bellows leaks': 0.97 },
        soapActuatorTube: {},
      };
    },
  },
  linkageOff: {
    words: 'The feedback linkage is broken or off',
    family: 'positioner',
    prior: 2,
    basis: BASIS.judgement,
    when: hasPositioner,
    shows: (v) => ({
      ...runsAway(v, { lost: 0.45, full: 0.51 }),
      smallStep: { 'no move': 0.47, jumps: 0.47 },
      feedbackLinkage: { off: 0.97 },
      positionerMarks: { 'off the marks': 0.5 },
      positionerBench: {},
    }),
  },
  rangeSpringOff: {
    words: 'The range spring of the positioner is broken or off',
    family: 'positioner',
    prior: 0.7,
    basis: BASIS.judgement,
    when: pneumatic,
    shows: (v) => ({
      ...runsAway(v, { lost: 0.4, full: 0.57 }),
      smallStep: { 'no move': 0.52, jumps: 0.42 },
      positionerBench: { 'range spring off': 0.97 },
    }),
  },
  linkageWorn: {
    words: 'Feedback linkage or cam is loose or worn',
    family: 'positioner',
    prior: 2,
    basis: BASIS.judgement,
    when: hasPositioner,
    shows: () => ({
      controllerOutput: { swings: 0.42 },
      trend: { 'saw-tooth': 0.2, 'fast swing': 0.25, offset: 0.04, sluggish: 0.04 },
      travelAgainstOutput: {
        pieces: [
          [0.29, -18, -3],
          [0.29, 3, 18],
        ],
      },
      smallStep: { jumps: 0.36, swings: 0.3 },
      feedbackLinkage: { worn: 0.92, off: 0.02 },
      positionerMarks: { 'off the marks': 0.55 },
      strokeByController: { 'in jumps': 0.52 },
      strokeOnTestAir: { 'in jumps': 0.52 },
      upAgainstDown: { wide: 0.4 },
    }),
  },
  zeroOrSpanWrong: {
    words: 'Zero or span of the positioner is out of adjustment',
    family: 'positioner',
    prior: 3,
    basis: BASIS.judgement,
    when: hasPositioner,
    shows: () => ({
      travelAgainstOutput: {
        pieces: [
          [0.48, -25, -3],
          [0.47, 3, 25],
        ],
      },
      positionerMarks: { 'off the marks': 0.62 },
      strokeByController: { 'short of open': 0.46, 'short of shut': 0.46 },
      strokeOnTestAir: { 'short of open': 0.46, 'short of shut': 0.46 },
      positionerBench: { 'zero or span wrong': 0.93 },
    }),
  },
  gainTooHigh: {
    words: 'The positioner is set too lively and hunts',
    family: 'positioner',
    prior: 1.5,
    basis: BASIS.judgement,
    when: hasPositioner,
    shows: () => ({
      controllerOutput: { swings: 0.6 },
      trend: { 'fast swing': 0.85 },
      holdInManual: { 'goes on': 0.82, stops: 0.04 },
      smallStep: { swings: 0.94 },
      cylinderGaugesOnStep: { swings: 0.92 },
      outputGauge: { swings: 0.92 },
      nozzlePressure: { pulses: 0.9 },
      nozzlePressureTop: { pulses: 0.9 },
      nozzlePressureBottom: { pulses: 0.9 },
      strokeByController: { overshoots: 0.88 },
      strokeOnTestAir: { overshoots: 0.88 },
    }),
  },
  electricPartDead: {
    words: 'The electric part of the positioner does not answer or drives it to one end',
    family: 'positioner',
    prior: 4,
    basis: BASIS.judgement,
    when: (v) => v.positioner === 'electropneumatic',
    shows: (v) => ({
      ...positionerDriven(v, { full: false, share: 0.8 }),
      controllerOutput: { [signalLost(v).output]: 0.75, [signalFull(v).output]: 0.1 },
      trend: { 'sudden change': 0.8 },
      loopCurrent: { none: 0.12, low: 0.05 },
      travelAgainstOutput: { [signalLost(v).stays]: 0.8, [signalFull(v).stays]: 0.1 },
      smallStep: { 'no move': 0.93 },
      strokeByController: { 'does not move': 0.92 },
      positionerBench: { 'converter dead': 0.97 },
    }),
  },
  tubesCrossed: {
    words: 'The two tubes to the cylinder are exchanged, after work',
    family: 'positioner',
    prior: 0.8,
    basis: BASIS.judgement,
    when: (v) => !v.spring,
    shows: (v) => {
      const [lost, full] = [signalLost(v), signalFull(v)];
      return {
        controllerOutput: { [lost.output]: 0.52, [full.output]: 0.42 },
        trend: { 'sudden change': 0.9 },
        travelAgainstOutput: { [lost.stays]: 0.36, [full.stays]: 0.44, 'other way': 0.19 },
        smallStep: { 'no move': 0.36, 'other way': 0.61 },
        ...bothEnds({
          end: v.risingLoads,
          this: { empty: 0.5, full: 0.46 },
          other: { full: 0.5, empty: 0.46 },
        }),
        cylinderGaugesOnStep: { [full.runs]: 0.12, [lost.runs]: 0.1, 'other way': 0.76 },
        traceTubing: { crossed: 0.98 },
        strokeByController: { 'does not move': 0.2, 'other way': 0.78 },
        strokeOnTestAir: { 'does not move': 0.2, 'other way': 0.78 },
        flapperAgainstGauges: { 'covered, low': 0.45, 'clear, high': 0.4 },
        bothFlappersAgainstGauges: {
          'top covered, low': 0.23,
          'bottom covered, low': 0.23,
          'top clear, high': 0.2,
          'bottom clear, high': 0.2,
        },
      };
    },
  },
} as const satisfies Record<string, Cause>;

/** Where the valve goes when the end that a nozzle loads stays empty or full. */
export function deadEnd(v: ValveFacts, of: { readonly end: 'top' | 'bottom'; readonly full: boolean }) {
  return loading(v, of.full ? of.end : otherEnd(of.end));
}
