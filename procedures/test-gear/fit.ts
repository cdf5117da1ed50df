import { testAccuracyRatio } from '../calculations/measurement.ts';
import { format } from '../calculations/units.ts';
import { type GearItem, type GearKind, permittedErrorSi, spanSi } from './gear.ts';
import { GEAR_ROLES, type GearRole } from './roles.ts';

/** What gear may be unfit for, by code. `stops`: no reading may be taken with it. */
const GEAR_FAULTS = {
  'GEA-101': { stops: true, what: 'gear of another kind' },
  'GEA-102': { stops: true, what: 'past the day on which it was due' },
  'GEA-103': { stops: true, what: 'a scale that does not reach what is to be read' },
  'GEA-104': { stops: true, what: 'a regulator that does not bleed down' },
  'GEA-105': { stops: true, what: 'one gauge for two pressures' },
  'GEA-106': { stops: false, what: 'an accuracy that is coarse beside the tolerance' },
  'GEA-107': { stops: false, what: 'due soon' },
  'GEA-108': { stops: false, what: 'a scale that is much wider than what is to be read' },
  'GEA-110': { stops: true, what: 'gear that was not chosen when the job opened' },
} as const;

export type GearFaultCode = keyof typeof GEAR_FAULTS;

export interface GearFault {
  readonly code: GearFaultCode;
  readonly stops: boolean;
  readonly what: string;
}

/** What a job wants of a piece of gear. */
export interface Wanted {
  readonly kind: GearKind;
  /** The least and the most that it will have to show. */
  readonly lowSi: number;
  readonly highSi: number;
  /** Half width of the tolerance that it is to judge; left out where it judges none. */
  readonly toleranceSi?: number;
}

/** Warned of so many days before (common practice, no source). */
export const DUE_SOON_DAYS = 14;

/** What is read should fill at least a quarter of the scale (common practice, no source). */
const SCALE_PART_MIN = 0.25;

const DAY_MS = 24 * 3600 * 1000;

/**
 * Whether a piece of gear is fit for what a job wants of it, with every reason against.
 *
 * @param today  YYYY-MM-DD
 * @example gearFaults(gauge, { wanted: { kind: 'pressure gauge', lowSi: 0, highSi: 137895 }, today: '2026-03-04' }) // []
 */
export function gearFaults(
  item: GearItem,
  { wanted, today }: { readonly wanted: Wanted; readonly today: string },
): readonly GearFault[] {
  if (item.kind !== wanted.kind) {
    return [fault('GEA-101', `${item.number} is a ${item.kind}; a ${wanted.kind} is wanted.`)];
  }
  return [
    ...dueFaults(item, today),
    ...(item.kind === 'regulator' ? regulatorFaults(item, wanted) : scaleFaults(item, wanted)),
  ];
}

/**
 * Two pressures that are read at one time need two gauges: a supply gauge that is also the signal gauge shows
 * neither supply nor signal when it is moved, and two gauges are compared for the rig check.
 *
 * @param gear  by what each is there for; a fault names the later of the two
 * @example sharedGauges({ signalGauge: g7, supplyGauge: g7 })[0].what // 'G-07 is chosen for “Signal gauge” and for “Supply gauge”: ...'
 */
export function sharedGauges<Role extends GearRole>(
  gear: {
    readonly [R in Role]?: GearItem | undefined;
  },
): readonly (GearFault & { readonly role: Role })[] {
  const chosen = (Object.entries(gear) as [Role, GearItem | undefined][]).flatMap(([role, item]) =>
    item === undefined ? [] : [{ role, item }],
  );
  return chosen.flatMap(({ role, item }, index) => {
    const first = chosen.slice(0, index).find((other) => other.item.number === item.number);
    if (first === undefined) return [];
    const [one, two] = [first.role, role].map((chosenAs) => GEAR_ROLES[chosenAs].label);
    const what = `${item.number} is chosen for “${one}” and for “${two}”: each needs a gauge of its own.`;
    return [{ ...fault('GEA-105', what), role }];
  });
}

/** The day on which it is due still counts. */
export function isOverdue({ dueOn }: Pick<GearItem, 'dueOn'>, today: string): boolean {
  return dueOn < today;
}

function dueFaults(item: GearItem, today: string): readonly GearFault[] {
  if (isOverdue(item, today))
    return [fault('GEA-102', `${item.number} was due for calibration on ${item.dueOn}.`)];
  const days = Math.round((Date.parse(item.dueOn) - Date.parse(today)) / DAY_MS);
  if (days > DUE_SOON_DAYS) return [];
  const when = days === 0 ? 'today' : `in ${days} ${days === 1 ? 'day' : 'days'}`;
  return [fault('GEA-107', `${item.number} is due for calibration ${when}.`)];
}

function regulatorFaults(item: GearItem, wanted: Wanted): readonly GearFault[] {
  const faults = item.bleedsDown
    ? []
    : [fault('GEA-104', `${item.number} does not bleed down: air that stays behind looks like hysteresis.`)];
  return item.rangeHighSi < wanted.highSi ? [...faults, tooShort(item, wanted)] : faults;
}

function scaleFaults(item: GearItem, wanted: Wanted): readonly GearFault[] {
  // A hair is rounding between units.
  const hairSi = 1e-9 * spanSi(item);
  if (wanted.lowSi < item.rangeLowSi - hairSi || wanted.highSi > item.rangeHighSi + hairSi) {
    return [tooShort(item, wanted)];
  }
  const faults: GearFault[] = [];
  const { toleranceSi } = wanted;
  if (toleranceSi !== undefined) {
    const { ratio, atMostAQuarter } = testAccuracyRatio({
      toleranceHalfWidth: toleranceSi,
      permittedError: permittedErrorSi(item),
    });
    if (!atMostAQuarter) {
      const times = `${ratio.toFixed(1)} to 1`;
      faults.push(
        fault(
          'GEA-106',
          `Tolerance against the accuracy of ${item.number} is ${times}; 4 to 1 is usual. More verdicts will be too close for it.`,
        ),
      );
    }
  }
  if ((wanted.highSi - wanted.lowSi) / spanSi(item) < SCALE_PART_MIN) {
    faults.push(
      fault(
        'GEA-108',
        `${item.number} goes up to ${said(item, item.rangeHighSi)}, much more than the ${said(item, wanted.highSi)} to be read.`,
      ),
    );
  }
  return faults;
}

function tooShort(item: GearItem, wanted: Wanted): GearFault {
  const scale = `${said(item, item.rangeLowSi)} to ${said(item, item.rangeHighSi)}`;
  const need = `${said(item, wanted.lowSi)} to ${said(item, wanted.highSi)}`;
  return fault('GEA-103', `${item.number} shows ${scale}; ${need} is to be read.`);
}

function said({ unit }: GearItem, valueSi: number): string {
  return format({ valueSi, unit });
}

function fault(code: GearFaultCode, what: string): GearFault {
  return { code, stops: GEAR_FAULTS[code].stops, what };
}
