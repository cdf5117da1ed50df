import type { Field } from '../../../procedures/vocabulary.ts';

const read = { kind: 'reading', phase: 'work', makeSafe: 'safe', judge: { rule: 'record' } } as const;
const kept = { kept: { to: 'safe' } } as const;
const onSignal = { type: 'quantity', dimension: 'pressure', gauge: 'signalGauge', onCase: true } as const;
const onSupply = { type: 'quantity', dimension: 'pressure', gauge: 'supplyGauge' } as const;

const quantity = (
  name: string,
  label: string,
  dimension: 'time' | 'percent' | 'current' | 'torque' | 'length' | 'turns' | 'temperature',
): Field => ({
  name,
  label,
  type: 'quantity',
  dimension,
});

/** Cards with what the other cards for replies do not ask: time, current, torque, lengths, temperature. */
export const MORE_CARDS = {
  watch: {
    ...read,
    title: 'Watch the signal',
    asks: [
      { ...onSignal, name: 'startPa', label: 'At the start' },
      { ...onSignal, name: 'endPa', label: 'At the end' },
      quantity('watchedS', 'Time that it was watched', 'time'),
    ],
    ways: kept,
  },
  loop: {
    ...read,
    title: 'Read the loop',
    asks: [
      quantity('outputPercent', 'Controller output', 'percent'),
      quantity('loopCurrentA', 'Current in the loop', 'current'),
      {
        name: 'loopTravelM',
        label: 'Travel that it made',
        type: 'quantity',
        dimension: 'travel',
        gauge: 'travelIndicator',
      },
    ],
    ways: kept,
  },
  nuts: {
    ...read,
    title: 'Tighten the case',
    asks: [
      quantity('nutTorqueNm', 'Torque of each nut, as left', 'torque'),
      {
        name: 'caseBolts',
        label: 'Case bolts, counted',
        type: 'choice',
        choices: ['6', '8', '12', '16', '20'].map((value) => ({ value, label: value })),
      },
    ],
    ways: kept,
  },
  gap: {
    ...read,
    title: 'Ease the gland',
    asks: [
      quantity('gapM', 'Gap left under the follower', 'length'),
      quantity('backedTurns', 'Turns backed off', 'turns'),
    ],
    ways: kept,
  },
  supply: {
    ...read,
    title: 'Read the supply',
    asks: [
      { ...onSupply, name: 'stillPa', label: 'Supply, nothing moving' },
      { ...onSupply, name: 'lowestPa', label: 'Supply, lowest while it moves' },
    ],
    ways: kept,
  },
  body: {
    ...read,
    title: 'Measure the body',
    asks: [quantity('bodyTemperatureK', 'Body temperature', 'temperature')],
    ways: kept,
  },
} as const;
