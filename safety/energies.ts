import { type AnyState, type ConditionId, ENERGY_IDS } from './conditions.ts';
import { GAS_TEST_MINUTES, HELD_AIR_MINUTES, PROOF_AGE_HOURS } from './limits.ts';

/** What a person wants to know of an energy before anything is shut: what it does, and how it is controlled and shown. */
export interface EnergyRow {
  /** Where an unexpected start can come from (ISO 14118): what is fed, what is stored, what acts from outside. */
  readonly comesFrom: 'supply' | 'stored' | 'outside';
  readonly hazard: string;
  readonly control: string;
  readonly shownBy: string;
  /** It can build up again behind its lock, so that an old proof counts no more. */
  readonly buildsUp: boolean;
}

const ZERO = 'the gauge that was seen alive reads zero, or the vent shows no flow, twice';

/** By condition; how it is controlled is `common practice, no source` where the table of actions names none. */
export const ENERGIES: { readonly [C in ConditionId]?: EnergyRow } = {
  supplyAir: {
    comesFrom: 'supply',
    hazard: 'moves the stem when it comes back; a tube end whips',
    control: 'cock shut and locked, line vented behind it',
    shownBy: ZERO,
    buildsUp: true,
  },
  secondSupply: {
    comesFrom: 'supply',
    hazard: 'moves the stem though the first feed is shut',
    control: 'its own cock shut and locked, its own line vented',
    shownBy: ZERO,
    buildsUp: true,
  },
  signalAir: {
    comesFrom: 'supply',
    hazard: 'moves the stem as the controller asks',
    control: 'line off at the actuator and capped; later one source of test air in your hand',
    shownBy: ZERO,
    buildsUp: true,
  },
  trappedAir: {
    comesFrom: 'stored',
    hazard: 'strokes the valve after the supply is shut',
    control: 'vented at its own vent, not only at the regulator',
    shownBy: 'its own vent, cracked twice without flow',
    buildsUp: true,
  },
  lockUpAir: {
    comesFrom: 'stored',
    hazard: 'the relay keeps it on the actuator by design',
    control: 'vented between relay and actuator',
    shownBy: 'the joint behind the relay, cracked twice without flow',
    buildsUp: true,
  },
  oppositeAir: {
    comesFrom: 'stored',
    hazard: 'drives the stem when the side that moves it is vented',
    control: 'each side vented at the actuator',
    shownBy: 'the port of that side, cracked twice without flow',
    buildsUp: true,
  },
  spring: {
    comesFrom: 'stored',
    hazard: 'throws the cover that is loosened over it',
    control: 'left shut in under its cover, or backed off with the adjuster before a bolt of it is touched',
    shownBy: 'actuator shut and every bolt in and tight, or the adjuster turning freely by hand',
    buildsUp: false,
  },
  processInlet: {
    comesFrom: 'outside',
    hazard: 'blows out at any joint that is opened',
    control: 'block valve shut and locked, side drained',
    shownBy: `${ZERO}; read again after the drains were shut in`,
    buildsUp: true,
  },
  processOutlet: {
    comesFrom: 'outside',
    hazard: 'a plug on its seat keeps it when the other side is drained',
    control: 'block valve shut and locked, side drained by its own drain',
    shownBy: `${ZERO}; read again after the drains were shut in`,
    buildsUp: true,
  },
  temperature: {
    comesFrom: 'stored',
    hazard: 'burns or freezes skin',
    control: 'left until it may be touched, tracing shut off',
    shownBy: 'a reading at the body',
    buildsUp: true,
  },
  weight: {
    comesFrom: 'stored',
    hazard: 'actuator, plug and stem drop or swing when the last fastener is out',
    control: 'hung before the last fastener is loosened',
    shownBy: 'lifting gear on, slack taken up',
    buildsUp: false,
  },
  residue: {
    comesFrom: 'stored',
    hazard: 'pockets in bonnet, cage, bellows and drains keep the fluid',
    control: 'drained, purged, gas tested',
    shownBy: 'how it was cleared, with the test and its time',
    buildsUp: true,
  },
  electrical: {
    comesFrom: 'supply',
    hazard: 'shocks, and a spark can ignite; a solenoid moves the valve',
    control: 'breaker off and locked, tried dead; a rule of its own for work on it',
    shownBy: 'tried dead at the terminals',
    buildsUp: false,
  },
  commands: {
    comesFrom: 'outside',
    hazard:
      'air that returns, a controller that moves its output, a positioner that calibrates itself or runs a part-stroke test: each moves the valve by surprise',
    control: 'loop in manual and tagged, remote writes and tests blocked; never an isolation by itself',
    shownBy: 'the operator says so, by role',
    buildsUp: false,
  },
  safetyFunction: {
    comesFrom: 'outside',
    hazard: 'a trip fires, or is missing when it is needed',
    control: 'override by the site’s own permit',
    shownBy: 'number of the override',
    buildsUp: true,
  },
};

const MINUTE_MS = 60_000;

/**
 * How long a state counts once it was shown; null where it does not age.
 * @example proofAgeMs('processInlet', 'isolated') // 14400000, 4 hours
 */
export function proofAgeMs(condition: ConditionId, state: AnyState): number | null {
  if (state === 'held') return HELD_AIR_MINUTES * MINUTE_MS;
  if (condition === 'gasTest') return GAS_TEST_MINUTES * MINUTE_MS;
  return ENERGIES[condition]?.buildsUp === true ? PROOF_AGE_HOURS * 60 * MINUTE_MS : null;
}

/** Energies without a row, or with a part of it left blank: a table with any is not to be believed. */
export function rowFaults(rows: typeof ENERGIES = ENERGIES): readonly string[] {
  return ENERGY_IDS.flatMap((id) => {
    const row = rows[id];
    if (row === undefined) return [`${id} has no row`];
    return (['hazard', 'control', 'shownBy'] as const)
      .filter((part) => row[part].trim() === '')
      .map((part) => `${id} has no ${part}`);
  });
}
