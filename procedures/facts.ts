import type { Effects } from '../safety/situation.ts';
import { stemMayTurn } from './valve-sheet/derived.ts';
import type { ValveSheet } from './valve-sheet/sheet.ts';

/**
 * The facts that a procedure may branch on: a closed list, taken from the sheet and from where the valve
 * stands, and pinned when the job opens. Everything else that differs between valves is a number.
 */
const FACTS = {
  place: ['bench', 'line'],
  bypassLine: ['fitted', 'none'],
  stemMayTurn: ['yes', 'no'],
  springHeldBy: ['adjuster', 'case'],
  secondFeed: ['none', 'fitted'],
  actuator: ['diaphragm', 'piston'],
  positioner: ['none', 'pneumatic', 'electropneumatic'],
  bonnet: ['plain', 'bellows'],
  handwheel: ['none', 'fitted'],
  electrical: ['none', 'fitted'],
  trim: ['plain', 'balanced'],
} as const;

export type FactName = keyof typeof FACTS;
export type Facts = { readonly [F in FactName]: (typeof FACTS)[F][number] };

/** What is shown, asked or offered only where a fact stands so: in one way, or in one of some. */
export interface WhenFact {
  readonly fact: FactName;
  readonly is: Facts[FactName] | readonly Facts[FactName][];
}

/** @example standsSo({ fact: 'positioner', is: ['pneumatic', 'electropneumatic'] }, facts) // true where one is fitted */
export function standsSo(when: WhenFact | undefined, facts: Facts): boolean {
  return when === undefined || [when.is].flat().includes(facts[when.fact]);
}

export const WITH_POSITIONER: WhenFact = { fact: 'positioner', is: ['pneumatic', 'electropneumatic'] };

export const FACT_NAMES = Object.keys(FACTS) as readonly FactName[];

/** @example factsOf(sheet, 'bench').place // 'bench' */
export function factsOf(sheet: ValveSheet, place: Facts['place']): Facts {
  return {
    place,
    bypassLine: sheet.bypassPoint === null ? 'none' : 'fitted',
    stemMayTurn: stemMayTurn(sheet) ? 'yes' : 'no',
    springHeldBy: sheet.springHeldBy === 'adjuster' ? 'adjuster' : 'case',
    secondFeed: sheet.secondSupplyPoint === null ? 'none' : 'fitted',
    actuator: sheet.actuatorKind,
    positioner: sheet.positioner,
    bonnet: sheet.bellowsSeal ? 'bellows' : 'plain',
    handwheel: sheet.handwheel ? 'fitted' : 'none',
    electrical: sheet.electricalV === null ? 'none' : 'fitted',
    trim: sheet.balanceSealDiameterM === null ? 'plain' : 'balanced',
  };
}

/**
 * What the facts say about how the valve is built, for the interlock: it looks at the log, never at the sheet.
 * @example knownAtOpening(facts).springHolder // 'case'
 */
export function knownAtOpening({ springHeldBy }: Facts): Effects {
  return { springHolder: springHeldBy };
}

/** Every way in which these facts can stand: what a proof runs over, so that one proof covers every valve. */
export function everyFacts(names: readonly FactName[] = FACT_NAMES): readonly Facts[] {
  let all: readonly Record<string, string>[] = [
    Object.fromEntries(FACT_NAMES.map((name) => [name, FACTS[name][0]])),
  ];
  for (const name of names)
    all = all.flatMap((some) => FACTS[name].map((value) => ({ ...some, [name]: value })));
  return all as readonly Facts[];
}
