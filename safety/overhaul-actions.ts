import {
  type ActionClassRow,
  AIR_MOVED,
  AIR_OFF,
  BY_ADJUSTER,
  D,
  G,
  H,
  HELD,
  LINE_OFF,
  P,
  P_TO_OPEN,
  PRACTICE,
  SHUT,
  SIGNED,
  SPRING_FREE,
  SPRING_SHUT_IN,
} from './need-sets.ts';

/**
 * Rows of table D for work inside an opened valve and for the way back together. What only closes wants no
 * signature: a hold never stands between an open valve and a shut one.
 */
export const OVERHAUL_ACTIONS = {
  tightenCaseNuts: {
    name: 'tighten the case nuts',
    danger: 'A nut that is turned with air on the case can break its bolt and throw it.',
    needs: { ...AIR_OFF, ...LINE_OFF, ...SPRING_SHUT_IN },
    source: `EI-45, ${PRACTICE}`,
  },
  workInCase: {
    name: 'work inside the opened case',
    danger: 'A spring that is not free throws plate and diaphragm at the hands.',
    needs: { ...AIR_OFF, ...LINE_OFF, ...SPRING_FREE, ...SIGNED },
    source: `EI-45, ${PRACTICE}`,
  },
  closeCase: {
    name: 'bring the case together',
    danger: 'A cover drawn down on one side tears the diaphragm, and a spring under it slips.',
    needs: { ...AIR_OFF, ...LINE_OFF, ...SPRING_FREE },
    source: 'EI-45: manuals of three diaphragm actuators, case as spring restraint',
  },
  drawCaseDown: {
    name: 'draw the cover of a case that holds its spring down on its long bolts',
    danger: 'The spring is loaded as the cover comes down; a cover that tilts is thrown.',
    needs: { ...AIR_OFF, ...LINE_OFF, springHolder: ['case'] },
    source: 'EI-45: manuals of three diaphragm actuators, case as spring restraint',
  },
  windAdjusterBack: {
    name: 'wind the spring adjuster back, the case shut',
    danger: 'A spring that is loaded under an open case throws its cover.',
    needs: { ...AIR_OFF, ...P, ...LINE_OFF, ...SHUT, ...BY_ADJUSTER },
    source: `EI-42, ${PRACTICE}`,
  },
  joinStemConnector: {
    name: 'join the stem connector on held test air',
    danger: 'Air that changes drives the two stems together with the fingers between them.',
    needs: HELD,
    leaves: AIR_MOVED,
    source: `EI-43, ${PRACTICE}`,
  },
  joinFreeStems: {
    name: 'join the stem connector, the spring free and no air on the case',
    danger: 'A spring that is not free drives the two stems together with the fingers between them.',
    needs: { ...AIR_OFF, ...P, ...LINE_OFF, ...SPRING_FREE },
    source: `EI-43, ${PRACTICE}`,
  },
  workInBody: {
    name: 'work inside the opened body',
    danger: 'A line that passes floods the open body with the hands in it.',
    needs: { ...AIR_OFF, ...P_TO_OPEN, ...D, ...H, ...SIGNED },
    source: `EI-51, ${PRACTICE}`,
  },
  setActuatorOn: {
    name: 'set the actuator back on the valve',
    danger: 'The weight swings; a stem that is met askew bends.',
    needs: { ...AIR_OFF, ...P, ...G, ...SPRING_SHUT_IN },
    source: `EI-47, ${PRACTICE}`,
  },
  closeBody: {
    name: 'put trim, bonnet or packing back',
    danger: 'The line stands behind an open body until the last nut is tight.',
    needs: { ...AIR_OFF, ...P_TO_OPEN },
    source: `EI-49, EI-50, ${PRACTICE}`,
  },
} as const satisfies Record<string, ActionClassRow>;
