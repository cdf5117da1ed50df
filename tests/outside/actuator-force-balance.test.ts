import { expect } from 'vitest';
import { adjusterTurns, benchSet, benchSetFromInstalled } from '../../procedures/calculations/bench-set.ts';
import { frictionFromPressures, shutEnd } from '../../procedures/calculations/force-balance.ts';
import { packingFriction, packingFrictionByStress } from '../../procedures/calculations/packing-friction.ts';
import type { Packing, PressureClass } from '../../procedures/calculations/packing-tables.ts';
import { pistonThrust } from '../../procedures/calculations/piston.ts';
import { circleAreaM2, plugForce } from '../../procedures/calculations/plug-force.ts';
import { type LeakageClass, seatLoadNeed } from '../../procedures/calculations/seat-load-tables.ts';
import { seatingTurns } from '../../procedures/calculations/seating-turns.ts';
import { largestShutOffDrop } from '../../procedures/calculations/shut-off.ts';
import { toSi } from '../../procedures/calculations/units.ts';
import { each, type Given, inNamedUnits, runCases } from './cases.ts';

const psi = (value: number) => toSi({ value, unit: 'psi' });
const pitchOf = (given: Given) => toSi({ value: 1 / given.number('threads_per_inch'), unit: 'in' });

/** The table's figures for the class are ours as well, and must be the ones that the case names. */
function allowableDrop(given: Given) {
  given.notNeeded('flow', 'outlet_pressure_psig');
  const portDiameterM = given.si('port_diameter_in');
  const need = seatLoadNeed({
    table: 'sizing-guide-2008',
    leakageClass: given.text('leakage_class') as LeakageClass,
    portDiameterM,
  });
  expect(need.printedLbfPerIn).toBe(given.number('seat_load_lbf_per_in_of_port_circumference'));
  const benchSetHighPa = given.si('bench_set_upper_psi');
  const { dropPa } = largestShutOffDrop({
    airAction: 'air-to-close',
    effectiveAreaM2: given.si('effective_area_in2'),
    benchSetLowPa: psi(3),
    benchSetHighPa,
    frictionN: given.si('packing_friction_lbf'),
    supplyPa: given.si('supply_psig'),
    portDiameterM,
    seatLoadNeedNPerM: need.seatLoadNeedNPerM,
  });
  return inNamedUnits({ allowable_shutoff_dp_psi: dropPa });
}

function springUs(given: Given) {
  const spring = benchSet({
    effectiveAreaM2: given.si('effective_area_in2'),
    benchSetLowPa: given.si('bench_low_psi'),
    benchSetHighPa: given.si('bench_high_psi'),
    travelM: given.si('travel_in'),
  });
  return inNamedUnits({
    spring_preload_lbf: spring.preloadN,
    spring_rate_lbf_per_in: spring.springRateNPerM,
    spring_force_at_full_travel_lbf: spring.forceAtFullTravelN,
  });
}

function adjuster(given: Given) {
  const shift = adjusterTurns({
    effectiveAreaM2: given.si('effective_area_in2'),
    springRateNPerM: given.si('spring_rate_lbf_per_in'),
    threadPitchM: pitchOf(given),
    turns: given.number('turns'),
  });
  return inNamedUnits({
    preload_change_lbf: shift.preloadChangeN,
    bench_shift_psi: shift.benchSetShiftPa,
    bench_span_change_psi: shift.spanChangePa,
  });
}

function friction(given: Given) {
  const { frictionN, balancedPa } = frictionFromPressures({
    effectiveAreaM2: given.si('effective_area_in2'),
    risingPa: given.si('pressure_increasing_psi'),
    fallingPa: given.si('pressure_decreasing_psi'),
  });
  return inNamedUnits({ friction_lbf: frictionN, frictionless_pressure_psi: balancedPa });
}

function plug(given: Given) {
  const { openingN } = plugForce({
    flow: given.text('flow').startsWith('under') ? 'under' : 'over',
    inletPa: given.si('P1_psig'),
    outletPa: given.si('P2_psig'),
    portDiameterM: given.si('port_diameter_in'),
    stemDiameterM: given.si('stem_diameter_in'),
  });
  return inNamedUnits({ net_force_opening_positive_lbf: openingN });
}

/** The end of the bench set that a case leaves out has no part in its answer. */
function end(given: Given, airAction: 'air-to-open' | 'air-to-close') {
  return shutEnd({
    airAction,
    effectiveAreaM2: given.si('effective_area_in2'),
    benchSetLowPa: given.has('bench_low_psi') ? given.si('bench_low_psi') : 0,
    benchSetHighPa: given.has('bench_high_psi') ? given.si('bench_high_psi') : psi(100),
    plugForceOpeningN: given.si('unbalance_opening_lbf'),
    frictionN: given.si('packing_friction_lbf'),
    supplyPa: given.has('supply_psig') ? given.si('supply_psig') : 0,
    portDiameterM: given.has('port_diameter_in') ? given.si('port_diameter_in') : 0.05,
  });
}

function tabled(given: Given) {
  given.notNeeded('table');
  const [kind = '', single] = given.text('packing').toLowerCase().split(' ');
  const pressureClass = given.text('pressure_class');
  const found = packingFriction({
    table: 'reference-manual',
    stemDiameterM: given.si('stem_diameter_in'),
    packing: (single === undefined ? kind : `${kind}-${single}`) as Packing,
    pressureClass: pressureClass === 'any' ? null : (pressureClass as PressureClass),
  });
  return { friction_lbf: found.printedLbf };
}

