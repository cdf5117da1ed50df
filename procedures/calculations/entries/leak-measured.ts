import { calculation } from '../calculation.ts';
import type { Calculation } from '../calculation-types.ts';
import { ABOVE_ZERO, refuseOutside } from '../checks.ts';
import { molPerM3 } from '../gas-states.ts';
import { bubbleFlow, collectedM3PerS, rotameterFlow } from '../leak-measured.ts';
import { numbers, results, usualNumbers } from '../specs.ts';

const ROOM = usualNumbers({ atmospherePaAbs: 101325, temperatureK: 293.15 });

/** A volume of gas at the state of the room, as the amount that limits by capacity are counted in. */
function asGas(
  flowM3PerS: number,
  { atmospherePaAbs, temperatureK }: { readonly atmospherePaAbs: number; readonly temperatureK: number },
): number {
  refuseOutside({ atmospherePaAbs, temperatureK }, ABOVE_ZERO);
  return flowM3PerS * molPerM3({ pressurePaAbs: atmospherePaAbs, temperatureK });
}

export const LEAK_MEASURED_CALCULATIONS: readonly Calculation[] = [
  calculation({
    id: 'leak-collected',
    title: 'Leak from a volume collected in a time',
    topic: 'seat leakage',
    inputs: { ...numbers('volumeM3', 'elapsedS'), ...ROOM },
    outputs: results('flowM3PerS', 'flowMolPerS'),
    answers: ['flowM3PerS', 'flowMolPerS'],
    equation: 'q = volume/time; as a gas n = q · p/(R · T) at the state of the room',
    validity: 'Liquid in a measuring glass, or gas over water at the state of the room.',
    sources: [],
    example: { volumeM3: 1.5e-5, elapsedS: 300 },
    run: ({ atmospherePaAbs, temperatureK, ...collected }) => {
      const flowM3PerS = collectedM3PerS(collected);
      return { flowM3PerS, flowMolPerS: asGas(flowM3PerS, { atmospherePaAbs, temperatureK }) };
    },
  }),
  calculation({
    id: 'leak-bubbles',
    title: 'Leak from bubbles of a known size',
    topic: 'seat leakage',
    inputs: { ...numbers('bubbleDiameterM', 'bubblesPerMin'), ...ROOM },
    outputs: results('bubbleM3', 'flowM3PerS', 'flowMolPerS'),
    answers: ['flowM3PerS', 'flowMolPerS'],
    equation: 'q = bubbles · π/6 · d³; as a gas n = q · p/(R · T) at the state of the room',
    validity: 'Counted under water. A film of soap shows where, not how much.',
    sources: [],
    example: { bubbleDiameterM: 0.0066, bubblesPerMin: 10 },
    run: ({ atmospherePaAbs, temperatureK, ...counted }) => {
      const { bubbleM3, flowM3PerS } = bubbleFlow(counted);
      return { bubbleM3, flowM3PerS, flowMolPerS: asGas(flowM3PerS, { atmospherePaAbs, temperatureK }) };
    },
  }),
  calculation({
    id: 'leak-rotameter',
    title: 'A variable-area meter at another state than its scale’s',
    topic: 'seat leakage',
    inputs: {
      read: { kind: 'number', title: 'As read', dimension: 'gasFlow' },
      ...numbers('pressurePaAbs', 'temperatureK', 'scalePressurePaAbs', 'scaleTemperatureK'),
    },
    outputs: { ...results('factor'), flow: { kind: 'number', title: 'Flow', dimension: 'gasFlow' } },
    answers: ['flow'],
    equation: 'q = reading · √(p/p(scale) · T(scale)/T)',
    validity: 'Scale in volume at a reference state, same gas.',
    sources: ['S-22'],
    example: {
      read: 1e-4,
      pressurePaAbs: 202650,
      temperatureK: 293.15,
      scalePressurePaAbs: 101325,
      scaleTemperatureK: 293.15,
    },
    run: rotameterFlow,
  }),
];
