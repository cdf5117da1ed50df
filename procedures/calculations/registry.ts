import { CalcError } from './calc-error.ts';
import type { Calculation } from './calculation-types.ts';
import { ACTUATOR_CALCULATIONS } from './entries/actuator.ts';
import { BOLTING_CALCULATIONS } from './entries/bolting.ts';
import { CURRENT_CALCULATIONS } from './entries/current.ts';
import { CYCLE_CALCULATIONS } from './entries/cycle.ts';
import { ENERGY_CALCULATIONS } from './entries/energy.ts';
import { FLOW_CALCULATIONS } from './entries/flow.ts';
import { LEAK_CALCULATIONS } from './entries/leak.ts';
import { LEAK_MEASURED_CALCULATIONS } from './entries/leak-measured.ts';
import { MEASURING_CALCULATIONS } from './entries/measuring.ts';
import { PNEUMATIC_CALCULATIONS } from './entries/pneumatics.ts';
import { SEAT_LEAKAGE_CALCULATIONS } from './entries/seat-leakage.ts';
import { SEATING_CALCULATIONS } from './entries/seating.ts';
import { SIGNAL_CALCULATIONS } from './entries/signal.ts';
import { STROKE_CALCULATIONS } from './entries/stroke.ts';

/** Every calculation that can be used by itself, in the order of their topics. */
export const CALCULATIONS: readonly Calculation[] = [
  ...SIGNAL_CALCULATIONS,
  ...CURRENT_CALCULATIONS,
  ...CYCLE_CALCULATIONS,
  ...STROKE_CALCULATIONS,
  ...ACTUATOR_CALCULATIONS,
  ...SEATING_CALCULATIONS,
  ...SEAT_LEAKAGE_CALCULATIONS,
  ...LEAK_MEASURED_CALCULATIONS,
  ...FLOW_CALCULATIONS,
  ...LEAK_CALCULATIONS,
  ...PNEUMATIC_CALCULATIONS,
  ...MEASURING_CALCULATIONS,
  ...BOLTING_CALCULATIONS,
  ...ENERGY_CALCULATIONS,
];

/**
 * The calculation of an id.
 *
 * Shape: an id in, data and function out.
 * @param id  as it stands in an address
 * @returns the calculation
 * @throws CalcError CALC-005 if there is none of that id
 * @source none: a rule of this code
 * @example calculationOf('bench-set').title // 'Spring rate and forces of a bench set'
 * @example calculationOf('fortune') // throws CALC-005
 */
export function calculationOf(id: string): Calculation {
  const found = CALCULATIONS.find((calculation) => calculation.id === id);
  if (found !== undefined) return found;
  throw new CalcError({
    code: 'CALC-005',
    name: 'id',
    value: id,
    range: 'the id of a calculation',
    unit: '',
  });
}