function byStress(given: Given) {
  const frictionN = packingFrictionByStress({
    stemDiameterM: given.si('stem_diameter_in'),
    packingHeightM: given.si('packing_height_in'),
    packingStressPa: given.si('packing_stress_psi'),
    frictionFactor: given.number('friction_coefficient'),
    radialToAxialRatio: given.number('radial_to_axial_ratio'),
  });
  return inNamedUnits({ friction_lbf: frictionN });
}

runCases('actuator-force-balance', {
  ...each(['act-r01', 'act-r02', 'act-r03', 'act-r04', 'act-r05'], allowableDrop),
  ...each(['act-r06', 'act-r07'], springUs),
  'act-r08': (given) => {
    const spring = benchSet({
      effectiveAreaM2: given.si('effective_area_cm2'),
      benchSetLowPa: given.si('bench_low_bar'),
      benchSetHighPa: given.si('bench_high_bar'),
      travelM: given.si('travel_mm'),
    });
    return inNamedUnits({ spring_preload_N: spring.preloadN, spring_rate_N_per_mm: spring.springRateNPerM });
  },
  ...each(['act-r09', 'act-r10'], adjuster),
  ...each(['act-r11', 'act-r12'], friction),
  'act-r13': (given) =>
    inNamedUnits({ force_lbf: circleAreaM2(given.si('diaphragm_diameter_in')) * given.si('pressure_psig') }),
  ...each(['act-r14', 'act-r15'], plug),
  'act-r16': (given) => {
    const { seatLoadN, seatLoadNPerM, firstLiftPa } = end(given, 'air-to-open');
    return inNamedUnits({
      available_seat_load_lbf: seatLoadN,
      seat_load_lbf_per_in_of_port_circumference: seatLoadNPerM,
      pressure_to_start_opening_psi: firstLiftPa ?? Number.NaN,
    });
  },
  'act-r17': (given) => {
    const { seatLoadN, seatLoadNPerM, contactPa } = end(given, 'air-to-close');
    return inNamedUnits({
      pressure_at_first_seat_contact_psi: contactPa ?? Number.NaN,
      available_seat_load_lbf: seatLoadN,
      seat_load_lbf_per_in_of_port_circumference: seatLoadNPerM,
    });
  },
  ...each(['act-r18', 'act-r19', 'act-r20', 'act-r21', 'act-r25'], tabled),
  ...each(['act-r22', 'act-r24'], byStress),
  'act-r23': (given) => {
    const thrust = pistonThrust({
      boreM: given.si('cylinder_bore_in'),
      rodDiameterM: given.si('rod_diameter_in'),
      upperPa: given.si('upper_pressure_psig'),
      lowerPa: given.si('lower_pressure_psig'),
      sealFrictionN: given.si('seal_friction_lbf'),
    });
    return inNamedUnits({
      upper_area_in2: thrust.upperAreaM2,
      lower_area_in2: thrust.lowerAreaM2,
      net_down_thrust_before_friction_lbf: thrust.downBeforeFrictionN,
      net_down_thrust_lbf: thrust.downN,
    });
  },
  'act-r26': (given) => {
    const closing = end(given, 'air-to-close');
    const benchHighPa = benchSetFromInstalled({
      airAction: 'air-to-close',
      effectiveAreaM2: given.si('effective_area_in2'),
      plugForceOpeningN: given.si('unbalance_opening_lbf'),
      installedLowPa: 0,
      installedHighPa:
        (closing.contactPa ?? Number.NaN) - given.si('packing_friction_lbf') / given.si('effective_area_in2'),
    }).highPa;
    expect(benchHighPa).toBeCloseTo(given.si('bench_high_psi'), 6);
    return inNamedUnits({ in_line_closing_pressure_psi: closing.contactPa ?? Number.NaN });
  },
  'act-r27': (given) => {
    given.notNeeded('flow');
    const { contactPa, seatLoadN, seatLoadNPerM } = end(given, given.text('air_action') as 'air-to-close');
    return inNamedUnits({
      contact_pressure_psi: contactPa ?? Number.NaN,
      available_seat_load_lbf: seatLoadN,
      seat_load_lbf_per_in_of_port_circumference: seatLoadNPerM,
    });
  },
  'act-r28': (given) => {
    given.notNeeded('flow');
    const { firstLiftPa, seatLoadN, seatLoadNPerM } = end(given, given.text('air_action') as 'air-to-open');
    return inNamedUnits({
      first_lift_pressure_psi: firstLiftPa ?? Number.NaN,
      available_seat_load_lbf: seatLoadN,
      seat_load_lbf_per_in_of_port_circumference: seatLoadNPerM,
    });
  },
  'act-r29': (given) => {
    const turned = seatingTurns({
      plugCloses: given.text('plug_closes_moving') as 'down',
      airAction: given.text('air_action') as 'air-to-open',
      effectiveAreaM2: given.si('effective_area_in2'),
      benchSetLowPa: given.si('bench_low_psi'),
      benchSetHighPa: given.si('bench_high_psi'),
      travelM: given.si('travel_in'),
      threadPitchM: pitchOf(given),
      turns: given.number('seating_turns'),
    });
    return {
      turn_plug_stem: turned.screwPlugStem,
      lift_lost_percent: turned.liftLostPercent,
      ...inNamedUnits({
        contact_shift_psi: turned.signalShiftPa,
        contact_pressure_psi: turned.contactPa,
        seat_load_gain_lbf: turned.seatLoadGainN,
        lift_lost_in: turned.plugShiftM,
      }),
    };
  },
});
