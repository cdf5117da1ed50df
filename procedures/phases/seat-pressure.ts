/** Cards of a body under test pressure: what is read of it, and how it is let off again. */
import type { Caution, Field, QuantityField, Step, Target, Way } from '../vocabulary.ts';
import { SHOWN_BY, yesNo } from './common.ts';

/** Stands before every card with test pressure on. */
export const UNDER_PRESSURE: Caution = {
  word: 'danger',
  hazard: 'Body, bonnet and test hose stand under pressure.',
  consequence: 'A plug or a hose that blows off kills.',
  avoid: 'Face shield down, beside the valve, never in front of an open end or a plug.',
};

/** Test pressure is a process that is live again. */
export const LIVE = { processInlet: 'live' } as const;

/** The test pressure, and the most of it. */
export const testPressure: QuantityField = {
  name: 'seatTestPa',
  label: 'Test pressure at the inlet side',
  type: 'quantity',
  dimension: 'pressure',
  gauge: 'seatGauge',
  wanted: 'seatTestPressure',
  most: 'seatTestMost',
};

function maybe(
  name: string,
  { label, dimension, gauge }: Pick<QuantityField, 'label' | 'dimension' | 'gauge'>,
): QuantityField {
  return {
    name,
    label,
    type: 'quantity',
    dimension,
    optional: true,
    ...(gauge === undefined ? {} : { gauge }),
  };
}

/** How a leak is measured, and what each way wants. */
export const MEASURED: readonly Field[] = [
  testPressure,
  {
    name: 'leakBy',
    label: 'Measured by',
    type: 'choice',
    choices: [
      { value: 'glass', label: 'A measuring glass: upturned under water for air, upright for water' },
      { value: 'bubbles', label: 'Bubbles, with the tube of the standard' },
      { value: 'meter', label: 'A flow meter' },
      { value: 'shut in', label: 'The outlet side shut in, its pressure watched' },
    ],
  },
  { name: 'leakTimeS', label: 'Time that it was watched', type: 'quantity', dimension: 'time' },
  maybe('leakVolumeM3', { label: 'Glass: what was collected', dimension: 'volume' }),
  maybe('leakBubbles', { label: 'Bubbles: how many', dimension: 'ratio' }),
  maybe('leakFlowM3PerS', { label: 'Meter: flow', dimension: 'flowVolume' }),
  maybe('outletStartPa', {
    label: 'Shut in: outlet side at the start',
    dimension: 'pressure',
    gauge: 'checkGauge',
  }),
  maybe('outletEndPa', {
    label: 'Shut in: outlet side at the end',
    dimension: 'pressure',
    gauge: 'checkGauge',
  }),
  maybe('outletVolumeM3', { label: 'Shut in: volume of the outlet side', dimension: 'volume' }),
];

/** The test pressure let off and shown gone; on the bench the inlet is opened to the room as well. */
export function letOff<const Id extends string>(step: {
  readonly title: string;
  readonly shown: Target<Id>;
  readonly notShown: Id;
}): Step<Id | 'ventSeat'> {
  const lost: Way<Id> = { to: step.notShown, sets: LIVE };
  return {
    kind: 'reading',
    phase: 'seat',
    title: step.title,
    how: 'Regulator of the test pressure first, then its vent. At most {processSafeLimit} with the gauge counted in; where it cannot tell so little, the vent cracked and watched twice.',
    action: 'ventTestPressure',
    caution: UNDER_PRESSURE,
    asks: [
      {
        name: 'seatTestPa',
        label: 'Test pressure, before',
        type: 'quantity',
        dimension: 'pressure',
        gauge: 'seatGauge',
        optional: true,
        carried: true,
      },
      maybe('seatZeroPa', { label: 'Test pressure, now', dimension: 'pressure', gauge: 'seatGauge' }),
      ...SHOWN_BY,
    ],
    judge: {
      rule: 'showSafe',
      with: { energy: 'processInlet', before: 'seatTestPa', after: 'seatZeroPa' },
    },
    ways: {
      shown: { to: step.shown, sets: { processInlet: 'isolated' } },
      'not shown': lost,
      'gauge not seen alive': lost,
      'gauge too coarse': lost,
    },
    makeSafe: 'ventSeat',
  };
}

/** The hose off the flange, so that nothing can build up: on the bench no lock keeps it so. */
export function inletOpen<const Id extends string>(next: Id): Step<Id | 'ventNow'> {
  return {
    kind: 'reading',
    phase: 'seat',
    title: 'Take the test hose off the inlet flange of {tag}',
    how: 'A valve on the bench has no lock on its inlet: a hose that is off is what keeps it empty.',
    asks: [yesNo('inletFree', 'Hose off, the inlet open to the room, nothing comes out')],
    judge: { rule: 'allYes', with: { fields: 'inletFree' } },
    ways: { yes: { to: next, sets: { processInlet: 'absent' } }, no: { to: 'ventNow' } },
    makeSafe: 'ventNow',
  };
}
