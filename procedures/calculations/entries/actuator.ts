import {
  adjusterTurns,
  adjusterTurnsForShift,
  benchSet,
  benchSetFromInstalled,
  installedRange,
} from '../bench-set.ts';
import { calculation } from '../calculation.ts';
import type { Calculation } from '../calculation-types.ts';
import { forcesAtLift, frictionFromPressures, shutEnd } from '../force-balance.ts';
import { pistonSupply, pistonThrust } from '../piston.ts';
import { plugForce } from '../plug-force.ts';
import { largestShutOffDrop, shutOffMargin, smallestSupply } from '../shut-off.ts';
import { AIR_ACTIONS } from '../signal-travel.ts';
import { choice, numbers, optionalNumbers, results, told, usualNumbers } from '../specs.ts';

const BENCH = numbers('effectiveAreaM2', 'benchSetLowPa', 'benchSetHighPa');
const ACTUATOR = {
  ...choice('airAction', AIR_ACTIONS),
  ...BENCH,
  ...numbers('plugForceOpeningN', 'frictionN'),
};
const ADJUSTER = numbers('springRateNPerM', 'effectiveAreaM2', 'threadPitchM');
const SHIFT = { ...results('shiftPa'), ...told('word', 'endThatMoves', 'moves') };
const CONSTANT_AREA = 'Effective area the same over the stroke; it changes by a few percent.';
const ACTUATOR_EXAMPLE = {
  airAction: 'air-to-close',
  effectiveAreaM2: 0.05,
  benchSetLowPa: 20000,
  benchSetHighPa: 100000,
  plugForceOpeningN: 1000,
  frictionN: 200,
} as const;
const ADJUSTER_EXAMPLE = { springRateNPerM: 140000, effectiveAreaM2: 0.0645, threadPitchM: 0.0016 };

