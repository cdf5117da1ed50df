import { benchSetRule } from './bench-set.ts';
import { contactAfterRule, contactRule } from './contact.ts';
import { cycleRule, tableRule } from './cycle.ts';
import { benchShiftRule, diaphragmLookRule } from './diaphragm.ts';
import { energiesKnownRule, keptAirRule, othersRule } from './energies.ts';
import { FAULT_RULE_NAMES, FAULT_RULES } from './find-the-fault.ts';
import { hotCheckRule } from './hot-check.ts';
import { glandFrictionRule, glandLookRule, glandRoundRule } from './live-gland.ts';
import { gasTestRule, shutOffRule } from './open-line.ts';
import { converterRule, failActionRule, strokeTimesRule, supplyMovingRule, supplyRule } from './own-air.ts';
import { actuatorAirRule, ownStrokeRule } from './own-stroke.ts';
import { ringsRule, stemLookRule } from './packing.ts';
import { allYesRule, noneOfRule, oneOfRule, recordRule } from './plain.ts';
import { cylinderGaugesRule, deadBandRule, positionerStepRule, positionerStrokeRule } from './positioner.ts';
import { REPAIR_RULE_NAMES, REPAIR_RULES } from './repair-rules.ts';
import { gaugesAgreeRule, heldOffSeatRule, steadyRule } from './rig.ts';
import type { Rule } from './rule.ts';
import { seatLeakRule, seatPressureRule } from './seat-leak.ts';
import { showSafeRule } from './show-safe.ts';
import { shutInRule } from './shut-in.ts';
import { signalAtValveRule } from './signal-at-valve.ts';
import { soapCaseRule } from './soap-case.ts';
import { springFitsRule } from './spring-change.ts';
import { springFreeRule, turnsBackRule } from './spring-free.ts';
import { stillZeroRule } from './still-zero.ts';
import { seatLoadRule, torquedRule, trimLookRule } from './trim.ts';

/** The rules that a step may name. */
export const RULE_NAMES = [
  'record',
  'allYes',
  'oneOf',
  'noneOf',
  'energiesKnown',
  'keptAir',
  'others',
  'showSafe',
  'stillZero',
  'gaugesAgree',
  'steady',
  'heldOffSeat',
  'contact',
  'contactAfter',
  'table',
  'cycle',
  'ownStroke',
  'actuatorAir',
  'positionerStroke',
  'deadBand',
  'positionerStep',
  'cylinderGauges',
  'supply',
  'supplyMoving',
  'signalAtValve',
  'shutIn',
  'failAction',
  'strokeTimes',
  'converter',
  'benchSet',
  'seatPressure',
  'seatLeak',
  'soapCase',
  'glandLook',
  'glandFriction',
  'glandRound',
  'shutOff',
  'gasTest',
  'springFree',
  'turnsBack',
  'rings',
  'stemLook',
  'hotCheck',
  'benchShift',
  'diaphragmLook',
  'springFits',
  ...REPAIR_RULE_NAMES,
  ...FAULT_RULE_NAMES,
  'seatLoad',
  'torqued',
  'trimLook',
] as const;

export type RuleName = (typeof RULE_NAMES)[number];

export const RULES: Readonly<Record<RuleName, Rule>> = {
  record: recordRule,
  allYes: allYesRule,
  oneOf: oneOfRule,
  noneOf: noneOfRule,
  energiesKnown: energiesKnownRule,
  keptAir: keptAirRule,
  others: othersRule,
  showSafe: showSafeRule,
  stillZero: stillZeroRule,
  gaugesAgree: gaugesAgreeRule,
  steady: steadyRule,
  heldOffSeat: heldOffSeatRule,
  contact: contactRule,
  contactAfter: contactAfterRule,
  table: tableRule,
  cycle: cycleRule,
  ownStroke: ownStrokeRule,
  actuatorAir: actuatorAirRule,
  positionerStroke: positionerStrokeRule,
  deadBand: deadBandRule,
  positionerStep: positionerStepRule,
  cylinderGauges: cylinderGaugesRule,
  supply: supplyRule,
  supplyMoving: supplyMovingRule,
  signalAtValve: signalAtValveRule,
  shutIn: shutInRule,
  failAction: failActionRule,
  strokeTimes: strokeTimesRule,
  converter: converterRule,
  benchSet: benchSetRule,
  seatPressure: seatPressureRule,
  seatLeak: seatLeakRule,
  soapCase: soapCaseRule,
  glandLook: glandLookRule,
  glandFriction: glandFrictionRule,
  glandRound: glandRoundRule,
  shutOff: shutOffRule,
  gasTest: gasTestRule,
  springFree: springFreeRule,
  turnsBack: turnsBackRule,
  rings: ringsRule,
  stemLook: stemLookRule,
  hotCheck: hotCheckRule,
  benchShift: benchShiftRule,
  diaphragmLook: diaphragmLookRule,
  springFits: springFitsRule,
  ...REPAIR_RULES,
  ...FAULT_RULES,
  seatLoad: seatLoadRule,
  torqued: torquedRule,
  trimLook: trimLookRule,
};
