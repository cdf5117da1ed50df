import type { Cause, Shows } from '../cause.ts';
import { loading, signalFull } from '../senses.ts';
import { hasPositioner, type ValveFacts } from '../valve-facts.ts';
import { BASIS } from './sources.ts';

/** Off either way, on an axis in percent. */
const either = (percent: number) => ({
  pieces: [
    [0.46, -percent, -2],
    [0.46, 2, percent],
  ] as const,
});

/** The gauges that a finding may rest on, each with the checks that read it. */
function wrongGauges(v: ValveFacts): readonly { readonly id: string; readonly shows: Shows }[] {
  const actuator = { airAtTravel: either(20), leavesSeatAt: either(20) };
  const bench = { benchSetUncoupled: { 'both high': 0.4, 'both low': 0.4 } };
  const end = { full: 0.12, low: 0.1, empty: 0.05 };
  return [
    {
      id: 'source',
      shows: {
        sourceOutlet: either(25),
        valveAgainstSource: either(25),
        blockSourceSide: { 'stays low': 0.4 },
        sourceFivePoints: { 'off by a zero or span': 0.9 },
      },
    },
    {
      id: 'signal',
      shows: {
        valveAgainstSource: either(25),
        valveAgainstCommand: either(25),
        ...(hasPositioner(v) ? {} : actuator),
      },
    },
    { id: 'supply', shows: { supplyPressure: either(25) } },
    ...(v.spring
      ? [{ id: 'actuator', shows: { ...(hasPositioner(v) ? actuator : {}), ...bench } }]
      : [
          { id: 'top', shows: { topPressure: end } },
          { id: 'bottom', shows: { bottomPressure: end } },
        ]),
  ];
}

/** The test gear. It counts only where a finding rests on it. Effects: judgement. */
export const rigCauses = {
  gaugeWrong: {
    words: 'A gauge that this rests on reads wrong or sticks',
    family: 'test rig',
    prior: (v) => (v.rigUsed ? 1.5 : 0.8),
    basis: BASIS.judgement,
    inside: 'an offset, a sticking pointer and a wrong range: only a second gauge over the range tells',
    shows: () => ({}),
    // One gauge is wrong, and only what was read on it.
    grades: (v) => {
      const wrong = wrongGauges(v);
      return wrong.map(({ id, shows }) => ({
        id,
        share: 1 / wrong.length,
        shows: { gaugeAgainstGauge: { pieces: [[0.97, 1.6, 17]] }, ...shows },
      }));
    },
  },
  rigLeaks: {
    words: 'The test rig leaks by itself',
    family: 'test rig',
    prior: 0.8,
    basis: BASIS.judgement,
    when: (v) => v.rigUsed,
    shows: (v) => ({
      rigHold: { falls: 0.98 },
      blockActuatorSide: { 'slow fall': 0.62, 'fast fall': 0.3 },
      strokeOnTestAir: { [signalFull(v).short]: 0.18 },
      blockSourceSide: { 'stays low': 0.2 },
      benchSetUncoupled: { 'both high': 0.1, 'span wrong': 0.03 },
    }),
  },
  rigDoesNotBleed: {
    words: 'The test regulator does not bleed down, which looks like hysteresis',
    family: 'test rig',
    prior: 0.8,
    basis: BASIS.judgement,
    when: (v) => v.rigUsed,
    shows: (v) => ({
      rigBleed: { 'stays up': 0.98 },
      strokeOnTestAir: { 'in jumps': 0.38, slow: 0.3, [loading(v, 'top').short]: 0.04 },
      upAgainstDown: { wide: 0.56, 'very wide': 0.27 },
      leavesSeatAt: { high: 0.1, low: 0.1 },
      benchSetUncoupled: { 'up and down apart': 0.6, 'span wrong': 0.1 },
    }),
  },
} as const satisfies Record<string, Cause>;
