/** What the rows of `judged-values.test.ts` share: a job played to a card, and how a page is typed. */
import type { Job } from '../../../../procedures/job.ts';
import { FIGURES, type FigureName } from '../../../../procedures/quantities.ts';
import { CYCLE_POINTS, pointField } from '../../../../procedures/rules/own-stroke.ts';
import { procedureNamed } from '../../../../procedures/served.ts';
import { rolesFor } from '../../../../procedures/test-gear/roles.ts';
import type { ValveSheet } from '../../../../procedures/valve-sheet/sheet.ts';
import { jobOn, type Overrides, play } from '../../../builders/answers.ts';
import { gearItem } from '../../../builders/gear.ts';
import { aSheetOf } from '../../../builders/sheets.ts';

export const LBF_N = 4.4482216152605;
export const INCH_M = 0.0254;
export const IN2_M2 = INCH_M ** 2;

export type Texts = Readonly<Record<string, string>>;

export const pa = (value: number) => `${value.toFixed(6)} Pa`;
export const metres = (value: number) => `${value.toFixed(9)} m`;
export const newtons = (value: number) => `${value.toFixed(6)} N`;
export const area = (value: number) => `${value.toFixed(9)} m2`;
export const psi = (value: number) => `${value} psi`;

/** A job of a procedure played to a step. */
export function at(
  id: string,
  {
    sheet,
    overrides,
    to,
  }: { readonly sheet: ValveSheet; readonly overrides: Overrides; readonly to: string },
): Job {
  const served = procedureNamed(id);
  if (served === undefined) throw new Error(`${id} is not served`);
  const gear = Object.fromEntries(rolesFor(served, 'line').map((role) => [role, gearItem(role)]));
  return play(jobOn(served, { sheet, place: 'line', gear }), { overrides, to }).job;
}

export const figure = (job: Job, name: FigureName) => Number(FIGURES[name].of(job));
export const judged = (job: Job, step: string, name: string) => Number(job.figures[step]?.[name]);

export const POSITIONER = aSheetOf({
  positioner: 'pneumatic',
  positionerRisingSignalLoads: 'bottom',
  positionerRelays: 'one',
  supplyLowPa: '18',
  supplyHighPa: '22',
});
export const SUPPLY = { supplyRead: { supplyReadPa: '20 psi' } };
/** Travel in percent at each setting, up and then down. */
export const READ = [2, 24.5, 49.5, 76, 99, 78, 52.5, 26.5, 2.5] as const;
export const travels = Object.fromEntries(
  CYCLE_POINTS.map((point, index) => [pointField(point, 'travel'), `${READ[index]} %`]),
);
export const points = CYCLE_POINTS.map(
  ({ percent, direction }, index) => `${percent}; ${READ[index]}; ${direction}; 1`,
).join('\n');
/** The mean of up and down at each setting. */
export const averages = [2.25, 25.5, 51, 77, 99]
  .map((travel, index) => `${25 * index}; ${travel}`)
  .join('\n');

export interface Row {
  /** The card, and what it says. */
  readonly what: string;
  readonly job: () => Job;
  readonly card: (job: Job) => number;
  /** The page of the calculation, and the result that must be the same. */
  readonly page: readonly [id: string, texts: (job: Job) => Texts, result: string];
  /** Somebody else's figure for the same readings, with where it stands and how near it must be. */
  readonly known?: readonly [value: number, source: string, digits: number];
}
