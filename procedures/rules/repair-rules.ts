import { bellowsHoldRule } from './bellows.ts';
import { blowByRule, cylinderLookRule, forAirRule, strokeMadeRule } from './cylinder.ts';
import { drainRule } from './drain.ts';
import { flapperLookRule, linkPlayRule } from './positioner-looks.ts';
import { plungerTriedRule, relayAnswersRule, restrictionLookRule } from './relay.ts';
import type { Rule } from './rule.ts';
import { loopCurrentRule, supplyHoldsRule, terminalsRule, tubesLookRule } from './small-repairs.ts';

/** Rules of the repairs before the actuator and of the cylinder. */
export const REPAIR_RULES = {
  relayAnswers: relayAnswersRule,
  plungerTried: plungerTriedRule,
  restrictionLook: restrictionLookRule,
  drain: drainRule,
  bellowsHold: bellowsHoldRule,
  flapperLook: flapperLookRule,
  linkPlay: linkPlayRule,
  forAir: forAirRule,
  blowBy: blowByRule,
  cylinderLook: cylinderLookRule,
  strokeMade: strokeMadeRule,
  supplyHolds: supplyHoldsRule,
  tubesLook: tubesLookRule,
  terminals: terminalsRule,
  loopCurrent: loopCurrentRule,
} as const satisfies Record<string, Rule>;

export type RepairRuleName = keyof typeof REPAIR_RULES;

export const REPAIR_RULE_NAMES = Object.keys(REPAIR_RULES) as readonly RepairRuleName[];
