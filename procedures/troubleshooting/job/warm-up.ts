import { toSi } from '../../calculations/units.ts';
import { believe } from '../engine/belief.ts';
import { decide } from '../engine/decide.ts';
import type { Evidence } from '../engine/evidence.ts';
import { modelOfValve } from '../engine/model-of-valve.ts';
import type { ValveFacts } from '../valve-facts.ts';

/** An ordinary valve: nobody's, and only to be thought about once. */
const ORDINARY: ValveFacts = {
  actuator: 'diaphragm',
  spring: true,
  positioner: 'pneumatic',
  relays: 'one',
  source: 'transducer',
  airMovesStem: 'up',
  plugCloses: 'down',
  risingLoads: 'bottom',
  coveredNozzleLoads: 'bottom',
  flowTendsTo: 'open',
  balancedPlug: false,
  bellowsSeal: false,
  springHeldBy: 'adjuster',
  lockUp: false,
  booster: false,
  trip: false,
  bypassLine: true,
  tubeM: 10,
  rigUsed: false,
  plunger: true,
  gaugesFitted: ['source', 'supply', 'signal', 'actuator'],
  numbers: {
    signalLowPa: toSi({ value: 3, unit: 'psi' }),
    signalHighPa: toSi({ value: 15, unit: 'psi' }),
    benchSetLowPa: toSi({ value: 3, unit: 'psi' }),
    benchSetHighPa: toSi({ value: 15, unit: 'psi' }),
    effectiveAreaM2: 0.0645,
    travelM: 0.01905,
    supplyPa: toSi({ value: 20, unit: 'psi' }),
    packingFrictionN: null,
  },
};

/** So many answers are thought about. */
const ANSWERS = 6;

/**
 * Thinks an ordinary search through, a step at a time: what runs for the first time takes several times as long, and
 * the first technician of a day is not to wait for it. Nothing of it is kept.
 * @example for (const step of warmUpSteps()) step()
 */
export function warmUpSteps(): readonly (() => void)[] {
  const evidence: Evidence[] = [];
  const step = () => {
    const model = modelOfValve(ORDINARY);
    const belief = believe(model, evidence);
    const { check } = decide(model, { belief, evidence, standing: STANDING });
    const amiss = check === null ? undefined : model.tables.get(check.check)?.codes.at(-1);
    if (check !== null && amiss !== undefined)
      evidence.push({ kind: 'answer', check: check.check, outcome: amiss, gaugeAlive: true });
  };
  return Array.from({ length: ANSWERS }, () => step);
}

const STANDING = {
  hub: 'in service',
  gaugesFitted: ORDINARY.gaugesFitted,
  consent: true,
  mayBypass: true,
  mayIsolate: true,
  testAir: true,
  coverMayOpen: true,
} as const;
