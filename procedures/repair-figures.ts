import type { Figure } from './figure.ts';
import { crossOrder } from './overhaul-figures.ts';
import { bellowsTestPa, linkPlayLimitM } from './repair-limits.ts';
import { PLUNGER_TRIES_MAX, RELAY_SWING_SHARE } from './rules/relay.ts';
import { LIVE_READ_MAX_V, LOOP_OFF_MAX_A, SUPPLY_SAG_MAX_PERCENT } from './rules/small-repairs.ts';
import { sayLastTime } from './troubleshooting/job/last-time.ts';

const RELAYS = {
  one: 'one relay',
  'one an end': 'one relay for each end of the cylinder',
} as const;

/** Numbers of repairs before the actuator, which texts name by placeholder. */
export const REPAIR_FIGURES = {
  relaysFitted: {
    label: 'relays in the positioner, by the sheet',
    dimension: 'text',
    of: ({ sheet }) =>
      sheet.positionerRelays === null ? 'the sheet does not say' : RELAYS[sheet.positionerRelays],
  },
  relaySwing: {
    label: 'swing of a sound relay, at least, of its supply',
    dimension: 'percent',
    of: () => 100 * RELAY_SWING_SHARE,
  },
  lastTimeSays: {
    label: 'what was found and done last time',
    dimension: 'text',
    of: ({ lastTime }) => (lastTime === undefined ? null : sayLastTime(lastTime)),
  },
  plungerTries: {
    label: 'a plunger is pressed, at most, so often',
    dimension: 'text',
    of: () => String(PLUNGER_TRIES_MAX),
  },
  bellowsTest: {
    label: 'signal on the bellows, to try it',
    dimension: 'pressure',
    of: ({ sheet }) => bellowsTestPa(sheet),
  },
  linkPlayLimit: {
    label: 'play of the linkage at the stem, at most',
    dimension: 'length',
    of: ({ sheet }) => linkPlayLimitM(sheet),
  },
  tieRodOrder: {
    label: 'order of the tie rods, numbered clockwise',
    dimension: 'text',
    of: ({ words }) => crossOrder(words.tieRods),
  },
  supplySag: {
    label: 'supply sags, at most, while the valve moves',
    dimension: 'percent',
    of: () => SUPPLY_SAG_MAX_PERCENT,
  },
  loopOff: {
    label: 'current may be off',
    dimension: 'current',
    of: () => LOOP_OFF_MAX_A,
  },
  liveReadMax: {
    label: 'terminals are read live up to',
    dimension: 'text',
    of: () => `${LIVE_READ_MAX_V} V`,
  },
} as const satisfies Record<string, Figure>;
