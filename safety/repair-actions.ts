import {
  type ActionClassRow,
  AIR_OFF,
  B,
  E,
  P,
  PRACTICE,
  SHUT,
  SIGNED,
  SPRING_SHUT_IN,
} from './need-sets.ts';

/** The operator has agreed, and nobody is near enough to be caught by a jump. */
const READY_TO_JUMP = { ...B, ...SHUT, consent: ['given'], clear: ['clear'] } as const;

/** Rows of table D for repairs of what stands before the actuator, and of a cylinder. */
export const REPAIR_ACTIONS = {
  workAtLivePositioner: {
    name: 'touch nozzle, flapper or relay of a positioner with air on',
    danger: 'The valve jumps to its end: a hand in the yoke is crushed.',
    needs: READY_TO_JUMP,
    source: `EI-41, ${PRACTICE}`,
  },
  setAirSet: {
    name: 'set the regulator of the air set with air on',
    danger: 'More air than a positioner or a case may have hurts it, and moves the valve.',
    needs: READY_TO_JUMP,
    source: PRACTICE,
  },
  workOnAirParts: {
    name: 'open relay, filter, tube or linkage with the air off',
    danger: 'Air that is still in it throws the part; air that comes back moves the stem into the hand.',
    needs: { ...B, ...AIR_OFF, ...SHUT },
    leaves: { clear: 'not looked at' },
    source: `EI-40, ${PRACTICE}`,
  },
  pressInstrument: {
    name: 'put test air on an instrument, its supply off',
    danger: 'A bellows that gets more than its range bursts in the face.',
    needs: { ...B, ...AIR_OFF, ...SHUT, controllerLine: ['capped', 'absent'] },
    source: PRACTICE,
  },
  workOnDeadWires: {
    name: 'work at terminals or coil, the circuit locked off and tried dead',
    danger: 'A circuit that is not dead shocks, and its spark lights gas.',
    needs: { ...B, ...AIR_OFF, ...E },
    leaves: { clear: 'not looked at' },
    electricalRule: '29 CFR 1910 subpart S, and the class of the area',
    source: `EI-20, EI-41, ${PRACTICE}`,
  },
  readLoopCurrent: {
    name: 'read the loop current at its terminals, the loop live',
    danger: 'A spark at opened terminals lights gas; a loop that is broken drives the valve to its end.',
    needs: READY_TO_JUMP,
    electricalRule: '29 CFR 1910 subpart S, live parts under 50 V (from memory), and the class of the area',
    source: `EI-20, ${PRACTICE}`,
  },
  switchBackOn: {
    name: 'take the lock off the breaker and switch on',
    danger: 'A coil that pulls in moves the valve.',
    needs: { ...B, ...SHUT, clear: ['clear'] },
    electricalRule: '29 CFR 1910 subpart S, and the class of the area',
    source: 'EI-10: 29 CFR 1910.147(e)(1), (2)',
  },
  tightenConnector: {
    name: 'tighten stem connector or travel pointer, the air off',
    danger: 'Air that comes back drives the connector into the hand.',
    needs: { ...B, ...AIR_OFF, ...SPRING_SHUT_IN, ...SHUT },
    leaves: { clear: 'not looked at' },
    source: `EI-43, ${PRACTICE}`,
  },
  workInCylinder: {
    name: 'work inside the opened cylinder',
    danger: 'Air behind the piston throws it at the hands.',
    needs: { ...AIR_OFF, ...P, ...SPRING_SHUT_IN, ...SIGNED },
    source: 'EI-46: manual of a spring-return actuator, appendix A',
  },
  closeCylinder: {
    name: 'bring the cylinder together',
    danger: 'An end cap drawn down on one side cuts its seal and leaves its tie rods unequal.',
    needs: { ...AIR_OFF, ...P, ...SPRING_SHUT_IN },
    source: 'EI-46: manual of a spring-return actuator, appendix A',
  },
} as const satisfies Record<string, ActionClassRow>;