export const ACTUATOR_CALCULATIONS: readonly Calculation[] = [
  calculation({
    id: 'bench-set',
    title: 'Spring rate and forces of a bench set',
    topic: 'force balance',
    inputs: { ...BENCH, ...numbers('travelM') },
    outputs: results('spanPa', 'springRateNPerM', 'preloadN', 'preloadM', 'forceAtFullTravelN'),
    answers: ['springRateNPerM', 'preloadN'],
    equation: 'k = A · (high − low)/travel; preload = A · low',
    validity: `No process force. ${CONSTANT_AREA}`,
    sources: ['S-06'],
    example: { effectiveAreaM2: 0.035, benchSetLowPa: 20000, benchSetHighPa: 100000, travelM: 0.015 },
    run: benchSet,
  }),
  calculation({
    id: 'adjuster-turns',
    title: 'What turns of the spring adjuster do',
    topic: 'force balance',
    inputs: { ...ADJUSTER, ...numbers('turns') },
    outputs: results('seatMovedM', 'preloadChangeN', 'benchSetShiftPa', 'spanChangePa', 'liftLostM'),
    answers: ['benchSetShiftPa'],
    equation: 'shift = k · turns · pitch/A',
    validity: 'Turns that tighten the spring count positive. Both bench ends shift alike; no lift is lost.',
    sources: ['S-06'],
    example: { ...ADJUSTER_EXAMPLE, turns: 1 },
    run: adjusterTurns,
  }),
  calculation({
    id: 'adjuster-turns-wanted',
    title: 'Turns of the spring adjuster for a shift of the bench set',
    topic: 'force balance',
    inputs: { ...ADJUSTER, ...numbers('wantedShiftPa') },
    outputs: { ...results('turns'), ...told('word', 'turn') },
    answers: ['turns', 'turn'],
    equation: 'turns = shift · A/(k · pitch)',
    validity: 'Which way round tightens is read off the actuator.',
    sources: ['S-06'],
    example: { ...ADJUSTER_EXAMPLE, wantedShiftPa: -2000 },
    run: adjusterTurnsForShift,
  }),
  calculation({
    id: 'installed-range',
    title: 'From the bench to the line: installed range',
    topic: 'force balance',
    inputs: { ...choice('airAction', AIR_ACTIONS), ...BENCH, ...numbers('plugForceOpeningN') },
    outputs: { ...results('lowPa', 'highPa'), ...SHIFT },
    answers: ['lowPa', 'highPa'],
    equation: 'shift of the shut end = plug force/A',
    validity:
      'Friction left out. The plug force fades as the valve opens, so that one end stays where it is.',
    sources: ['S-06'],
    example: {
      airAction: 'air-to-open',
      effectiveAreaM2: 0.029,
      benchSetLowPa: 33500,
      benchSetHighPa: 100000,
      plugForceOpeningN: 393,
    },
    run: installedRange,
  }),
  calculation({
    id: 'bench-set-wanted',
    title: 'From the line back to the bench: bench set for an installed range',
    topic: 'force balance',
    inputs: {
      ...choice('airAction', AIR_ACTIONS),
      ...numbers('effectiveAreaM2', 'installedLowPa', 'installedHighPa', 'plugForceOpeningN'),
    },
    outputs: { ...results('lowPa', 'highPa'), ...SHIFT },
    answers: ['lowPa', 'highPa'],
    equation: 'bench end = installed end − plug force/A at the shut end',
    validity: 'Friction left out. A bench end below zero cannot be set.',
    sources: ['S-06'],
    example: {
      airAction: 'air-to-close',
      effectiveAreaM2: 0.029,
      installedLowPa: 20000,
      installedHighPa: 100000,
      plugForceOpeningN: 393,
    },
    run: benchSetFromInstalled,
  }),
  calculation({
    id: 'plug-force',
    title: 'Force of the process on the shut plug',
    topic: 'force balance',
    inputs: {
      ...choice('flow', ['under', 'over']),
      ...numbers('inletPa', 'outletPa', 'portDiameterM', 'stemDiameterM'),
      ...optionalNumbers('balanceSealDiameterM'),
    },
    outputs: {
      ...results('portAreaM2', 'stemAreaM2', 'balanceAreaM2', 'openingN'),
      ...told('word', 'tendsTo'),
    },
    answers: ['openingN', 'tendsTo'],
    equation:
      'force = p(port side) · port area − p(stem side) · (port area − stem area); balanced: port side · (balance − stem) − other side · (balance − port)',
    validity:
      'Single port, port area and not valve size, stem through the bonnet on the side away from the port.',
    sources: ['S-06'],
    example: { flow: 'over', inletPa: 700000, outletPa: 0, portDiameterM: 0.05, stemDiameterM: 0.0127 },
    run: plugForce,
  }),
  calculation({
    id: 'shut-end',
    title: 'Seat contact, first lift and seat load',
    topic: 'force balance',
    inputs: { ...ACTUATOR, ...numbers('supplyPa', 'portDiameterM') },
    outputs: {
      ...told('word', 'endThatMoves', 'moves'),
      ...results(
        'benchEndPa',
        'contactPa',
        'firstLiftPa',
        'seatLoadAtPa',
        'springOrAirN',
        'plugForceN',
        'frictionN',
      ),
      ...results('seatLoadN', 'seatLoadNPerM'),
      ...told('yes-no', 'heldShut'),
    },
    answers: ['contactPa', 'firstLiftPa', 'seatLoadN', 'seatLoadNPerM', 'heldShut'],
    equation:
      'air to close: contact = high + (F + Ff)/A, load = A · (supply − high) − F − Ff; air to open: first lift = low + (Ff − F)/A, load = A · low − F − Ff',
    validity: `${CONSTANT_AREA} A negative seat load means that the plug is not held.`,
    sources: ['S-06', 'S-13'],
    example: { ...ACTUATOR_EXAMPLE, supplyPa: 140000, portDiameterM: 0.05 },
    run: shutEnd,
  }),
  calculation({
    id: 'forces-at-lift',
    title: 'All forces on the stem at a lift',
    topic: 'force balance',
    inputs: { ...ACTUATOR, ...numbers('travelM', 'liftM', 'pressurePa') },
    outputs: {
      ...results('airN', 'springN', 'plugForceN', 'netN', 'openingPa', 'closingPa', 'balancedPa'),
      ...told('word', 'tendsTo'),
    },
    answers: ['netN', 'openingPa', 'closingPa', 'tendsTo'],
    equation: 'net = air + spring + plug force; the stem moves where the net passes the friction',
    validity: `Off the seat, with the plug force at that lift. ${CONSTANT_AREA}`,
    sources: ['S-06'],
    example: { ...ACTUATOR_EXAMPLE, travelM: 0.02, liftM: 0.01, pressurePa: 60000 },
    run: forcesAtLift,
  }),
  calculation({
    id: 'friction-two-pressures',
    title: 'Friction from two pressures at one travel',
    topic: 'force balance',
    inputs: numbers('effectiveAreaM2', 'risingPa', 'fallingPa'),
    outputs: results('frictionN', 'balancedPa'),
    answers: ['frictionN'],
    equation: 'friction = A · (up − down)/2',
    validity: 'Both read while the stem moves. Breakout friction is larger.',
    sources: ['S-06'],
    example: { effectiveAreaM2: 0.05, risingPa: 66000, fallingPa: 58000 },
    run: frictionFromPressures,
  }),
  calculation({
    id: 'smallest-supply',
    title: 'Smallest air supply',
    topic: 'force balance',
    inputs: { ...ACTUATOR, ...numbers('portDiameterM', 'seatLoadNeedNPerM') },
    outputs: {
      ...results('seatLoadNeededN', 'atTheSeatPa', 'atTheOpenEndPa', 'smallestSupplyPa'),
      ...told('yes-no', 'springIsEnough'),
    },
    answers: ['smallestSupplyPa', 'springIsEnough'],
    equation:
      'air to close: high + (F + Ff + need)/A; air to open: the larger of first lift and full opening',
    validity: 'The plug force has faded at the open end. No margin is added.',
    sources: ['S-06', 'S-13'],
    example: { ...ACTUATOR_EXAMPLE, portDiameterM: 0.05, seatLoadNeedNPerM: 5000 },
    run: smallestSupply,
  }),
  calculation({
    id: 'shut-off-margin',
    title: 'Seat load there against seat load needed',
    topic: 'force balance',
    inputs: { ...ACTUATOR, ...numbers('supplyPa', 'portDiameterM', 'seatLoadNeedNPerM') },
    outputs: {
      ...results('seatLoadN', 'seatLoadNeededN', 'marginN', 'marginNPerM'),
      ...told('yes-no', 'enough'),
    },
    answers: ['marginN', 'enough'],
    equation: 'margin = seat load − need · π · port diameter',
    validity: 'Tables of different makers differ by a factor of two: the need comes from the valve sheet.',
    sources: ['S-06', 'S-13'],
    example: { ...ACTUATOR_EXAMPLE, supplyPa: 140000, portDiameterM: 0.05, seatLoadNeedNPerM: 5000 },
    run: shutOffMargin,
  }),
  calculation({
    id: 'largest-shut-off-drop',
    title: 'Largest drop that is shut off',
    topic: 'force balance',
    inputs: {
      ...choice('airAction', AIR_ACTIONS),
      ...BENCH,
      ...numbers('frictionN', 'supplyPa', 'portDiameterM', 'seatLoadNeedNPerM'),
    },
    outputs: results('seatLoadN', 'seatLoadNeededN', 'dropPa'),
    answers: ['dropPa'],
    equation: 'drop = (load without process − need · π · d)/(π/4 · d²)',
    validity:
      'Unbalanced plug, flow under it, outlet at ambient pressure. Negative: not even without a drop.',
    sources: ['S-13'],
    example: {
      airAction: 'air-to-close',
      effectiveAreaM2: 0.045,
      benchSetLowPa: 20000,
      benchSetHighPa: 100000,
      frictionN: 110,
      supplyPa: 124000,
      portDiameterM: 0.0254,
      seatLoadNeedNPerM: 1750,
    },
    run: largestShutOffDrop,
  }),
  calculation({
    id: 'piston-thrust',
    title: 'Thrust of a double-acting piston',
    topic: 'force balance',
    inputs: {
      ...numbers('boreM', 'rodDiameterM', 'upperPa', 'lowerPa', 'sealFrictionN'),
      ...usualNumbers({ springDownN: 0 }),
    },
    outputs: results('upperAreaM2', 'lowerAreaM2', 'downBeforeFrictionN', 'downN'),
    answers: ['downN'],
    equation: 'F = p(upper) · A(upper) − p(lower) · A(lower) + spring, less friction',
    validity: 'Rod through the lower side. Full thrust needs the other side vented.',
    sources: ['S-06'],
    example: { boreM: 0.15, rodDiameterM: 0.02, upperPa: 550000, lowerPa: 70000, sealFrictionN: 180 },
    run: pistonThrust,
  }),
  calculation({
    id: 'piston-supply',
    title: 'Smallest supply of a double-acting piston',
    topic: 'force balance',
    inputs: {
      ...numbers('boreM', 'rodDiameterM', 'sealFrictionN', 'thrustN'),
      ...choice('direction', ['down', 'up']),
      ...usualNumbers({ springDownN: 0 }),
    },
    outputs: results('areaM2', 'smallestSupplyPa'),
    answers: ['smallestSupplyPa'],
    equation: 'p = (thrust + friction ∓ spring)/area',
    validity: 'The other side at zero.',
    sources: ['S-06'],
    example: { boreM: 0.15, rodDiameterM: 0.02, sealFrictionN: 180, thrustN: 5000, direction: 'up' },
    run: pistonSupply,
  }),
];
