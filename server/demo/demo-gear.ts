/** Test gear of the demo plant, as texts. Invented; dates follow the day on which the plant is loaded. */

export type GearText = Readonly<Record<string, string>>;

/** Days from the day of loading; below 0 is past. */
interface Dates {
  readonly calibrated: number;
  readonly due: number;
}

const IN_DATE: Dates = { calibrated: -60, due: 305 };
const SOON_DUE: Dates = { calibrated: -355, due: 10 };
const OVERDUE: Dates = { calibrated: -400, due: -35 };

interface Scale {
  readonly unit: string;
  readonly to: string;
  /** Percent of span. */
  readonly accuracy: string;
}

/** Fine enough that a zero still counts as one: reading and uncertainty together below the limits of safety/limits.ts. */
const LOW_PSI: Scale = { unit: 'psi', to: '30', accuracy: '0.5' };
const LOW_KPA: Scale = { unit: 'kPa', to: '200', accuracy: '0.5' };
const HIGH_PSI: Scale = { unit: 'psi', to: '160', accuracy: '0.5' };
const HIGH_KPA: Scale = { unit: 'kPa', to: '1000', accuracy: '0.5' };
const DIAL_IN: Scale = { unit: 'in', to: '2', accuracy: '0.2' };
const DIAL_MM: Scale = { unit: 'mm', to: '50', accuracy: '0.2' };

const DAY_MS = 24 * 3600 * 1000;

/**
 * Gauges, dial indicators and regulators: enough of each for two jobs at once, in psi and in kPa, and one that is
 * overdue so that its refusal can be seen.
 *
 * @example demoGear(new Date())[0].number // 'G-03'
 */
export function demoGear(today: Date): readonly GearText[] {
  const item = (number: string, texts: GearText & { readonly kind: string }, dates: Dates = IN_DATE) => ({
    number,
    rangeLow: '0',
    calibratedOn: dayFrom(today, dates.calibrated),
    dueOn: dayFrom(today, dates.due),
    certificate: `DEMO-${number}`,
    ...texts,
  });
  const gauge = (number: string, scale: Scale, dates?: Dates) =>
    item(number, { kind: 'pressure gauge', ...textsOf(scale) }, dates);
  const dial = (number: string, scale: Scale) => item(number, { kind: 'dial indicator', ...textsOf(scale) });
  const regulator = (number: string) =>
    item(number, { kind: 'regulator', unit: 'psi', rangeHigh: '60', bleedsDown: 'yes' });
  return [
    gauge('G-03', HIGH_PSI),
    gauge('G-04', HIGH_KPA),
    gauge('G-07', LOW_PSI),
    gauge('G-08', LOW_PSI),
    gauge('G-09', LOW_PSI, OVERDUE),
    gauge('G-11', HIGH_PSI, SOON_DUE),
    gauge('G-12', HIGH_PSI),
    gauge('G-13', HIGH_PSI),
    gauge('G-21', LOW_KPA),
    gauge('G-22', LOW_KPA),
    gauge('G-31', HIGH_KPA),
    gauge('G-32', HIGH_KPA),
    gauge('G-33', HIGH_KPA),
    dial('D-01', DIAL_IN),
    dial('D-02', DIAL_MM),
    regulator('R-01'),
    regulator('R-02'),
  ];
}

function textsOf({ unit, to, accuracy }: Scale): GearText {
  return { unit, rangeHigh: to, accuracyPercentOfSpan: accuracy };
}

function dayFrom(today: Date, days: number): string {
  return new Date(today.getTime() + days * DAY_MS).toISOString().slice(0, 10);
}
